import { z } from 'zod';
import type { Food, FoodMeasure, YieldObservation } from '#lib/foods/food';
import { readGrams, readHouseholdWords } from '#lib/foods/household-weight';
import { referencePartId } from '#lib/foods/reference-ids';
import { failed, ok, type Problem, type Result } from '#lib/result';

const sourceNo = z.string().regex(/^\d{5}$/);
const grams = z.string().regex(/^\d+(\.\d{1,3})?$/);

/** Household weights that the abbreviated file lacks, as printed: "1 cup, shredded" weighs "113". */
export const addedMeasuresSchema = z.object({
  source: z.string().min(1).max(120),
  foods: z.array(
    z.object({
      sourceNo,
      /** The food's name in the table; it must match, so that a mistyped number is found. */
      food: z.string(),
      measures: z.array(z.object({ amount: z.string().max(120), grams })).min(1),
    }),
  ),
});
export type AddedMeasures = z.infer<typeof addedMeasuresSchema>;

/** Published cooked weights from raw weights. */
export const addedYieldsSchema = z.object({
  /** Published rows that are not used, and why. */
  leftOut: z.array(z.object({ sourceNo, food: z.string(), reason: z.string().min(1) })),
  yields: z.array(
    z.object({
      /** The cooked food at which the weights stand. */
      sourceNo,
      food: z.string(),
      /** The same food raw, where the table has it: the yield serves both. */
      rawSourceNos: z.array(sourceNo),
      method: z.string().min(1).max(80),
      rawGrams: grams,
      cookedGrams: grams,
      source: z.string().min(1).max(200),
    }),
  ),
});
export type AddedYields = z.infer<typeof addedYieldsSchema>;

/**
 * Reference foods with further household weights and yields merged in by number. A measure whose amount and
 * name the food has already is passed over. An unknown number, a name that is not the food's, and an amount
 * that cannot be read are told by path; then nothing is returned. The foods given are not changed.
 */
export function addToReferenceFoods(
  foods: readonly Food[],
  measures: AddedMeasures,
  yields: AddedYields,
): Result<Food[]> {
  const problems: Problem[] = [];
  const byNumber = new Map(foods.map((food) => [food.version.sourceNo, food]));
  const find = (path: string, number: string, name: string | null): Food | null => {
    const food = byNumber.get(number);
    if (food && (name === null || food.name === name)) return food;
    problems.push({
      path,
      code: 'not-that-food',
      message: food
        ? `Food ${number} is "${food.name}", not "${name}".`
        : `There is no reference food ${number}.`,
      facts: { sourceNo: number, name },
    });
    return null;
  };

  measures.foods.forEach((row, index) => {
    const path = `measures.foods[${index}]`;
    let food = find(path, row.sourceNo, row.food);
    row.measures.forEach((each, at) => {
      if (!food) return;
      const words = readHouseholdWords(each.amount);
      const weight = readGrams(each.grams);
      if (!words || !weight) {
        problems.push({
          path: `${path}.measures[${at}]`,
          code: 'measure-not-readable',
          message: `"${each.amount}" of "${each.grams}" g needs an amount, a name, and grams above zero.`,
        });
        return;
      }
      food = withMeasure(food, { ...words, ...weight, source: measures.source });
    });
    if (food) byNumber.set(row.sourceNo, food);
  });

  yields.yields.forEach((row, index) => {
    const path = `yields.yields[${index}]`;
    const raw = readGrams(row.rawGrams);
    const cooked = readGrams(row.cookedGrams);
    if (!raw || !cooked) {
      problems.push({
        path,
        code: 'yield-not-readable',
        message: `"${row.rawGrams}" g raw and "${row.cookedGrams}" g cooked must both be above zero.`,
      });
      return;
    }
    const observed = { method: row.method, rawMg: raw.massMg, cookedMg: cooked.massMg };
    for (const number of [row.sourceNo, ...row.rawSourceNos]) {
      const food = find(path, number, number === row.sourceNo ? row.food : null);
      if (food) {
        byNumber.set(number, withYield(food, { ...observed, source: row.source, own: null }));
      }
    }
  });

  if (problems.length > 0) return failed(...problems);
  return ok(foods.map((food) => byNumber.get(food.version.sourceNo) ?? food));
}

function withMeasure(food: Food, added: Omit<FoodMeasure, 'id'>): Food {
  const known = food.measures.some(
    (measure) =>
      measure.name === added.name &&
      measure.qtyNum === added.qtyNum &&
      measure.qtyDen === added.qtyDen,
  );
  if (known) return food;
  const id = referencePartId('measure', food.version.sourceNo, food.measures.length);
  return { ...food, measures: [...food.measures, { id, ...added }] };
}

function withYield(food: Food, added: Omit<YieldObservation, 'id'>): Food {
  const id = referencePartId('yield', food.version.sourceNo, food.yields.length);
  return { ...food, yields: [...food.yields, { id, ...added }] };
}
