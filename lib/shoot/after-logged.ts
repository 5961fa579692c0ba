import type { Step } from '#lib/episode/step-schema';
import { isDoubtful, secondsByRow } from '#lib/shoot/after-steps';
import { rowKey, type DayEvent } from '#lib/shoot/day-log';

/** A step as far as what it took says something of others. */
export interface LoggableStep extends Pick<
  Step,
  'id' | 'title' | 'usualS' | 'hands' | 'burners' | 'racks'
> {
  readonly ovenMilliC: number | null;
}

/** What a step took on a day of this kitchen. */
export interface LoggedStep extends Omit<LoggableStep, 'id' | 'usualS'> {
  /** The filming day's local date. */
  readonly date: string;
  readonly seconds: number;
}

/** What the steps of a filming day took; what is doubtful or has no start says nothing of other days. */
export function loggedSteps(
  date: string,
  events: readonly DayEvent[],
  steps: readonly LoggableStep[],
): LoggedStep[] {
  const times = secondsByRow(events);
  return steps.flatMap(({ id, usualS, ...step }) => {
    const seconds = times.get(rowKey({ stepId: id }));
    return seconds === undefined || isDoubtful(seconds, usualS) ? [] : [{ ...step, date, seconds }];
  });
}
