import type { EpisodeFile, FilmingDay, Kitchen, Perishable, StepLink } from '#lib/episode/schema';
import type { CheckedEntry, CheckedPlan } from './checker-data';
import { randomSegment, type DraftSegment, type Means } from './random-segment';
import { seeded, type Chance } from './seeded';
import { laySegment, layWashUp, ovenChanges, plainEntry, type Laid } from './witness';

/*
 * Random filming days that can be kept.
 *
 * Guarantee: every day comes with a witness, a shooting order that keeps all of its rules. The steps, their
 * needs and the hands-on appointments are made first; then the segments are laid out one after another (in
 * viewing order on a day as lived, in any order on a packed one), each as late as its meal asks. Only then
 * are limits drawn around what was laid out: a greatest lag is the witness's own lag and more, a least lag
 * no more than it, a perishable's limit at least 15 minutes above its witness's sum, a pin not after its
 * step's start, the latest wrap four hours after the witness's. So no two rules can contradict each other.
 * `tests/shoot/random-day.test.ts` puts the witnesses through the checker.
 *
 * The witness is a proof and no good plan: it wastes most of the waiting time.
 */

interface Span {
  readonly from: CheckedEntry;
  readonly to: CheckedEntry;
}

const MILLI_CS = [
  120_000, 150_000, 160_000, 175_000, 176_667, 180_000, 190_000, 200_000, 220_000, 230_000,
];

const round = (chance: Chance, minutes: number, up: boolean): number =>
  Math.max(0, minutes * 60 + (up ? chance.int(0, 59) : -chance.int(0, 59)));

function randomKitchen(chance: Chance, milliCs: readonly number[]): Kitchen {
  const ovens = Array.from({ length: chance.int(1, 2) }, (_, i) => {
    const coldMilliC = chance.int(16, 26) * 1000;
    const all = [coldMilliC, ...milliCs];
    const pairs = all.flatMap((a) => milliCs.flatMap((b) => (a === b ? [] : [[a, b] as const])));
    return {
      id: `oven-${i + 1}`,
      name: `Oven ${i + 1}`,
      racks: chance.int(1, 3),
      coldMilliC,
      changes: pairs
        .filter(() => chance.percent(40))
        .map(([fromMilliC, toMilliC], n) => {
          return { id: `oven-${i + 1}-${n}`, fromMilliC, toMilliC, seconds: chance.int(90, 1500) };
        }),
      heatSPerC: chance.int(2, 6),
      coolSPerC: chance.int(3, 10),
    };
  });
  return {
    id: 'kitchen',
    name: 'Kitchen',
    zone: 'Europe/Copenhagen',
    lat: null,
    lon: null,
    burners: chance.int(1, 4),
    ovens,
    scales: [],
    spreads: [],
  };
}

/** None to two appointments of the day, those that take hands apart from each other. */
function randomAppointments(chance: Chance, startMin: number): FilmingDay['appointments'] {
  let from = startMin + chance.int(0, 240);
  return Array.from({ length: chance.pick([0, 0, 0, 1, 1, 2]) }, (_, i) => {
    const endMin = from + chance.int(10, 60);
    const own = { id: `call-${i + 1}`, title: `Call ${i + 1}`, startMin: from, endMin };
    from = endMin + chance.int(0, 200);
    return { ...own, hands: chance.percent(60) };
  });
}

/** The segments of the day in viewing order; on a day as lived one to three of the dishes are eaten. */
function randomSegments(chance: Chance, kind: FilmingDay['kind'], means: Means): DraftSegment[] {
  const kinds = chance.shuffle([
    'recipe' as const,
    ...Array.from({ length: chance.int(1, 4) }, () =>
      chance.percent(75) ? ('recipe' as const) : ('talk' as const),
    ),
  ]);
  const dishes = kinds.flatMap((k, i) => (k === 'recipe' ? [i] : []));
  const meals = new Set(
    chance.shuffle(dishes).slice(0, kind === 'asLived' ? chance.int(1, 3) : chance.int(0, 2)),
  );
  return kinds.map((k, i) => randomSegment(chance, `s${i + 1}`, k, meals.has(i), means));
}

