import type { RoundingRule } from '#lib/foods/food';
import type { Nutrient } from '#lib/foods/nutrients';

/** A stretch of true values that is rounded to one grid. Both ends count, since a tie may go either way. */
export interface Band {
  readonly from: number;
  /** Infinity for the last band. */
  readonly to: number;
  /** The grid is the multiples of `stepNum / stepDen` of the nutrient's unit. */
  readonly stepNum: number;
  readonly stepDen: number;
}

/** How one nutrient is rounded on a label. */
export interface GridRule {
  readonly bands: readonly Band[];
  /** True values below this must read 0. */
  readonly zeroBelow: number;
  /** True values below (or, for `eu`, up to) this may read 0. */
  readonly mayBeZeroBelow: number;
  /** The words "less than n": what is printed, and the true values for which they may stand. */
  readonly lessThan: {
    readonly printed: number;
    readonly from: number;
    readonly below: number;
  } | null;
  readonly source: string;
}

function bands(...steps: readonly (readonly [from: number, num: number, den: number])[]): Band[] {
  return steps.map(([from, stepNum, stepDen], index) => ({
    from,
    to: steps[index + 1]?.[0] ?? Infinity,
    stepNum,
    stepDen,
  }));
}

/** 21 CFR 101.9(c)(1): nearest 5 kcal up to and including 50, nearest 10 above; under 5 may be 0. */
const US_ENERGY: GridRule = {
  bands: bands([0, 5, 1], [50, 10, 1]),
  zeroBelow: 0,
  mayBeZeroBelow: 5,
  lessThan: null,
  source: '21 CFR 101.9(c)(1)',
};

/** 21 CFR 101.9(c)(2): under 0.5 g is 0; nearest 0.5 g below 5 g, nearest 1 g from there. */
const US_FAT: GridRule = {
  bands: bands([0.5, 1, 2], [5, 1, 1]),
  zeroBelow: 0.5,
  mayBeZeroBelow: 0.5,
  lessThan: null,
  source: '21 CFR 101.9(c)(2)',
};

/**
 * 21 CFR 101.9(c)(3): nearest 5 mg; 2 to 5 mg may read "less than 5"; under 2 mg is 0 (the 2 mg limit from
 * memory, section number given). Where the "may" is not used, 2 to 2.5 mg round to 0.
 */
const US_CHOLESTEROL: GridRule = {
  bands: bands([2, 5, 1]),
  zeroBelow: 2,
  mayBeZeroBelow: 2,
  lessThan: { printed: 5, from: 2, below: 5 },
  source: '21 CFR 101.9(c)(3)',
};

/** 21 CFR 101.9(c)(4): under 5 mg is 0; nearest 5 mg up to 140, nearest 10 above. */
const US_SODIUM: GridRule = {
  bands: bands([5, 5, 1], [140, 10, 1]),
  zeroBelow: 5,
  mayBeZeroBelow: 5,
  lessThan: null,
  source: '21 CFR 101.9(c)(4)',
};

/** 21 CFR 101.9(c)(6), (c)(7): nearest 1 g; under 1 g may read "less than 1"; under 0.5 g may be 0. */
const US_WHOLE_GRAMS: GridRule = {
  bands: bands([0, 1, 1]),
  zeroBelow: 0,
  mayBeZeroBelow: 0.5,
  lessThan: { printed: 1, from: 0, below: 1 },
  source: '21 CFR 101.9(c)(6), (7)',
};

const EU_GUIDANCE = 'EU guidance on tolerances, 2012, table 4 (from memory)';

/** Nearest 1 kJ or 1 kcal. */
const EU_ENERGY: GridRule = {
  bands: bands([0, 1, 1]),
  zeroBelow: 0,
  mayBeZeroBelow: 0,
  lessThan: null,
  source: EU_GUIDANCE,
};

/** From 10 g to 1 g, below to 0.1 g; up to `zero` g may read 0 or "<zero". */
const euGrams = (zero: number): GridRule => ({
  bands: bands([0, 1, 10], [10, 1, 1]),
  zeroBelow: 0,
  mayBeZeroBelow: zero,
  lessThan: { printed: zero, from: 0, below: zero },
  source: EU_GUIDANCE,
});

/** From 1 g to 0.1 g, below to 0.01 g; up to 0.0125 g may read 0 or "<0.01". */
const EU_SALT: GridRule = {
  bands: bands([0, 1, 100], [1, 1, 10]),
  zeroBelow: 0,
  mayBeZeroBelow: 0.0125,
  lessThan: { printed: 0.01, from: 0, below: 0.0125 },
  source: EU_GUIDANCE,
};

/** Sodium as salt, in mg: from 1 g to 0.1 g, below to 0.01 g; up to 5 mg may read 0 or "<0.005 g". */
const EU_SODIUM: GridRule = {
  bands: bands([0, 10, 1], [1000, 100, 1]),
  zeroBelow: 0,
  mayBeZeroBelow: 5,
  lessThan: { printed: 5, from: 0, below: 5 },
  source: EU_GUIDANCE,
};

const US: Partial<Record<Nutrient, GridRule>> = {
  energyKcal: US_ENERGY,
  fat: US_FAT,
  saturated: US_FAT,
  transFat: US_FAT,
  monounsaturated: US_FAT,
  polyunsaturated: US_FAT,
  cholesterol: US_CHOLESTEROL,
  sodium: US_SODIUM,
  carbohydrate: US_WHOLE_GRAMS,
  fibre: US_WHOLE_GRAMS,
  sugars: US_WHOLE_GRAMS,
  addedSugars: US_WHOLE_GRAMS,
  polyols: US_WHOLE_GRAMS,
  protein: US_WHOLE_GRAMS,
};

const EU: Partial<Record<Nutrient, GridRule>> = {
  energyKcal: EU_ENERGY,
  energyKj: EU_ENERGY,
  fat: euGrams(0.5),
  carbohydrate: euGrams(0.5),
  sugars: euGrams(0.5),
  protein: euGrams(0.5),
  fibre: euGrams(0.5),
  polyols: euGrams(0.5),
  saturated: euGrams(0.1),
  monounsaturated: euGrams(0.1),
  polyunsaturated: euGrams(0.1),
  salt: EU_SALT,
  sodium: EU_SODIUM,
};

/**
 * The grid to which a rule rounds a nutrient; null where the rule has none (vitamins, most minerals, and
 * everything under `asPrinted`): then a value stands for half a unit of its last place.
 * Sources stand beside each grid above.
 */
export function gridRule(rule: RoundingRule, nutrient: Nutrient): GridRule | null {
  if (rule === 'asPrinted') return null;
  return (rule === 'us' ? US : EU)[nutrient] ?? null;
}

/**
 * Serving grams on a US label, 21 CFR 101.9(b)(7) (from memory, section number given):
 * nearest 0.1 g below 2 g, nearest 0.5 g from 2 to 5 g, nearest 1 g from there.
 */
export const US_SERVING_GRAMS: GridRule = {
  bands: bands([0, 1, 10], [2, 1, 2], [5, 1, 1]),
  zeroBelow: 0,
  mayBeZeroBelow: 0,
  lessThan: null,
  source: '21 CFR 101.9(b)(7)',
};
