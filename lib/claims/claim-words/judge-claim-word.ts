import type { Verdict } from '#lib/claims/judged';
import type { Nutrient } from '#lib/foods/nutrients';
import { printGrams } from '#lib/units/print';
import type { ClaimFacts } from './claim-facts';
import {
  cannotSay,
  plain,
  sentence,
  type ClaimContext,
  type ClaimJudged,
  type ClaimStatement,
} from './claim-judged';
import { amountOffers, claimChoices, isTooSmall } from './claim-choices';
import { levelOf, nutrientOf, rulesFor } from './claim-level';
import { claimPhrase } from './claim-phrases';
import type { ClaimLevel, ClaimRule } from './claim-rule';
import { light, reduced } from './compared-claims';
import { disclosure } from './disclosure';
import { EU_PERCENT_FREE } from './eu-rules';
import { judgeRule, needsReferenceAmount, type RuleJudged } from './judge-rule';
import { noAdded } from './no-added';
import { eitherState, holds, weaker } from './weaker-words';

/**
 * Judges a claim word by the published threshold of the region: 21 CFR 101.54 to 101.62 by the reference amount or as a
 * meal, Regulation (EC) No 1924/2006, Annex, in 100 g or by the share of energy. `agrees` only where the whole likely
 * range satisfies it (MODEL D.2); US protein by what counts of it (MODEL D.3).
 * @example judgeClaimWord(said, claimFacts(file, dish)).why
 *   // '“low fat” asks for at most 3 g of fat in 140 g (21 CFR 101.62(b)(2)); your breakdown has 2.1 g, likely 1.9–2.3.'
 */
export function judgeClaimWord(
  statement: Pick<ClaimStatement, 'claim' | 'nutrient' | 'words' | 'unsure'>,
  dish: ClaimFacts,
  context: ClaimContext = {},
): ClaimJudged {
  const level = levelOf(statement, context);
  const nutrient = nutrientOf(statement.nutrient ?? null, dish);
  const phrase = statement.words;
  if (statement.unsure) return cannotSay(dish, 'it can be read in two ways: put the reading right');
  if (level === 'percentFree' && dish.region === 'EU') {
    const why = `“${phrase}” behind a percentage is not allowed for any dish (${EU_PERCENT_FREE}).`;
    return {
      ...plain(dish, 'off', why, EU_PERCENT_FREE),
      sayInstead: weaker('low', 'fat', dish, true),
    };
  }
  if (level === 'reduced') return reduced(phrase, nutrient, dish, context);
  if (level === 'noAdded') {
    const of = nutrient === 'sugars' ? 'sugars' : isSalt(nutrient) ? 'salt' : null;
    if (of === null) return cannotSay(dish, `no rule says what “${phrase}” stands for`);
    const { section, verdict, why } = noAdded(of, dish);
    return plain(
      dish,
      verdict,
      sentence(verdict === 'unknown' ? why : `“${phrase}”: ${why} (${section})`),
      section,
    );
  }
  const rules = rulesFor(level, nutrient, dish);
  const told =
    rules.length === 0
      ? withoutRule(level, phrase, dish, context)
      : byRules(rules, level, nutrient, phrase, dish);
  return { ...told, ...claimChoices(level, nutrient, dish) };
}

const isSalt = (nutrient: Nutrient | null) => nutrient === 'salt' || nutrient === 'sodium';

