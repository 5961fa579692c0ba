import { cellOf } from '#lib/foods/cell-of';
import type { FoodVersion } from '#lib/foods/food';
import type { Nutrient } from '#lib/foods/nutrients';
import { printedValue } from '#lib/units/printed';

/** Whether a table food's stated energy fits its own composition, in kcal per its basis. */
export interface EnergyCheck {
  /** `own`: by the food's three factors; `general`: by 4, 4, 9. */
  readonly factors: 'own' | 'general';
  readonly stated: number;
  readonly low: number;
  readonly high: number;
  readonly fits: boolean;
}

/**
 * Checks the stated energy of a table food. With its own three factors (USDA Handbook 74): within the larger of
 * 2 kcal and 3 % of what is stated. Else by the general factors, from 0.95 (4 P + 9 F + 4 (C − fibre)) − 5 to
 * 1.05 (4 P + 9 F + 4 C) + 5; where carbohydrate is stated without fibre, fibre adds 0 to 2. A blank fibre counts
 * as 0 here, which only narrows the range. Alcohol that is stated counts 7 kcal a gram, polyols 0 to 4
 * (21 CFR 101.9(c)(1)(i); Regulation 1169/2011 Annex XIV).
 * The tolerances are derived: outside them lie 0.6 % and 2.0 % of the foods of SR28 without alcohol, most with
 * a reason that `energyReasons` names. Null where energy or a macro is missing.
 * Never a replacement of the stated energy.
 */
export function checkTableEnergy(version: FoodVersion): EnergyCheck | null {
  const value = (nutrient: Nutrient) => {
    const cell = cellOf(version.values, nutrient);
    return cell.kind === 'eq' ? printedValue(cell) : null;
  };
  const stated = value('energyKcal');
  const protein = value('protein');
  const fat = value('fat');
  const carbohydrate = value('carbohydrate');
  if (stated === null || protein === null || fat === null || carbohydrate === null) return null;
  const alcohol = 7 * (value('alcohol') ?? 0);
  const polyols = 4 * (value('polyols') ?? 0);
  const own = ownFactors(version);
  if (own) {
    const expected =
      own.protein * protein + own.fat * fat + own.carbohydrate * carbohydrate + alcohol;
    const slack = Math.max(2, 0.03 * stated);
    return within('own', stated, expected - polyols - slack, expected + slack);
  }
  const plain = 4 * protein + 9 * fat + 4 * carbohydrate + alcohol;
  const fibre = value('fibre') ?? 0;
  const [least, most] =
    version.carbBasis === 'total' ? [plain - 4 * fibre, plain] : [plain, plain + 2 * fibre];
  return within('general', stated, 0.95 * (least - polyols) - 5, 1.05 * most + 5);
}

/**
 * A table food's own energy factors in kcal per gram; null where one is missing, or all are zero, as of two
 * waters in SR28.
 */
export function ownFactors(
  version: FoodVersion,
): { readonly protein: number; readonly fat: number; readonly carbohydrate: number } | null {
  const { protein, fat, carbohydrate } = version.factors ?? {};
  if (!protein || !fat || !carbohydrate) return null;
  const own = {
    protein: printedValue(protein),
    fat: printedValue(fat),
    carbohydrate: printedValue(carbohydrate),
  };
  return own.protein + own.fat + own.carbohydrate > 0 ? own : null;
}

/** What in a food makes its energy another than its protein, fat and carbohydrate give. */
export interface EnergyReason {
  readonly code: 'alcohol' | 'polyols' | 'acids' | 'leavening' | 'undigested';
  readonly words: string;
}

/**
 * Names that tell of something else than protein, fat and carbohydrate, and what: over SR28 most foods outside
 * the tolerances are of these kinds (derived; the words are common practice, no source).
 */
export const REASON_NAMES: readonly (EnergyReason & { readonly names: RegExp })[] = [
  {
    code: 'alcohol',
    words: 'alcohol gives 7 kcal a gram',
    names:
      /alcohol|\b(?:beer|wine|cider|liqueur|liquor|brandy|cognac|rum|gin|vodka|whisk(?:e?y|ies)|tequila|sherry|sake|mirin|vermouth|champagne|malt beverage)\b|^vanilla extract/i,
  },
  {
    code: 'polyols',
    words: 'sweeteners and polyols give 0 to 4 kcal a gram',
    names:
      /\b(?:stevia|sweeteners?|sucralose|aspartame|saccharin|erythritol|xylitol|maltitol|sorbitol|isomalt|mannitol|lactitol|sugar[- ]free|reduced calorie|low calorie)\b/i,
  },
  {
    code: 'acids',
    words: 'organic acids give 2 to 3 kcal a gram',
    names: /\b(?:vinegar|(?:lemon|lime)s?|rhubarb|tamarind|sauerkraut|pickles?)\b/i,
  },
  {
    code: 'leavening',
    words: 'its carbonates are no carbohydrate',
    names: /\b(?:baking (?:powder|soda)|cream of tartar)\b/i,
  },
  {
    code: 'undigested',
    words: 'much of its carbohydrate is not digested',
    names: /\b(?:cocoa|bran|spices?|yeast|mushrooms?|seaweed|psyllium|tea|coffee)\b/i,
  },
];

/**
 * Why a food's energy need not be what its protein, fat and carbohydrate give: by what its label states, then by
 * its name.
 * @example energyReasons('Vinegar, cider', version) // [{ code: 'acids', words: '…' }] (and alcohol by its name)
 */
export function energyReasons(name: string, version: FoodVersion): EnergyReason[] {
  const states = (nutrient: Nutrient) => {
    const cell = cellOf(version.values, nutrient);
    return cell.kind === 'eq' && cell.mantissa > 0;
  };
  return REASON_NAMES.filter(
    ({ code, names }) =>
      names.test(name) || ((code === 'alcohol' || code === 'polyols') && states(code)),
  ).map(({ code, words }) => ({ code, words }));
}

function within(
  factors: EnergyCheck['factors'],
  stated: number,
  low: number,
  high: number,
): EnergyCheck {
  return { factors, stated, low, high, fits: stated >= low && stated <= high };
}
