import { ENGLISH } from '#lib/claims/english/english';
import type { Nutrient } from '#lib/foods/nutrients';
import type { ClaimFacts } from './claim-facts';
import { cannotSay, plain, sentence, type ClaimContext, type ClaimJudged } from './claim-judged';
import { judgeReduced } from './compared-with';
import { EU_REDUCED } from './eu-rules';
import { US_REDUCED } from './us-rules';

/** 'Light' of what is no meal: against what it is compared with. */
export function light(
  phrase: string,
  dish: ClaimFacts,
  { comparedWith }: ClaimContext,
): ClaimJudged {
  const us = dish.region === 'US';
  const section = us ? '21 CFR 101.56(b)' : 'Regulation (EC) No 1924/2006, Annex, “light/lite”';
  const asks = us
    ? 'a third fewer calories or half the fat, and half the fat where fat brings half of its calories'
    : 'at least 30 % less of what makes it light, with what that is';
  if (!comparedWith) {
    const meal = us ? '; as a main dish it would be low calorie or low fat' : '';
    return {
      ...cannotSay(
        dish,
        `“${phrase}” asks for ${asks}, than something it is compared with (${section}), and nothing is${meal}`,
      ),
      section,
    };
  }
  const energy = judgeReduced(
    { nutrient: 'energyKcal', section, percent: us ? 100 / 3 : 30 },
    dish,
    comparedWith,
  );
  const fat = judgeReduced({ nutrient: 'fat', section, percent: us ? 50 : 30 }, dish, comparedWith);
  const fatty = us && comparedWith.perEnergy(['fat'], 900);
  const byFatAlone = fatty && (fatty.high === null || fatty.high >= 50);
  const told = byFatAlone || energy.verdict !== 'agrees' ? fat : energy;
  return plain(dish, told.verdict, sentence(told.why), section);
}

/** 'Reduced', 'lower' and 'less': against what it is compared with. */
export function reduced(
  phrase: string,
  nutrient: Nutrient | null,
  dish: ClaimFacts,
  { comparedWith }: ClaimContext,
): ClaimJudged {
  const rule = (dish.region === 'US' ? US_REDUCED : EU_REDUCED).find(
    (each) => each.nutrient === nutrient,
  );
  const isMore = ENGLISH.judging.more.test(phrase);
  if (!comparedWith || !rule || isMore) {
    const asks =
      rule && !isMore
        ? ` It asks for at least ${String(rule.percent)} % less (${rule.section}).`
        : '';
    return {
      ...cannotSay(
        dish,
        `“${phrase}” compares, and nothing is known of what it is compared with.${asks}`,
      ),
      section: rule?.section ?? null,
    };
  }
  const { verdict, why } = judgeReduced(rule, dish, comparedWith);
  return plain(
    dish,
    verdict,
    sentence(verdict === 'unknown' ? why : `“${phrase}”: ${why}`),
    rule.section,
  );
}
