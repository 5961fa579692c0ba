import { ENGLISH } from '#lib/claims/english/english';
import type { BeyondDish } from '#lib/claims/judge-beyond/beyond-context';
import { meaningOf, settle } from '#lib/claims/judge-beyond/meanings';
import { minutesSaid } from '#lib/claims/judge-beyond/minutes';
import { minutesText } from '#lib/claims/judge-beyond/number-words';
import type { Around } from '#lib/claims/judge-beyond/words-around';
import { cannotSay, type Verdicted } from '#lib/claims/judge/verdicted';
import type { Statement } from '#lib/claims/statement';
import type { Step } from '#lib/episode/step-schema';

type ReadyIn = Extract<Statement, { readonly unit: 'min' }>;

/** Minutes by which the log of a whole dish may miss: who says “ready” presses later. Common practice, no source. */
const PRESSED = 2.5;
/** UTF-16 units to either side of a time in which its action is named. */
const NEAR = 60;

/**
 * “Ready in n minutes” held against the day’s log, from the first hand on the dish to its plate. Without a log the steps
 * say only what is too short: one pair of hands cannot be done before all hand work is, nor before the longest step.
 */
export function judgeReadyIn(statement: ReadyIn, { dish, facts }: BeyondDish): Verdicted {
  const said = minutesSaid(statement);
  const apart = (of: string) => (distance: number, above: boolean) =>
    `${minutesText(distance)} ${above ? 'longer' : 'shorter'} than ${of}`;
  const seconds = facts?.readyAfterS ?? null;
  if (seconds !== null) {
    const took = seconds / 60;
    const range = { value: took, low: Math.max(0, took - PRESSED), high: took + PRESSED };
    const held = meaningOf(said, statement, range, () => ({
      why: `on the day it took ${minutesText(took)} from the first hand on it to the plate, filming included`,
      called: minutesText(took),
      sayInstead: `about ${minutesText(took)}`,
      apart: apart('it took on the day'),
      against: { kind: 'log', segmentId: dish.id },
    }));
    return settle([held], '');
  }
  const least = leastMinutes(dish.steps);
  const none = 'the day was not logged, so nobody knows when it was ready';
  if (least === 0) return cannotSay(none);
  const atLeast = `your steps take at least ${minutesText(least)}`;
  if (said.to >= least) return cannotSay(`${none}; ${atLeast}`);
  const held = meaningOf(
    said,
    statement,
    { value: least, low: least, high: least },
    () => ({
      why: atLeast,
      called: minutesText(least),
      sayInstead: `at least ${minutesText(least)}`,
      apart: apart('your steps take at least'),
      against: { kind: 'log', segmentId: dish.id },
    }),
    'off',
  );
  return settle([held], '');
}

/**
 * Whether a time that could be that of the whole dish is of an action that its sentence names, and nothing says that all
 * of it is meant: 'whisk it till it is thick, takes about six minutes'.
 */
export function isOfAction(
  { words }: Pick<ReadyIn, 'words'>,
  { before, behind }: Pick<Around, 'before' | 'behind'>,
): boolean {
  const { besideOven, byOven, wholeTime } = ENGLISH.judging;
  const near = before.slice(-NEAR);
  const action = [besideOven, byOven].some((pattern) => [...near.matchAll(pattern)].length > 0);
  return action && !wholeTime.test(`${near} ${words} ${behind.slice(0, NEAR)}`);
}

/** What the steps of a dish take at least, in minutes, those of the evening before left out. */
function leastMinutes(all: readonly Step[]): number {
  const steps = all.filter(
    ({ role, evening }) => !evening && (role === 'prep' || role === 'cook' || role === 'wait'),
  );
  const shortest = ({ lowS, choose }: Step) => (choose ? Math.min(lowS, choose.minS) : lowS);
  const hands = steps
    .filter((step) => step.hands)
    .reduce((total, step) => total + shortest(step), 0);
  return Math.max(hands, ...steps.map(shortest), 0) / 60;
}
