import { NUTRIENTS } from '#lib/foods/nutrients';
import type { ClaimFacts } from './claim-facts';
import { judgeThreshold } from './judge-condition';
import { DISCLOSURE_LEVELS } from './us-rules';

const SMALL_MG = 30_000;
const SMALL_JUDGED_MG = 50_000;

/**
 * What has to be said beside any claim where a dish has much of something else (21 CFR 101.13(h)): the names of what it
 * has more of than the level, or may have; null where it has not. A main dish is held by its own, lower level, and each
 * by its portions as well.
 * @example disclosure(cheddar, 30_000) // 'Beside any such word, say that it is high in saturated fat: …'
 */
export function disclosure(facts: ClaimFacts, raccMg: number | null): string | null {
  const meal = facts.claims?.meal === true;
  const masses =
    meal || raccMg === null ? [] : raccMg <= SMALL_MG ? [raccMg, SMALL_JUDGED_MG] : [raccMg];
  const over = DISCLOSURE_LEVELS[meal ? 'mainDish' : 'food'].flatMap(([nutrient, level]) => {
    const figures = [
      ...masses.map((mass) => facts.ofMass([nutrient], mass)),
      ...(facts.claims === null
        ? []
        : facts.servings.map((_, at) => facts.ofServing([nutrient], at))),
    ];
    const verdicts = figures.map((figure) =>
      figure ? judgeThreshold(figure, 'atMost', level) : 'unknown',
    );
    const { label, unit } = NUTRIENTS[nutrient];
    if (!verdicts.some((verdict) => verdict === 'off' || verdict === 'edge')) return [];
    return [`${label} (more than ${String(level)} ${unit})`];
  });
  if (over.length === 0) return null;
  const section = meal ? '21 CFR 101.13(h)(3)' : '21 CFR 101.13(h)(1)';
  return `Any such word has to come with a hint at its ${over.join(', ')}, as in “see nutrition information for fat content” (${section}).`;
}
