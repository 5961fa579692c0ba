import type { FilmingDay } from '#lib/episode/day-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { CheckedEntry, CheckedPlan } from './checker-data';
import { MILLI_CS, randomKitchen } from './random-kitchen';
import { crossLinks, linkFromAnotherDay, randomLots, segmentLinks } from './random-rules';
import { randomSegment, type DraftSegment, type Means } from './random-segment';
import { seeded, type Chance } from './seeded';
import { laySegment, layWashUp, ovenChanges, plainEntry, type Laid } from './witness';
import { UNSAID_DAY, UNSAID_DAY_SEGMENT } from '#lib/episode/unsaid';

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
    return { id: `pin-${i + 1}`, stepId: entry.stepId ?? '', notBeforeMin, notAfterMin: null };
  });
  const day: FilmingDay = {
    id: `day-${seed}`,
    date: '2026-03-14',
    kind,
    startMin,
    wrapByMin: chance.percent(25) ? Math.min(2880, wrapMin + 240) : null,
    mealGapMin,
    ...UNSAID_DAY,
    segments: view.map((d, i) => {
      const pickup = chance.percent(12);
      return { ...UNSAID_DAY_SEGMENT, id: `on-${i + 1}`, segmentId: d.segment.id, pickup };
    }),
    appointments,
    pins,
  };
  const segments = [...filmed, ...other.map((d) => d.segment)];
  const file: EpisodeFile = {
    format: 'scale-and-slate/episode',
    version: 1,
    recipes: [],
    savedAt: '2026-03-01T08:00:00Z',
    creator: { id: 'creator', name: 'One Cook', wordsPerMinute: null },
    kitchen,
    foods: [],
    episode: {
      id: `episode-${seed}`,
      title: `Random day ${seed}`,
      hook: '',
      region: 'EU',
      publishOn: null,
      rate: { num: 25, den: 1 },
      dropFrame: false,
      targets: [],
      anythingElse: null,
      segments: chance.percent(25) ? chance.shuffle(segments) : segments,
      links: chance.shuffle([...links, ...elsewhere]),
      webLinks: [],
      energyStep: 1,
      disclosure: '',
    },
    day,
    said: [],
    stock: [],
    packs: [],
    pantry: [],
    shops: [],
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
