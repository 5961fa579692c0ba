import type { RoundingRule } from '#lib/foods/food';

/** Where the ranges and remarks of a label come from, by the rule it follows. */
export const RULE_SOURCES: Readonly<Record<RoundingRule, readonly string[]>> = {
  us: [
    'Ranges: rounding of 21 CFR 101.9(c)(1) to (c)(7) read backwards; serving grams (b)(7) and servings (b)(8) from memory. Both sides of a tie count, and every “may”.',
    'Energy: 4, 4 and 9 kcal per gram of protein, carbohydrate and fat, 7 of alcohol; fibre and polyols may count 0 to 4: 21 CFR 101.9(c)(1)(i).',
  ],
  eu: [
    'Ranges: EU guidance on tolerances of 2012, table 4 (from memory), read backwards.',
    'Energy: 17, 17 and 37 kJ, or 4, 4 and 9 kcal, per gram of protein, carbohydrate and fat; fibre 8 kJ or 2 kcal: Regulation (EU) 1169/2011 Annex XIV. Order of the lines: Annex XV.',
  ],
  asPrinted: [
    'Ranges: half a unit of the last place printed.',
    'Energy: 0.95 (4 P + 9 F + 4 (C − fibre)) − 5 to 1.05 (4 P + 9 F + 4 C) + 5 kcal, derived over USDA SR28.',
  ],
};
