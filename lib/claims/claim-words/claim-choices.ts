import type { ClaimOffer, ClaimWorking, Verdict } from '#lib/claims/judged';
import { onceFor } from '#lib/claims/once-for';
import type { Nutrient } from '#lib/foods/nutrients';
import type { ClaimFacts } from './claim-facts';
import { rulesFor } from './claim-level';
import type { ClaimLevel, ClaimRule } from './claim-rule';
import { judgeRule, needsReferenceAmount } from './judge-rule';
import { likelyAmounts } from './reference-amounts';

/** A main dish weighs at least 6 oz a serving (21 CFR 101.13(m)(1)). */
const MAIN_DISH_MG = 170_000;

export function isTooSmall({ finishedMg }: ClaimFacts): boolean {
  return finishedMg !== null && finishedMg.high < MAIN_DISH_MG;
}

/**
 * What a claim word would come to by each choice that is the person's (21 CFR 101.12(b), 101.13(l), (m)): the likely
 * reference amounts, and as a meal or main dish. In the Union nothing of this is asked.
 * @example claimChoices('high', 'protein', facts).asMeal // 'unknown': a meal has to name a food that is so by itself
 */
export function claimChoices(
  level: ClaimLevel,
  nutrient: Nutrient | null,
  dish: ClaimFacts,
): Pick<ClaimWorking, 'offers' | 'asMeal'> {
  if (dish.region !== 'US') return { offers: [], asMeal: null };
  const asFood = judgedAs(FOOD, dish);
  const asMeal = judgedAs(MEAL, dish);
  const [food] = rulesFor(level, nutrient, asFood);
  const [meal] = rulesFor(level, nutrient, asMeal);
  const byAmount = food !== undefined && needsReferenceAmount(food);
  return {
    offers: byAmount ? amountOffers(food, asFood) : [],
    asMeal: meal === undefined ? (food ? 'unknown' : null) : mealVerdict(meal, asMeal),
  };
}

const mealVerdict = onceFor((rule: ClaimRule, dish: ClaimFacts): Verdict => {
  if (isTooSmall(dish)) return 'unknown';
  return judgeRule(rule, dish, dish.claims?.raccMg ?? null, false).verdict;
});

/** The rows of the table that the dish's title speaks for, with what a rule says by each. */
export const amountOffers = onceFor((rule: ClaimRule, dish: ClaimFacts): readonly ClaimOffer[] =>
  likelyAmounts(dish.title).map((row) => ({
    ...row,
    verdict: row.massMg === null ? null : judgeRule(rule, dish, row.massMg, false).verdict,
  })),
);

const FOOD = { meal: false };
const MEAL = { meal: true };

/** The dish as if the person had said which of both it is. */
const judgedAs = onceFor(({ meal }: typeof FOOD, dish: ClaimFacts): ClaimFacts => {
  const { proteinPermille = null, raccMg = null } = dish.claims ?? {};
  return { ...dish, claims: { proteinPermille, raccMg, meal } };
});
