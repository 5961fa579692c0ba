import { filmedTogether, type DayFile } from '#lib/episode/also-filmed';
import type { Pin } from '#lib/episode/day-schema';
import type { Segment } from '#lib/episode/schema';
import type { Shot, Step, StepLink } from '#lib/episode/step-schema';
import type { ShootPlan } from '#lib/shoot/plan';

/** Between these nobody has to be up: minutes after midnight (common practice, no source). */
export const BED_MIN = 22 * 60;
export const UP_MIN = 6 * 60;
const DAY_MIN = 1440;

/** What waits for a step of the evening, and how long after it. */
export interface EveningTie {
  readonly stepId: string;
  readonly title: string;
  /** Start or end of what waits, whichever the tie is to, in minutes after midnight of the filming day. */
  readonly atMin: number;
  readonly leastMin: number;
  readonly mostMin: number | null;
  readonly reason: string;
}

/** A step done before the filming day, with the latest time at which it can be begun. */
export interface EveningStep {
  readonly step: Step;
  readonly segmentId: string;
  readonly segmentTitle: string;
  /** Minutes after midnight of the filming day: below 0 on the day before. */
  readonly startMin: number;
  readonly endMin: number;
  readonly ties: readonly EveningTie[];
  /** Clock times of the filming day that it is tied to: they cannot hold the evening before. */
  readonly pins: readonly Pin[];
  /** Shots that are got during it. */
  readonly shots: readonly Shot[];
  /** Where it may not be begun so early: when it may at the soonest. */
  readonly notBeforeMin: number | null;
  /** Begun at `startMin` it comes too early for a tie that sets a most: then it is no work for the evening. */
  readonly tooEarly: boolean;
}

interface Work {
  readonly step: Step;
  readonly segment: Segment;
  readonly lengthMin: number;
}

interface Placed {
  readonly startMin: number;
  readonly endMin: number;
}

/**
 * The steps done before the filming day, worked back from what waits for them: each at the latest start that
 * leaves the least time of its ties, with the usual length, on the evening before or earlier; between 22:00 and
 * 6:00 nothing is begun and no hands are busy, and one pair of hands does one thing at a time. What nothing waits
 * for is done when the day starts. A tie to a clock time is one of the filming day and does not hold here. In order of
 * start, then id.
 *
 * @example soaked at least 10 h before a step at 10:00, 5 min by hand: latest 23:55, so begun at 21:55
 */
export function eveningSteps(given: DayFile, plan: ShootPlan): EveningStep[] {
  const file = filmedTogether(given);
  const work = eveningWork(file);
  const links = file.episode.links.filter(({ fromStepId }) => work.has(fromStepId));
  const planned = new Map(
    plan.entries.flatMap(({ stepId, startMin, endMin }) =>
      stepId === null ? [] : [[stepId, { startMin, endMin }] as const],
    ),
  );
  const placed = new Map<string, Placed>();
  const busy: Placed[] = [];
  for (const id of backwards(work, links)) {
    const of = work.get(id);
    if (!of) continue;
    const at = { links: links.filter((link) => link.fromStepId === id), planned, placed };
    const place = lastPlace(of, latestEnd(of, at, plan.startMin), busy);
    placed.set(id, place);
    if (of.step.hands) busy.push(place);
  }
  const steps = file.episode.segments.flatMap((segment) => segment.steps);
  const titles = new Map(steps.map(({ id, title }) => [id, title]));
  return [...work.values()]
    .flatMap((of) => {
      const place = placed.get(of.step.id);
      if (!place) return [];
      const pins = (file.day?.pins ?? []).filter(({ stepId }) => stepId === of.step.id);
      return [{ ...told(of, place, links, { titles, planned, placed }), pins }];
    })
    .sort((a, b) => a.startMin - b.startMin || (a.step.id < b.step.id ? -1 : 1));
}

function eveningWork(file: DayFile): Map<string, Work> {
  const parts = new Map(file.day?.segments.map(({ segmentId, part }) => [segmentId, part]));
  const cooked = file.episode.segments.filter(
    ({ id }) => parts.has(id) && parts.get(id) !== 'film',
  );
  return new Map(
    cooked.flatMap((segment) =>
      segment.steps
        .filter(({ evening }) => evening)
        .map((step) => [step.id, { step, segment, lengthMin: Math.ceil(step.usualS / 60) }]),
    ),
  );
}

