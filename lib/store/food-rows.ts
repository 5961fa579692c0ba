import type { Food, FoodVersion } from '#lib/foods/food';
import type { RowInput } from '#lib/store/rows';

/** The rows that a food is kept as. */
export interface FoodRows {
  readonly Food: RowInput<'Food'>;
  readonly FoodVersion: RowInput<'FoodVersion'>;
  readonly FoodMeasure: readonly RowInput<'FoodMeasure'>[];
  readonly YieldObservation: readonly RowInput<'YieldObservation'>[];
  readonly AllergenFact: readonly RowInput<'AllergenFact'>[];
}

/** A food as rows, under its own ids. `at` dates its yields and allergen facts. */
export function foodRows(food: Food, at: Date): FoodRows {
  const { id: foodId, version } = food;
  return {
    Food: {
      id: foodId,
      kind: food.kind,
      name: food.name,
      section: food.section,
      mergedIntoId: null,
      witnessId: food.witnessId,
      recipeId: null,
    },
    FoodVersion: versionRow(foodId, version),
    FoodMeasure: food.measures.map((measure, position) => ({
      ...measure,
      versionId: version.id,
      position,
    })),
    YieldObservation: food.yields.map(({ own, ...observed }, position) => ({
      ...observed,
      ownHalfMg: own?.halfMg ?? null,
      lineId: own?.lineId ?? null,
      foodId,
      position,
      at,
    })),
    AllergenFact: food.allergens.map((fact, position) => ({ ...fact, foodId, position, at })),
  };
}

/** One reading of a table row or label as a row. */
export function versionRow(foodId: string, version: FoodVersion): RowInput<'FoodVersion'> {
  const { serving, secondColumn, refuse, ...same } = version;
  return {
    ...same,
    foodId,
    servingMg: serving?.massMg ?? null,
    servingMl: serving?.volumeMl ?? null,
    servingDecimals: serving?.decimals ?? null,
    servingText: serving?.text ?? null,
    servings: serving?.perPack ?? null,
    secondBasis: secondColumn?.basis ?? null,
    secondValues: secondColumn?.values ?? null,
    refusePercent: refuse?.percent ?? null,
    refuseText: refuse?.text ?? null,
    refuseInValues: refuse?.inValues ?? false,
  };
}