/** Lays out the whole day; false where it would run far into the next. */
function layDay(laid: Laid, order: readonly DraftSegment[], mealGapMin: number): boolean {
  let from = laid.dayStart;
  let lastMeal = -Infinity;
  for (const draft of order) {
    const eat = draft.segment.steps.find((s) => s.role === 'eat');
    const kept = laid.entries.length;
    for (;;) {
      if (!laySegment(laid, draft, from)) return false;
      const meal = laid.entries.find((e) => eat !== undefined && e.stepId === eat.id);
      const early = meal ? lastMeal + mealGapMin - meal.startMin : 0;
      if (meal && early <= 0) lastMeal = meal.startMin;
      if (early <= 0) break;
      laid.entries.length = kept;
      from += early;
    }
    from = laid.entries.slice(kept).reduce((last, e) => Math.max(last, e.endMin), from);
    layWashUp(laid, draft);
  }
  return laid.entries.every((e) => e.endMin <= 1800);
}

/** The links that the steps were made with, and the limits drawn around the witness. */
function segmentLinks(
  chance: Chance,
  { segment, drafts }: DraftSegment,
  at: Map<string, CheckedEntry>,
): StepLink[] {
  const links: StepLink[] = [];
  for (const [i, draft] of drafts.entries()) {
    const to = at.get(draft.step.id);
    for (const need of draft.needs) {
      const from = at.get(need.stepId);
      if (!from || !to) continue;
      const tie = need.stepId === drafts[i - 1]?.step.id ? draft.tie : null;
      const lag = to.startMin - (need.anchor === 'start' ? from.startMin : from.endMin);
      const loose = !tie && chance.percent(12) ? lag + chance.int(10, 45) : null;
      const maxMin = tie ? tie.maxMin : loose;
      links.push({
        id: `${segment.id}-l${links.length + 1}`,
        fromStepId: need.stepId,
        toStepId: draft.step.id,
        fromAnchor: need.anchor,
        toAnchor: 'start',
        minLagS: round(chance, need.minMin, false),
        maxLagS: maxMin === null ? null : round(chance, maxMin, true),
        reason: tie?.reason ?? (loose === null ? 'must come first' : 'must not stand long'),
      });
    }
  }
  const ids = segment.steps.map((s) => s.id);
  if (!chance.percent(35)) return links;
  const fromAt = chance.int(0, ids.length - 2);
  const [from, to] = [ids[fromAt], ids[chance.int(fromAt + 1, ids.length - 1)]].map((id) =>
    at.get(id ?? ''),
  );
  if (!from?.stepId || !to?.stepId) return links;
  const fromAnchor = chance.pick(['start', 'end'] as const);
  const toAnchor = chance.pick(['start', 'end'] as const);
  const lag =
    (toAnchor === 'start' ? to.startMin : to.endMin) -
    (fromAnchor === 'start' ? from.startMin : from.endMin);
  links.push({
    id: `${segment.id}-extra`,
    fromStepId: from.stepId,
    toStepId: to.stepId,
    fromAnchor,
    toAnchor,
    minLagS:
      lag >= 0 && chance.percent(60)
        ? round(chance, Math.min(lag, chance.int(0, 15)), false)
        : null,
    maxLagS: chance.percent(70) ? round(chance, Math.max(lag, 0) + chance.int(5, 40), true) : null,
    reason: 'seen in one go',
  });
  return links;
}

/** Orders between steps of different segments, as the witness has them. */
function crossLinks(
  chance: Chance,
  order: readonly DraftSegment[],
  at: Map<string, CheckedEntry>,
): StepLink[] {
  const count = chance.percent(45) ? chance.int(1, 2) : 0;
  return Array.from({ length: count }, (_, i) => {
    const first = chance.int(0, order.length - 2);
    const pick = (n: number) => chance.pick(order[n]?.segment.steps ?? []);
    const from = pick(first);
    const to = pick(chance.int(first + 1, order.length - 1));
    const fromAnchor = chance.pick(['start', 'end', 'end'] as const);
    const a = at.get(from.id);
    const lag =
      (at.get(to.id)?.startMin ?? 0) -
      (fromAnchor === 'end' ? (a?.endMin ?? 0) : (a?.startMin ?? 0));
    return {
      id: `cross-${i + 1}`,
      fromStepId: from.id,
      toStepId: to.id,
      fromAnchor,
      toAnchor: 'start' as const,
      minLagS: round(chance, Math.max(0, Math.min(lag, chance.int(0, 10))), false),
      maxLagS: null,
      reason: 'told later in the story',
    };
  }).filter((link) => {
    const a = at.get(link.fromStepId);
    const b = at.get(link.toStepId);
    if (!a || !b) return false;
    return b.startMin >= (link.fromAnchor === 'end' ? a.endMin : a.startMin);
  });
}

