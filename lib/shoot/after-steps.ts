import type { Segment } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import { LONGEST_STEP_S } from '#lib/episode/step-limits';
import type { DayFacts } from '#lib/shoot/day-facts';
import { keyOfEvent, rowKey, type DayEvent } from '#lib/shoot/day-log';
import { foldDay } from '#lib/shoot/fold-day';
import { washIdOf } from '#lib/shoot/problem-parts';

/** Shortest, usual and longest time of a step, in seconds. */
export type StepTimes = Pick<Step, 'lowS' | 'usualS' | 'highS'>;

/**
 * What the day says of a step's time:
 * - `took`: so many seconds, and the times that the step gets if they are taken;
 * - `asPlanned`: so many seconds, which are its usual ones;
 * - `doubtful`: so many seconds, which are less than a tenth or more than ten times the usual: asked about;
 * - `sinceDone`: done by hand without a start; so many seconds after what the hands had done before: asked about;
 * - `skipped`, `notDone`; `noStart`: done, but nobody knows when it began.
 */
export type StepActual =
  | {
      readonly kind: 'took' | 'doubtful' | 'sinceDone';
      readonly seconds: number;
      readonly take: StepTimes;
    }
  | { readonly kind: 'asPlanned'; readonly seconds: number }
  | { readonly kind: 'skipped' | 'notDone' | 'noStart' };

/** What has a time of its own on the day: a step, or the washing-up of a segment under the id of its row. */
export type TimedStep = Pick<Step, 'id' | 'title' | 'hands'> & StepTimes;

/** A step of the day beside what became of it. */
export interface StepAfter {
  readonly step: TimedStep;
  readonly segment: Segment;
  /** The washing-up of its segment, whose one time is the segment's own. */
  readonly washesUp: boolean;
  readonly actual: StepActual;
  /** How often it was begun again; its time is that of the last making. */
  readonly redone: number;
}

/** Times are told and taken in steps of so many seconds: nobody presses more exactly (common practice, no source). */
export const GRAIN_S = 30;
/** Beyond these parts of the usual time somebody forgot to press (common practice, no source). */
const DOUBTFUL = { below: 0.1, above: 10 } as const;

/**
 * The steps of a filming day in viewing order, each with the time that it took by the day's log; after them the
 * washing-up of each segment that has some.
 */
export function stepsAfter(facts: DayFacts, events: readonly DayEvent[]): StepAfter[] {
  const fold = foldDay(events);
  const times = secondsByRow(events);
  const rows = [
    ...facts.steps.map(({ step, segment }) => {
      return { step, segment, washesUp: false, key: rowKey({ stepId: step.id }) };
    }),
    ...facts.segments
      .filter(({ washUpS }) => washUpS > 0)
      .map((segment) => {
        const step = washingUp(segment);
        return { step, segment, washesUp: true, key: rowKey({ entryId: step.id }) };
      }),
  ];
  const hands = rows.flatMap(({ step, key }) => (step.hands ? (fold.doneAt.get(key) ?? []) : []));
  return rows.map(({ step, segment, washesUp, key }) => {
    const seconds = times.get(key);
    const done = fold.doneAt.get(key);
    const actual: StepActual =
      seconds !== undefined
        ? actualOf(step, seconds)
        : done !== undefined
          ? withoutStart(step, done, hands)
          : { kind: fold.skippedAt.has(key) ? 'skipped' : 'notDone' };
    return { step, segment, washesUp, actual, redone: fold.redone.get(key) ?? 0 };
  });
}

/** The washing-up of a segment as something that takes its time: all of it is expected, no more and no less. */
function washingUp({ id, title, washUpS }: Segment): TimedStep {
  const times = { lowS: washUpS, usualS: washUpS, highS: washUpS };
  return { id: washIdOf(id), title: `Wash up ${title}`, hands: true, ...times };
}

/** What a step done by hand took if it was begun when the hands had done what was before it. */
function withoutStart(step: TimedStep, done: string, hands: readonly string[]): StepActual {
  const before = hands.filter((at) => at < done).reduce((last, at) => (at > last ? at : last), '');
  if (!step.hands || before === '') return { kind: 'noStart' };
  const seconds = Math.round((Date.parse(done) - Date.parse(before)) / 1000);
  if (isDoubtful(seconds, step.usualS)) return { kind: 'noStart' };
  return { kind: 'sinceDone', seconds, take: withUsual(step, seconds) };
}

