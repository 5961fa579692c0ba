import type { Nutrient } from '#lib/foods/nutrients';
import type { ClaimFacts } from './claim-facts';
import { rulesFor } from './claim-level';
import { claimPhrase, WEAKER } from './claim-phrases';
import type { ClaimLevel, ClaimRule } from './claim-rule';
import { judgeRule, needsReferenceAmount, type RuleJudged } from './judge-rule';

/** Weaker words that hold, the strongest of them; the word itself first where `own`. */
export function weaker(
  level: ClaimLevel,
  nutrient: Nutrient | null,
  dish: ClaimFacts,
  own = false,
): string | null {
  const levels = [...(own ? [level] : []), ...(WEAKER[level] ?? [])];
  const found = levels.find((each) => holds(each, nutrient, dish));
  return found === undefined ? null : claimPhrase(found, nutrient, dish.region);
}

/** Whether the words hold whatever the likely range. */
export function holds(level: ClaimLevel, nutrient: Nutrient | null, dish: ClaimFacts): boolean {
  const racc = dish.claims?.raccMg ?? null;
  // Asked with its own rules alone: 'very low' that falls back to 'low' is no weaker word.
  const rules = rulesFor(level, nutrient, dish).filter((rule) => rule.level === level);
  return rules.some((rule) => {
    if (dish.region === 'US' && racc === null && needsReferenceAmount(rule)) return false;
    const told =
      dish.region === 'EU' ? eitherState(rule, dish) : [judgeRule(rule, dish, racc, false)];
    return told.every(({ verdict }) => verdict === 'agrees');
  });
}

/** In the Union by what holds for food; where the title may be a drink's, by what holds for drinks as well. */
export function eitherState(rule: ClaimRule, dish: ClaimFacts): RuleJudged[] {
  const food = judgeRule(rule, dish, null, false);
  const isTwofold = rule.ways.some((way) =>
    way.some(({ limit, liquidLimit }) => liquidLimit !== undefined && liquidLimit !== limit),
  );
  if (!isTwofold || !DRINKS.test(dish.title)) return [food];
  return [food, judgeRule(rule, dish, null, true)];
}

/** Titles of what may be drunk (common practice, no source). */
const DRINKS =
  /\b(drinks?|juice|smoothies?|shakes?|milkshakes?|latte|lassi|kefir|cocoa|tea|coffee|lemonade|punch|soups?|broth|gazpacho|chowder|bisque)\b/i;
