import type { ClaimFacts } from './claim-facts';
import { judgeThreshold } from './judge-condition';
import type { ReducedRule } from './claim-rule';
import type { Verdict } from '#lib/claims/judged';
import type { Figure } from '#lib/figures/figure';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { printTo } from '#lib/units/print';

/** A dish beside what it is compared with, in 100 g of each. */
export interface Compared {
  readonly verdict: Verdict;
  readonly why: string;
}

const AMOUNT_MG = 100_000;

/**
 * Judges 'reduced' and 'less': percent of what the other has, with bounds as wide as both together allow.
 * @example judgeReduced({ nutrient: 'fat', percent: 25, … }, dish, other).verdict // 'agrees' at 60 % of its fat
 */
export function judgeReduced(rule: ReducedRule, dish: ClaimFacts, other: ClaimFacts): Compared {
  const { nutrient, percent, section } = rule;
  const [own, its] = [dish, other].map((facts) => facts.ofMass([nutrient], AMOUNT_MG));
  const { label } = NUTRIENTS[nutrient];
  const asks = `at least ${percent} % less ${label} than “${other.title}”, in as much of it (${section})`;
  if (!own || !its || its.low === null || its.low <= 0) {
    return {
      verdict: 'unknown',
      why: `can’t say: it asks for ${asks}, and one of them has no finished weight or no value to compare`,
    };
  }
  const share = percentOf(own, its);
  const verdict = judgeThreshold(share, 'atMost', 100 - percent);
  const less = 100 - share.value;
  const has = less >= 0 ? `${printTo(less, 1)} % less` : `${printTo(-less, 1)} % more`;
  return { verdict, why: `it asks for ${asks}; by your breakdowns it has ${has}` };
}

/** Percent that one figure is of another; the two are taken as having nothing in common. */
function percentOf(own: Figure, its: Figure): Figure {
  const over = (a: number | null, b: number | null) =>
    a === null || b === null || b <= 0 ? null : (100 * a) / b;
  return {
    ...own,
    value: (100 * own.value) / its.value,
    low: over(own.low, its.high),
    high: over(own.high, its.low),
    likelyLow: over(own.likelyLow, its.likelyHigh),
    likelyHigh: over(own.likelyHigh, its.likelyLow),
    provisional: [...own.provisional, ...its.provisional],
  };
}
