import { MADE_NUTRIENTS, madeProduct, publishedAmount } from './made-food';

/** A made-up product as the JSON download has it, with a few of the fields that are not read. */
export function madeJsonFood(place: number, seed = 1): Record<string, unknown> {
  const made = madeProduct(seed, place);
  const [year, month, day] = made.published.split('-').map(Number);
  return {
    foodClass: 'Branded',
    description: made.description,
    foodNutrients: MADE_NUTRIENTS.flatMap(([id, name, unit, number, nutrient]) => {
      const printed = (made.label as Record<string, string | undefined>)[nutrient];
      if (printed === undefined) return [];
      const { amount, derivation } = publishedAmount(printed, made.servingSize);
      return [
        {
          type: 'FoodNutrient',
          id: made.fdcId * 20 + id,
          nutrient: { id, number, name, rank: 600, unitName: unit.toLowerCase() },
          foodNutrientDerivation: { code: derivation, description: derivation },
          amount: Number(amount),
        },
      ];
    }),
    foodAttributes: [],
    brandOwner: made.brandOwner,
    brandName: made.brandName,
    gtinUpc: made.gtin,
    ingredients: made.ingredients,
    marketCountry: 'United States',
    servingSize: made.servingSize,
    servingSizeUnit: made.servingUnit,
    householdServingFullText: made.household,
    brandedFoodCategory: made.category,
    dataType: 'Branded',
    publicationDate: `${month}/${day}/${year}`,
    labelNutrients: {},
    fdcId: made.fdcId,
  };
}

/** A Branded download of made-up products as one JSON text. */
export function madeJson(products: number, seed = 1): string {
  const foods = Array.from({ length: products }, (_, place) => madeJsonFood(place, seed));
  return JSON.stringify({ BrandedFoods: foods });
}