/** A lot or two of a dish, with one or two outings whose sum in the witness leaves at least 15 minutes. */
function randomLots(
  chance: Chance,
  { segment }: DraftSegment,
  at: Map<string, CheckedEntry>,
): Perishable[] {
  if (segment.kind === 'talk') return [];
  const steps = segment.steps.flatMap((s) => at.get(s.id) ?? []);
  return Array.from({ length: chance.pick([0, 1, 1, 2]) }, (_, n): Perishable => {
    const spans: Span[] = [];
    let from = chance.int(0, steps.length - 2);
    for (let i = chance.int(1, 2); i > 0 && from < steps.length - 1; i -= 1) {
      const to = chance.int(from + 1, steps.length - 1);
      const [a, b] = [steps[from], steps[to]];
      if (a && b) spans.push({ from: a, to: b });
      from = to;
    }
    const anchored = spans.map(({ from: a, to: b }) => {
      const fromAnchor = chance.pick(['start', 'end'] as const);
      const toAnchor = chance.pick(['start', 'end'] as const);
      const length =
        (toAnchor === 'start' ? b.startMin : b.endMin) -
        (fromAnchor === 'start' ? a.startMin : a.endMin);
      const span = { fromStepId: a.stepId ?? '', fromAnchor, toStepId: b.stepId ?? '', toAnchor };
      return { span, length: Math.max(0, length) };
    });
    const short: typeof anchored = [];
    let sum = 0;
    for (const one of anchored) {
      if (sum + one.length > 105) continue;
      sum += one.length;
      short.push(one);
    }
    const hourDoes = sum <= 45 && chance.percent(30);
    const thrownAway = chance.percent(15);
    return {
      id: `${segment.id}-lot-${n + 1}`,
      name: `Lot ${n + 1} of ${segment.title}`,
      limitS: thrownAway ? 60 : hourDoes ? 3600 : 7200,
      spans: (thrownAway ? anchored : short).map((s) => s.span),
      thrownAway,
    };
  });
}

/** A link from a segment that is filmed on another day: it binds nothing on this one. */
function linkFromAnotherDay(
  chance: Chance,
  { segment }: DraftSegment,
  view: readonly DraftSegment[],
): StepLink[] {
  if (!chance.percent(50)) return [];
  return [
    {
      id: 'elsewhere',
      fromStepId: chance.pick(segment.steps).id,
      toStepId: chance.pick(chance.pick(view).segment.steps).id,
      fromAnchor: 'end',
      toAnchor: 'start',
      minLagS: 0,
      maxLagS: null,
      reason: 'told later in the story',
    },
  ];
}

const minuteOf = (e: CheckedEntry | undefined, anchor: 'start' | 'end'): number =>
  (anchor === 'start' ? e?.startMin : e?.endMin) ?? 0;

