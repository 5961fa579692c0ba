import type { Perishable, StepLink } from '#lib/episode/step-schema';
import type { CheckedEntry } from './checker-data';
import type { DraftSegment } from './random-segment';
import type { Chance } from './seeded';

interface Span {
  readonly from: CheckedEntry;
  readonly to: CheckedEntry;
}

const round = (chance: Chance, minutes: number, up: boolean): number =>
  Math.max(0, minutes * 60 + (up ? chance.int(0, 59) : -chance.int(0, 59)));

/** The links that the steps were made with, and the limits drawn around the witness. */
export function segmentLinks(
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
export function crossLinks(
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
export function randomLots(
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
export function linkFromAnotherDay(
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