/** The steps that have a time to look at, and those that have none. */
export function partedByTime(steps: readonly StepAfter[]): {
  readonly timed: readonly StepAfter[];
  readonly untimed: readonly StepAfter[];
} {
  const hasTime = ({ actual }: StepAfter) => 'seconds' in actual;
  return { timed: steps.filter(hasTime), untimed: steps.filter((step) => !hasTime(step)) };
}

/**
 * How long each row took, in seconds, by its key: from its 'started' to its 'done'. A row that is skipped, taken back
 * or not done has none, and one whose beginning was only gathered (it was said to take longer) has none either;
 * of one that was made again the last making counts.
 */
export function secondsByRow(events: readonly DayEvent[]): ReadonlyMap<string, number> {
  const { doneAt, startedAt } = foldDay(events);
  const begun = new Set(
    events
      .filter(({ kind }) => kind === 'started')
      .map((event) => `${event.at} ${keyOfEvent(event)}`),
  );
  return new Map(
    [...doneAt].flatMap(([key, done]): [string, number][] => {
      const started = startedAt.get(key);
      if (started === undefined || !begun.has(`${started} ${key}`)) return [];
      const seconds = Math.round((Date.parse(done) - Date.parse(started)) / 1000);
      return seconds < 0 ? [] : [[key, seconds]];
    }),
  );
}

/** Whether a time is so far from the usual one that it was hardly the step's own. */
export function isDoubtful(seconds: number, usualS: number): boolean {
  if (seconds > LONGEST_STEP_S) return true;
  return seconds < usualS * DOUBTFUL.below || seconds > usualS * DOUBTFUL.above;
}

/** Seconds to the nearest half minute, and no less than that of what took any time. `inGrains(40)` → 30 */
export function inGrains(seconds: number): number {
  return Math.max(seconds > 0 ? GRAIN_S : 0, Math.round(seconds / GRAIN_S) * GRAIN_S);
}

/**
 * A step's times once what it took is its usual time: the shortest and longest stay, but where they would leave it
 * out. One day says little of how far a step may vary, so no range gets narrower.
 */
export function withUsual({ lowS, highS }: StepTimes, seconds: number): StepTimes {
  const usualS = Math.min(LONGEST_STEP_S, inGrains(seconds));
  return { lowS: Math.min(lowS, usualS), usualS, highS: Math.max(highS, usualS) };
}

function actualOf(step: StepTimes, seconds: number): StepActual {
  const take = withUsual(step, seconds);
  if (isDoubtful(seconds, step.usualS)) return { kind: 'doubtful', seconds, take };
  if (take.usualS === step.usualS) return { kind: 'asPlanned', seconds };
  return { kind: 'took', seconds, take };
}

/** A step whose time can be taken as its expected one. */
export interface Offer {
  readonly step: TimedStep;
  readonly take: StepTimes;
  /** The segment whose washing-up it is; null for a step. */
  readonly washedSegmentId: string | null;
}

/** The offers of a day: what took another time than planned, and is not doubtful. */
export function offersOf(steps: readonly StepAfter[]): Offer[] {
  return steps.flatMap((row) =>
    row.actual.kind === 'took' ? [offerOf(row, row.actual.take)] : [],
  );
}

/** The offer of one step, one that is asked about included: whoever asks for it has answered. */
export function offerOfStep(steps: readonly StepAfter[], stepId: string): Offer | null {
  const found = steps.find(({ step }) => step.id === stepId);
  return found && 'take' in found.actual ? offerOf(found, found.actual.take) : null;
}

function offerOf({ step, segment, washesUp }: StepAfter, take: StepTimes): Offer {
  return { step, take, washedSegmentId: washesUp ? segment.id : null };
}

/** One text for a set of offers, the same as long as nothing that they say has changed. */
export function offersText(offers: readonly Pick<Offer, 'step' | 'take'>[]): string {
  return offers.map(({ step, take }) => `${step.id} ${take.usualS}`).join(', ');
}
