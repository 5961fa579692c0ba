import { figureStatus, type Figure } from '#lib/figures/figure';
import { aboutTolerance, type LimitRelation, type LimitVerdict } from '#lib/figures/judge-limit';
import { shownStep } from '#lib/figures/print-figure';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { printTo } from '#lib/units/print';

/** How a limit is said before its amount. */
export const LIMIT_WORDS: Readonly<Record<LimitRelation, string>> = {
  atLeast: 'at least',
  atMost: 'at most',
  about: 'about',
};

/** What a figure says of a limit. */
export const VERDICT_WORDS: Readonly<Record<LimitVerdict, string>> = {
  met: 'met',
  cannotTell: 'cannot tell, the range crosses it',
  missed: 'missed',
  unknown: 'can’t say, the number is open',
};

/** The same where there is little room; the range beside it shows why. */
export const SHORT_VERDICTS: Readonly<Record<LimitVerdict, string>> = {
  met: 'met',
  cannotTell: 'cannot tell',
  missed: 'missed',
  unknown: 'can’t say',
};

/**
 * What a figure says of a limit, in words: where it cannot say, whether all of it is open or a part is missing.
 * @example verdictWords('unknown', atLeastFour) // 'can’t say, a part of it is missing'
 */
export function verdictWords(
  verdict: LimitVerdict,
  figure: Pick<Figure, 'low' | 'high'> | undefined,
): string {
  const partly = verdict === 'unknown' && figure && figureStatus(figure) !== 'open';
  return partly ? 'can’t say, a part of it is missing' : VERDICT_WORDS[verdict];
}

/** From where to where "about" reaches: `aboutReach('energyKcal', 640)` → `'608 to 672 kcal'`. */
export function aboutReach(nutrient: Nutrient, amount: number): string {
  const tolerance = aboutTolerance(nutrient, amount);
  const step = shownStep(nutrient, amount);
  const [low, high] = [Math.max(0, amount - tolerance), amount + tolerance];
  return `${printTo(low, step)} to ${printTo(high, step)} ${NUTRIENTS[nutrient].unit}`;
}
