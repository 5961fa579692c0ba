/**
 * A food of a FoodData Central download as published, before anything is read into it: texts with their printed
 * digits, from the tables as CSV or from the JSON alike. An empty text is a blank.
 * Names of fields: "FoodData Central Download & API Field Descriptions" (USDA).
 */
export interface FdcRecord {
  readonly fdcId: number;
  readonly dataType: FdcDataType;
  readonly description: string;
  /** Code of the food group of Foundation and SR Legacy foods ("0100"), where the download has it. */
  readonly groupCode: string;
  /** `publication_date` as printed: 2021-10-28 or 10/28/2021. */
  readonly published: string;
  readonly nutrients: readonly FdcNutrient[];
  readonly portions: readonly FdcPortion[];
  readonly factors: FdcFactors | null;
  /** Null for foods that are no product, and for products whose row is missing. */
  readonly branded: FdcBranded | null;
}

/** The kinds of food that are imported, by the names of `food.csv`. */
export const FDC_DATA_TYPES = {
  foundation_food: 'Foundation',
  sr_legacy_food: 'SR Legacy',
  branded_food: 'Branded',
} as const;
export type FdcDataType = keyof typeof FDC_DATA_TYPES;

export interface FdcNutrient {
  /** `nutrient_nbr`: "203" is protein. */
  readonly number: string;
  readonly unit: string;
  /** Per 100 g; of branded foods in millilitres, per 100 ml. */
  readonly amount: string;
  /** Code of `food_nutrient_derivation`: "LCSL" is worked out of a "less than" on the label. */
  readonly derivation: string;
  /** Limit of quantification: what is below it was not measured. */
  readonly loq: string;
}

export interface FdcPortion {
  readonly amount: string;
  readonly unit: string;
  readonly modifier: string;
  readonly description: string;
  readonly grams: string;
}

export interface FdcFactors {
  readonly protein: string;
  readonly fat: string;
  readonly carbohydrate: string;
  readonly nitrogen: string;
}

export interface FdcBranded {
  readonly brandOwner: string;
  readonly brandName: string;
  readonly gtin: string;
  readonly ingredients: string;
  readonly servingSize: string;
  readonly servingUnit: string;
  readonly household: string;
  readonly category: string;
  readonly marketCountry: string;
}
