import { amountContext, dishesOf } from '#lib/episode/context';
import { eatenAmount } from '#lib/episode/eaten-amount';
import type { EpisodeFile } from '#lib/episode/schema';
import { atMostText } from '#lib/figures/bound-offer';
import { unitsOfBasis } from '#lib/figures/composition';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import { someOf } from '#lib/figures/print-figure';
import { publishedStep } from '#lib/figures/published-numbers';
import type { FoodVersion } from '#lib/foods/food';
import { cellInterval } from '#lib/foods/label-rounding';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { boundsOf } from '#lib/units/bounds';
import { printGrams, printTo, settled } from '#lib/units/print';

/** An ingredient whose label says 0 while so much of it is used that it may be more than nothing. */
export interface ZeroLabelRemark {
  readonly lineId: string;
  /** What its label calls 0, and the most that so much may hold of it, in the nutrient's unit. */
  readonly hidden: readonly { readonly nutrient: Nutrient; readonly top: number }[];
  /** The reference food that its label names as second witness, or null. */
  readonly witness: string | null;
  readonly words: string;
}

/**
 * A published unit where a label's own is coarser than the number's: 10 kcal above 50, 21 CFR 101.9(c)(1); 5 mg of
 * cholesterol, (c)(3). 42 kJ are 10 kcal (common practice, no source).
 */
const LABEL_UNIT: Partial<Readonly<Record<Nutrient, number>>> = {
  energyKcal: 10,
  energyKj: 42,
  cholesterol: 5,
};

/**
 * Labelled 0 is a range from zero: "0 kcal" stands for less than 5 in a serving (21 CFR 101.9(c)(1)), so 20 servings
 * of a spray may hold up to 100 kcal. Remarks on a dish's ingredients of which so much is used that the true amount
 * may be more than a published unit. The ranges of the figures count it already; their values do not.
 * Where a second column says more than 0 of the same, there is nothing to remark.
 * @example zeroLabelRemarks(file, figures, segmentId)[0]?.words
 *   // 'cooking spray: its label says 0 of calories and fat, and 20 servings of it may hold up to 100 kcal, 10 g fat. …'
 */
export function zeroLabelRemarks(
  file: EpisodeFile,
  { nutrients }: Pick<EpisodeFigures, 'nutrients'>,
  segmentId: string,
): readonly ZeroLabelRemark[] {
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === segmentId);
  if (!dish) return [];
  const context = amountContext(file);
  return dish.recipe.lines.flatMap((line): ZeroLabelRemark[] => {
    const eaten = eatenAmount(line, dish.recipe.weighings, context);
    if (!eaten.known || eaten.food?.kind !== 'label') return [];
    const { food, amount } = eaten;
    const units = unitsOfBasis(food, amount);
    if (!units) return [];
    const times = boundsOf(units.terms, units.sources);
    const hidden = nutrients.flatMap((nutrient) => {
      const top = settled(times.high * zeroTop(food.version, nutrient));
      const unit = LABEL_UNIT[nutrient] ?? publishedStep(nutrient);
      return top > unit ? [{ nutrient, top }] : [];
    });
    if (hidden.length === 0) return [];
    const witness = context.foods.get(food.witnessId ?? '')?.name ?? null;
    const amountText = amountWords(food.version, times.value);
    return [{ lineId: line.id, hidden, witness, words: inWords(line.text, amountText, hidden) }];
  });
}

/** The most that a printed 0 stands for, in one basis; 0 where another amount is printed, or none. */
function zeroTop(version: FoodVersion, nutrient: Nutrient): number {
  const stated = cellInterval(version, nutrient);
  return stated?.value === 0 ? stated.high : 0;
}

function amountWords({ basis }: FoodVersion, times: number): string {
  if (basis === 'per100g') return `${printGrams(times * 100_000)} g`;
  if (basis === 'per100ml') return `${printTo(times * 100, 1)} ml`;
  const servings = printTo(times, 0.1).replace(/\.0$/, '');
  return servings === '1' ? '1 serving' : `${servings} servings`;
}

function inWords(text: string, amount: string, hidden: ZeroLabelRemark['hidden']): string {
  const names = hidden.map(({ nutrient }) => NUTRIENTS[nutrient].label);
  const most = hidden.map(({ nutrient, top }) => {
    const { unit, label } = NUTRIENTS[nutrient];
    const said = `${atMostText(top)} ${unit}`;
    return unit === 'kcal' || unit === 'kJ' ? said : `${said} ${label}`;
  });
  return (
    `${text}: its label says 0 of ${someOf(names)}, and ${amount} of it may hold up to ${someOf(most)}. ` +
    'The ranges count that, the numbers do not. A reference food in its place says how much it is.'
  );
}