/** Ids in an order in which what waits comes before what it waits for; a ring of ties is cut at its first id. */
function backwards(work: ReadonlyMap<string, Work>, links: readonly StepLink[]): string[] {
  const order: string[] = [];
  const seen = new Set<string>();
  const visit = (id: string): void => {
    if (seen.has(id)) return;
    seen.add(id);
    for (const { toStepId } of links.filter(({ fromStepId }) => fromStepId === id)) {
      if (work.has(toStepId)) visit(toStepId);
    }
    order.push(id);
  };
  for (const id of [...work.keys()].sort()) visit(id);
  return order;
}

interface At {
  readonly links: readonly StepLink[];
  readonly planned: ReadonlyMap<string, Placed>;
  readonly placed: ReadonlyMap<string, Placed>;
}

/** When a step must have ended, by its ties to what is placed already; else when the day starts. */
function latestEnd({ lengthMin }: Work, at: At, dayStartMin: number): number {
  const ends = at.links.flatMap((link) => {
    const to = at.placed.get(link.toStepId) ?? at.planned.get(link.toStepId);
    if (!to) return [];
    const until = anchorOf(to, link.toAnchor) - Math.ceil((link.minLagS ?? 0) / 60);
    return [link.fromAnchor === 'end' ? until : until + lengthMin];
  });
  return ends.length === 0 ? dayStartMin : Math.min(...ends);
}

const anchorOf = (placed: Placed, anchor: 'start' | 'end'): number =>
  anchor === 'start' ? placed.startMin : placed.endMin;

/** The last place that ends by a time, is not at night, and finds the hands free where it needs them. */
function lastPlace({ step, lengthMin }: Work, endMin: number, busy: readonly Placed[]): Placed {
  const awakeMin = step.hands ? lengthMin : 0;
  let startMin = Math.min(endMin - lengthMin, BED_MIN - DAY_MIN - awakeMin);
  for (;;) {
    startMin = notAtNight(startMin, awakeMin);
    const [from, until] = [startMin, startMin + lengthMin];
    const other = busy.find((each) => from < each.endMin && each.startMin < until);
    if (!step.hands || !other) return { startMin, endMin: until };
    startMin = other.startMin - lengthMin;
  }
}

/** The same start if somebody is up from it on for so long, else the last one before it that is. */
function notAtNight(startMin: number, awakeMin: number): number {
  const midnight = Math.floor(startMin / DAY_MIN) * DAY_MIN;
  const clock = startMin - midnight;
  if (clock < UP_MIN) return midnight - DAY_MIN + BED_MIN - awakeMin;
  return clock + awakeMin <= BED_MIN ? startMin : midnight + BED_MIN - awakeMin;
}

function told(
  { step, segment, lengthMin }: Work,
  { startMin, endMin }: Placed,
  links: readonly StepLink[],
  at: Omit<At, 'links'> & { readonly titles: ReadonlyMap<string, string> },
): Omit<EveningStep, 'pins'> {
  const own = links.filter(({ fromStepId }) => fromStepId === step.id);
  const ties = own.flatMap((link): EveningTie[] => {
    const to = at.placed.get(link.toStepId) ?? at.planned.get(link.toStepId);
    if (!to) return [];
    return [
      {
        stepId: link.toStepId,
        title: at.titles.get(link.toStepId) ?? '',
        atMin: anchorOf(to, link.toAnchor),
        leastMin: Math.ceil((link.minLagS ?? 0) / 60),
        mostMin: link.maxLagS === null ? null : Math.floor(link.maxLagS / 60),
        reason: link.reason,
      },
    ];
  });
  const soonest = own.flatMap((link) => {
    const to = at.placed.get(link.toStepId) ?? at.planned.get(link.toStepId);
    if (!to || link.maxLagS === null) return [];
    const from = anchorOf(to, link.toAnchor) - Math.floor(link.maxLagS / 60);
    return [link.fromAnchor === 'end' ? from - lengthMin : from];
  });
  const notBeforeMin = soonest.length === 0 ? null : Math.max(...soonest);
  return {
    step,
    segmentId: segment.id,
    segmentTitle: segment.title,
    startMin,
    endMin,
    ties,
    shots: segment.shots.filter(({ stepId }) => stepId === step.id),
    notBeforeMin,
    tooEarly: notBeforeMin !== null && notBeforeMin > startMin,
  };
}

/** The date so many days before another. `daysBefore('2026-03-01', 1)` → `'2026-02-28'`. */
export function daysBefore(date: string, days: number): string {
  const [year = 1970, month = 1, day = 1] = date.split('-').map(Number);
  return new Date(Date.UTC(year, month - 1, day - days)).toISOString().slice(0, 10);
}
