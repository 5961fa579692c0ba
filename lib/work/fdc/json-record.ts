import { z } from 'zod';
import type { FdcDataType, FdcRecord } from '#lib/foods/fdc-record';
import { knownNumber } from '#lib/foods/fdc-nutrients';
import type { Counter } from '#lib/work/fdc/faults';
import type { ArrayName, JsonFood } from '#lib/work/fdc/read-json';

/** A text, or a number as its text; what is absent, null or something else is a blank. */
const text = z
  .union([z.string(), z.null(), z.undefined()])
  .transform((value) => value ?? '')
  .catch('');
const list = z.array(z.unknown()).catch([]);
const named = z.object({ name: text, unitName: text, number: text }).partial().catch({});

const nutrientSchema = z.object({
  nutrient: named,
  amount: text,
  loq: text,
  foodNutrientDerivation: z.object({ code: text }).partial().nullish().catch(null),
});
const portionSchema = z.object({
  amount: text,
  value: text,
  measureUnit: named.nullish(),
  modifier: text,
  portionDescription: text,
  gramWeight: text,
});
const factorSchema = z.object({
  type: text,
  proteinValue: text,
  fatValue: text,
  carbohydrateValue: text,
  value: text,
});
const foodSchema = z.object({
  fdcId: text,
  description: text,
  publicationDate: text,
  foodNutrients: list,
  foodPortions: list,
  nutrientConversionFactors: list,
  foodCategory: z.object({ code: text }).partial().nullish().catch(null),
  brandOwner: text,
  brandName: text,
  gtinUpc: text,
  ingredients: text,
  servingSize: text,
  servingSizeUnit: text,
  householdServingFullText: text,
  brandedFoodCategory: text,
  marketCountry: text,
});

const TYPES: Readonly<Record<ArrayName, FdcDataType | null>> = {
  FoundationFoods: 'foundation_food',
  SRLegacyFoods: 'sr_legacy_food',
  BrandedFoods: 'branded_food',
  SurveyFoods: null,
};

/**
 * An entry of a JSON download as a record; null where it is none or of a kind that is not imported, which is
 * counted. Faults of a nutrient or a portion leave the food standing.
 */
export function recordOf(
  { array, place, food }: JsonFood,
  file: string,
  counter: Counter,
): FdcRecord | null {
  counter.addRow();
  const at = `food ${place}`;
  const dataType = TYPES[array];
  if (dataType === null) {
    counter.passOver(array);
    return null;
  }
  const read = foodSchema.safeParse(food);
  if (!read.success) {
    counter.fault(file, at, 'it is no object with the fields of a food');
    return null;
  }
  const { data } = read;
  const id = /^\d{1,10}$/.test(data.fdcId) ? Number(data.fdcId) : 0;
  return {
    fdcId: id,
    dataType,
    description: data.description,
    groupCode: data.foodCategory?.code ?? '',
    published: data.publicationDate,
    nutrients: data.foodNutrients.flatMap((each) => nutrientOf(each, file, at, counter)),
    portions: data.foodPortions.flatMap((each) => portionOf(each, file, at, counter)),
    factors: factorsOf(data.nutrientConversionFactors),
    branded:
      dataType === 'branded_food'
        ? {
            brandOwner: data.brandOwner,
            brandName: data.brandName,
            gtin: data.gtinUpc,
            ingredients: data.ingredients,
            servingSize: data.servingSize,
            servingUnit: data.servingSizeUnit,
            household: data.householdServingFullText,
            category: data.brandedFoodCategory,
            marketCountry: data.marketCountry,
          }
        : null,
  };
}

function nutrientOf(
  each: unknown,
  file: string,
  at: string,
  counter: Counter,
): FdcRecord['nutrients'] {
  const read = nutrientSchema.safeParse(each);
  if (!read.success) {
    counter.fault(file, at, 'one of its nutrients is no object with nutrient and amount');
    return [];
  }
  const { nutrient, amount, loq, foodNutrientDerivation } = read.data;
  const { number = '', name = '', unitName = '' } = nutrient;
  if (!knownNumber(number, unitName)) {
    counter.unknownNutrient(`${name || 'nutrient'} (${number || 'no number'}, ${unitName})`);
    return [];
  }
  return [{ number, unit: unitName, amount, loq, derivation: foodNutrientDerivation?.code ?? '' }];
}

function portionOf(
  each: unknown,
  file: string,
  at: string,
  counter: Counter,
): FdcRecord['portions'] {
  const read = portionSchema.safeParse(each);
  if (!read.success) {
    counter.fault(file, at, 'one of its portions is no object');
    return [];
  }
  const { amount, value, measureUnit, modifier, portionDescription, gramWeight } = read.data;
  return [
    {
      amount: amount || value,
      unit: measureUnit?.name ?? '',
      modifier,
      description: portionDescription,
      grams: gramWeight,
    },
  ];
}

function factorsOf(all: readonly unknown[]): FdcRecord['factors'] {
  const read = all.flatMap((each) => factorSchema.safeParse(each).data ?? []);
  const energy = read.find(({ type }) => type.endsWith('CalorieConversionFactor'));
  const protein = read.find(({ type }) => type.endsWith('ProteinConversionFactor'));
  if (!energy && !protein) return null;
  return {
    protein: energy?.proteinValue ?? '',
    fat: energy?.fatValue ?? '',
    carbohydrate: energy?.carbohydrateValue ?? '',
    nitrogen: protein?.value ?? '',
  };
}