function byRules(
  rules: readonly ClaimRule[],
  level: ClaimLevel,
  nutrient: Nutrient | null,
  phrase: string,
  dish: ClaimFacts,
): ClaimJudged {
  const racc = dish.claims?.raccMg ?? null;
  const [rule] = rules;
  if (!rule) throw new Error('a claim word without a rule');
  if (dish.region === 'US' && racc === null && needsReferenceAmount(rule)) {
    return withoutAmount(rule, phrase, dish);
  }
  if (dish.claims?.meal === true && dish.region === 'US' && isTooSmall(dish)) {
    return cannotSay(
      dish,
      'it is to be judged as a main dish, and a serving of one weighs at least 6 oz, 170 g (21 CFR 101.13(m)); all of this weighs less',
    );
  }
  const told =
    dish.region === 'EU' ? eitherState(rule, dish) : [judgeRule(rule, dish, racc, false)];
  const verdict = told.every((each) => each.verdict === told[0]?.verdict)
    ? (told[0]?.verdict ?? 'unknown')
    : 'unknown';
  const rows = told.flatMap((each) => each.rows);
  const off = rows.find((row) => row.verdict === 'off');
  const uncertain = told.length > 1 && verdict === 'unknown';
  const beside = dish.region === 'US' ? disclosure(dish, racc) : null;
  const why = uncertain
    ? `can’t say: is it eaten or drunk? ${told.map(askedAndHad).join('; ')} (${rule.section})`
    : `${verdict === 'unknown' ? 'can’t say: ' : ''}“${phrase}” asks for ${told.slice(0, 1).map(askedAndHad).join('')} (${rule.section})`;
  const stronger =
    level === 'source' &&
    verdict === 'agrees' &&
    nutrient !== null &&
    holds('high', nutrient, dish);
  return {
    verdict,
    why: [
      sentence(why),
      ...(stronger ? [`Even “${claimPhrase('high', nutrient, dish.region)}” holds.`] : []),
      ...(verdict === 'off' || rule.also === undefined ? [] : [rule.also]),
      ...(verdict === 'off' || beside === null ? [] : [beside]),
    ].join(' '),
    difference: verdict === 'off' ? (off?.difference ?? null) : null,
    sayInstead: verdict === 'off' || verdict === 'edge' ? weaker(level, nutrient, dish) : null,
    remark:
      verdict === 'off' && rows.every((row) => row.verdict !== 'off' || row.possible)
        ? 'possibleNotLikely'
        : rows.some((row) => row.provisional)
          ? 'toConfirm'
          : null,
    against: { kind: 'rule', segmentId: dish.segmentId },
    section: rule.section,
    rows,
    offers: [],
    asMeal: null,
  };
}

/** "at most 3 g of fat in 140 g, and your breakdown has 2.1 g". */
function askedAndHad({ rows }: RuleJudged): string {
  return rows.map(({ asks, has }) => `${asks}: your breakdown has ${has}`).join('; and ');
}

/** Nobody has said how much of it is customarily eaten: what the word would come to by the likely amounts. */
function withoutAmount(rule: ClaimRule, phrase: string, dish: ClaimFacts): ClaimJudged {
  const offers = amountOffers(rule, dish);
  const likely = offers.map(({ what, amount, massMg, verdict }) => {
    const then =
      verdict === null ? 'to be weighed' : `by ${printGrams(massMg ?? 0)} g: ${SHORT[verdict]}`;
    return `${what}, ${amount} (${then})`;
  });
  const why = `“${phrase}” counts in the reference amount of its kind of food (21 CFR 101.12(b)), and nobody has said which that is. Likely: ${likely.join('; ')}; or it is a main dish`;
  return { ...cannotSay(dish, why), section: rule.section };
}

const SHORT: Readonly<Record<Verdict, string>> = {
  agrees: 'agrees',
  edge: 'at the edge',
  off: 'off',
  unknown: 'can’t say',
};

function withoutRule(
  level: ClaimLevel,
  phrase: string,
  dish: ClaimFacts,
  context: ClaimContext,
): ClaimJudged {
  const { region } = dish;
  if (level === 'light') return light(phrase, dish, context);
  if (region === 'US' && dish.claims?.meal === true && (level === 'high' || level === 'source')) {
    return cannotSay(
      dish,
      `of a meal or main dish “${phrase}” has to name a food in it that is so by itself (21 CFR 101.54(b)(2), (c)(2))`,
    );
  }
  const only =
    region === 'EU'
      ? 'words that the Annex of Regulation (EC) No 1924/2006 does not list are not allowed where it binds'
      : 'words for a level that 21 CFR 101.54 to 101.62 do not define are not allowed on labels; the number itself may be said (21 CFR 101.13(i))';
  return cannotSay(dish, `no rule says what “${phrase}” stands for; ${only}`);
}