function attempt(chance: Chance, seed: number): { file: EpisodeFile; witness: CheckedPlan } | null {
  const milliCs = chance.shuffle(MILLI_CS).slice(0, chance.int(1, 4));
  const kitchen = randomKitchen(chance, milliCs);
  const means: Means = { kitchen, milliCs };
  const kind = chance.pick(['asLived', 'packed'] as const);
  const startMin = chance.int(360, 660);
  const mealGapMin = chance.percent(20) ? 0 : chance.int(0, 240);
  const appointments = randomAppointments(chance, startMin);
  const view = randomSegments(chance, kind, means);
  const order = kind === 'asLived' ? view : chance.shuffle(view);
  const calls = appointments.map((a) => ({
    ...plainEntry('appointment', `at-${a.id}`, a.title, a.startMin, a.endMin),
    hands: a.hands,
  }));
  const laid: Laid = { kitchen, dayStart: startMin, entries: calls };
  if (!layDay(laid, order, mealGapMin)) return null;
  laid.entries.push(...ovenChanges(laid));

  const at = new Map(
    laid.entries.flatMap((e) => (e.stepId === null ? [] : [[e.stepId, e] as const])),
  );
  const filmed = view.map((d) => ({ ...d.segment, perishables: randomLots(chance, d, at) }));
  const links = [
    ...view.flatMap((d) => segmentLinks(chance, d, at)),
    ...crossLinks(chance, order, at),
  ];
  const other = chance.percent(20) ? [randomSegment(chance, 'other', 'recipe', true, means)] : [];
  const elsewhere = other.flatMap((d) => linkFromAnotherDay(chance, d, view));
  const wrapMin = laid.entries.reduce((last, e) => Math.max(last, e.endMin), startMin);
  const all = [...at.values()];
  const pins = Array.from({ length: chance.pick([0, 0, 1, 2]) }, (_, i) => {
    const entry = chance.pick(all);
    const notBeforeMin = Math.max(0, entry.startMin - chance.pick([0, 5, 30, 120]));
    return { id: `pin-${i + 1}`, stepId: entry.stepId ?? '', notBeforeMin };
  });
  const day: FilmingDay = {
    id: `day-${seed}`,
    date: '2026-03-14',
    kind,
    startMin,
    wrapByMin: chance.percent(25) ? Math.min(2880, wrapMin + 240) : null,
    mealGapMin,
    segments: view.map((d, i) => {
      return { id: `on-${i + 1}`, segmentId: d.segment.id, pickup: chance.percent(12) };
    }),
    appointments,
    pins,
  };
  const segments = [...filmed, ...other.map((d) => d.segment)];
  const file: EpisodeFile = {
    format: 'scale-and-slate/episode',
    version: 1,
    savedAt: '2026-03-01T08:00:00Z',
    creator: { id: 'creator', name: 'One Cook' },
    kitchen,
    foods: [],
    episode: {
      id: `episode-${seed}`,
      title: `Random day ${seed}`,
      hook: '',
      region: 'EU',
      publishOn: null,
      rate: { num: 25, den: 1 },
      targets: [],
      anythingElse: null,
      segments: chance.percent(25) ? chance.shuffle(segments) : segments,
      links: chance.shuffle([...links, ...elsewhere]),
      webLinks: [],
      disclosure: '',
    },
    day,
    stock: [],
    packs: [],
  };
  const witness: CheckedPlan = {
    dayId: day.id,
    date: day.date,
    kind,
    startMin,
    wrapMin,
    status: 'feasible',
    entries: laid.entries.sort(
      (a, b) =>
        a.startMin - b.startMin ||
        Number(b.hands) - Number(a.hands) ||
        (a.id < b.id ? -1 : a.id > b.id ? 1 : 0),
    ),
    lots: filmed.flatMap((s) =>
      s.perishables
        .filter((lot) => !lot.thrownAway)
        .map((lot) => ({
          perishableId: lot.id,
          segmentId: s.id,
          name: lot.name,
          minutes: lot.spans.reduce((sum, span) => {
            const from = minuteOf(at.get(span.fromStepId), span.fromAnchor);
            return sum + Math.max(0, minuteOf(at.get(span.toStepId), span.toAnchor) - from);
          }, 0),
          limitMin: lot.limitS / 60,
        })),
    ),
    broken: [],
  };
  return { file, witness };
}

/** A random filming day with an order that keeps all of its rules. Equal seeds give equal days. */
export function randomDayWithWitness(seed: number): { file: EpisodeFile; witness: CheckedPlan } {
  const chance = seeded(seed);
  for (let tries = 0; tries < 100; tries += 1) {
    const made = attempt(chance, seed);
    if (made) return made;
  }
  throw new Error(`no day of seed ${seed} ended in time`);
}

/**
 * A random filming day that can be kept: two to five segments, three to nine steps each, one or two ovens,
 * lags, perishables, appointments, pins and pickups, as lived or packed.
 */
export function randomDay(seed: number): EpisodeFile {
  return randomDayWithWitness(seed).file;
}
