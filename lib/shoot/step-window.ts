import type { Step } from '#lib/episode/step-schema';
import type { DayFacts } from '#lib/shoot/day-facts';
import { clockText } from '#lib/shoot/day-words';
import { lengthRange } from '#lib/shoot/minutes';
import { pinnedBetween } from '#lib/shoot/pins';

/** Between which minutes of the day a step may stand by what it alone asks; null where nothing does. */
export interface StepWindow {
  readonly startFrom: number;
  readonly startUntil: number | null;
  readonly endBy: number | null;
}

/** A step's window: the day's start, its pins, and the light if it needs that. */
export function stepWindow(step: Step, { day, light }: DayFacts): StepWindow {
  const { from, until } = pinnedBetween(day.pins, step.id);
  const lit = step.daylight ? light : null;
  return {
    startFrom: Math.max(day.startMin, from ?? 0, lit?.fromMin ?? 0),
    startUntil: until,
    endBy: lit?.untilMin ?? null,
  };
}

/** The latest end that a window and a step's longest length come to; null where any end will do. */
export function latestEnd(step: Step, facts: DayFacts): number | null {
  const { startUntil, endBy } = stepWindow(step, facts);
  const { min, max } = lengthRange(step);
  const byStart = startUntil === null || min < max ? null : startUntil + max;
  if (byStart === null || endBy === null) return byStart ?? endBy;
  return Math.min(byStart, endBy);
}

/** What holds a step to its window, in words: `'the day starts at 09:00; pinned to not before 09:20'`. */
export function windowWords(step: Step, facts: DayFacts): string {
  const { day, light } = facts;
  const { from, until } = pinnedBetween(day.pins, step.id);
  const parts = [`the day starts at ${clockText(day.startMin)}`];
  if (from !== null) parts.push(`pinned to not before ${clockText(from)}`);
  if (until !== null) parts.push(`pinned to not after ${clockText(until)}`);
  if (step.daylight && light !== null) parts.push(lightWords(light));
  return parts.join('; ');
}

function lightWords(light: NonNullable<DayFacts['light']>): string {
  if (light.untilMin < light.fromMin) return 'it needs daylight, and there is none that day';
  return `it needs daylight, from ${clockText(light.fromMin)} to ${clockText(light.untilMin)}`;
}
