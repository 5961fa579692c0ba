import { tokenize } from '#lib/episode/read-ingredient-tokens';
import { LONGEST_STEP_S } from '#lib/episode/step-limits';
import { verbAt } from '#lib/method/clause-verbs';
import type { Place } from '#lib/method/method-step';
import type { MethodStep } from '#lib/method/read-method';
import type { StepTime } from '#lib/method/usual-minutes';
import type { LoggedStep } from '#lib/shoot/after-logged';
import { GRAIN_S, inGrains } from '#lib/shoot/after-steps';
import { minutesSaid, minutesTyped } from '#lib/units/read-typed';

/** Times that this kitchen's own logged days give a step, and where they are from. */
export interface Learnt {
  readonly time: StepTime;
  /** `'12, 14 and 15 min'` */
  readonly times: string;
  /** `'from your last 3 times: 12, 14 and 15 min'` */
  readonly words: string;
}

/** So many of the latest times are looked at (common practice, no source). */
const LATEST = 5;
/** A bake at another temperature is another step: as far apart as this it is still the same (common practice, no source). */
const SAME_HEAT_MILLI_C = 12_000;
/**
 * By so much of the usual time the range is widened beyond what was seen, by how often it was seen: few times show
 * little of how far a step may vary (common practice, no source).
 */
const WIDER = [0.25, 0.25, 0.15, 0.1] as const;

/**
 * What a step of a method took on this kitchen's logged days: those of the same words, else those of the same verb
 * at the same place. Null where there is none.
 * @param logged in any order
 */
export function learntTime(step: MethodStep, logged: readonly LoggedStep[]): Learnt | null {
  const latest = [...logged].sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0));
  const sameHeat = latest.filter((one) => heatFits(step, one));
  const words = wordsOf(step.title);
  const same = sameHeat.filter(({ title }) => words !== '' && wordsOf(title) === words);
  const alike = same.length > 0 ? same : sameHeat.filter((one) => isAlike(step, one));
  return alike.length === 0 ? null : learnt(alike.slice(0, LATEST).map(({ seconds }) => seconds));
}

/**
 * Shortest, usual and longest from times that were seen: the median, and the range of them, widened.
 * Of 12, 14 and 15 min → 10.5, 14, 16.5 min.
 */
export function rangeOf(seconds: readonly number[]): StepTime {
  const sorted = [...seconds].sort((a, b) => a - b);
  const at = (index: number): number => sorted[index] ?? 0;
  const middle = (sorted.length - 1) / 2;
  const usualS = inGrains((at(Math.floor(middle)) + at(Math.ceil(middle))) / 2);
  const wider = usualS * (WIDER[Math.min(sorted.length, WIDER.length - 1)] ?? 0);
  const low = Math.floor((at(0) - wider) / GRAIN_S) * GRAIN_S;
  const high = Math.ceil((at(sorted.length - 1) + wider) / GRAIN_S) * GRAIN_S;
  const most = (value: number): number => Math.min(LONGEST_STEP_S, value);
  return {
    lowS: Math.min(Math.max(low, Math.min(usualS, GRAIN_S)), usualS),
    usualS: most(usualS),
    highS: most(Math.max(high, usualS)),
  };
}

function learnt(seconds: readonly number[]): Learnt {
  const told = [...seconds].sort((a, b) => a - b).map(inGrains);
  const last = minutesSaid(told.at(-1) ?? 0);
  const before = told.slice(0, -1).map(minutesTyped).join(', ');
  const times = before === '' ? last : `${before} and ${last}`;
  const from =
    told.length === 1 ? 'from the last time here' : `from your last ${told.length} times`;
  return { time: rangeOf(seconds), times, words: `${from}: ${times}` };
}

/** Its words alone: lower case, without accents, marks and numbers. */
function wordsOf(title: string): string {
  return tokenize(title)
    .filter(({ kind }) => kind === 'word')
    .map(({ folded }) => folded)
    .join(' ');
}

function isAlike({ read }: MethodStep, one: LoggedStep): boolean {
  if (read.verb === '' || verbOf(one.title) !== read.verb) return false;
  return placeOf(one) === read.equipment && one.hands === (read.hands === 'by hand');
}

function heatFits({ oven }: MethodStep, { ovenMilliC }: LoggedStep): boolean {
  if (!oven || ovenMilliC === null) return true;
  return Math.abs(oven.milliC - ovenMilliC) <= SAME_HEAT_MILLI_C;
}

function placeOf({ ovenMilliC, burners }: LoggedStep): Place {
  return ovenMilliC !== null ? 'oven' : burners > 0 ? 'burner' : 'none';
}

/** The first verb of a title. */
function verbOf(title: string): string {
  const tokens = tokenize(title);
  for (let at = 0; at < tokens.length; at += 1) {
    const verb = verbAt(tokens, at);
    if (verb) return verb.base;
  }
  return '';
}
