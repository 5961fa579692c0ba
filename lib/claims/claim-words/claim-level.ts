import { ENGLISH } from '#lib/claims/english/english';
import type { Nutrient } from '#lib/foods/nutrients';
import type { ClaimFacts } from './claim-facts';
import type { ClaimContext, ClaimStatement } from './claim-judged';
import type { ClaimLevel, ClaimRule } from './claim-rule';
import { EU_RULES } from './eu-rules';
import { US_RULES } from './us-rules';

/** Finer words than the grammar tells apart. */
export function levelOf(
  { claim, nutrient, words }: Pick<ClaimStatement, 'claim' | 'nutrient' | 'words'>,
  { before = '' }: ClaimContext,
): ClaimLevel {
  const said = ENGLISH.judging;
  if (claim === 'free' && nutrient === 'fat' && said.percentBefore.test(before.trimEnd())) {
    return 'percentFree';
  }
  if (said.lessOrMore.test(words)) return 'reduced';
  if (claim === 'low' && said.veryLow.test(words)) return 'veryLow';
  return claim === 'lean' && said.extra.test(words) ? 'extraLean' : claim;
}

/** The nutrient that the region's rules count: salt as sodium in the US, folate as each counts it. */
export function nutrientOf(nutrient: Nutrient | null, { region }: ClaimFacts): Nutrient | null {
  if (region === 'US') {
    if (nutrient === 'salt') return 'sodium';
    return nutrient === 'folate' ? 'folateDfe' : nutrient;
  }
  return nutrient === 'folicAcid' ? 'folate' : nutrient;
}

/** Rules of a word for this dish; those of 'low' for 'very low' where that has none of its own. */
export function rulesFor(
  level: ClaimLevel,
  nutrient: Nutrient | null,
  dish: ClaimFacts,
): ClaimRule[] {
  const all = (dish.region === 'US' ? US_RULES : EU_RULES).filter(
    (rule) => rule.level === level && rule.nutrient === nutrient,
  );
  if (all.length === 0 && level === 'veryLow') return rulesFor('low', nutrient, dish);
  if (dish.region === 'EU') return all;
  const meal = dish.claims?.meal === true;
  if (meal) return all.filter(({ of }) => of === 'meal');
  const plainRules = dish.lines.length === 1 ? all.filter(({ of }) => of === 'plain') : [];
  return plainRules.length > 0 ? plainRules : all.filter(({ of }) => of === 'food');
}
