import { v7 as uuid } from 'uuid';
import type { Food, FoodVersion } from '#lib/foods/food';
import type { Edit } from '#lib/store/command';
import { versionRow } from '#lib/store/food-rows';

/**
 * A further reading of a food's label as edits: the reading before stays, the measures go with the new one.
 * @param version the new reading; its `seq` is one above the last
 */
export function readAgainEdits(food: Food, version: FoodVersion): Edit[] {
  return [
    { op: 'create', entity: 'FoodVersion', row: versionRow(food.id, version) },
    ...food.measures.map((measure, position): Edit => ({
      op: 'create',
      entity: 'FoodMeasure',
      row: { ...measure, id: uuid(), versionId: version.id, position },
    })),
  ];
}

/**
 * "Same label": a reading of the date given that says what the last one said, digit by digit.
 * @param food as it stands, with the version in use
 * @param dateRead local date in the person's kitchen, `YYYY-MM-DD`
 * @example sameLabelEdits(skyr, '2026-06-01') // FoodVersion seq 2 with the values of seq 1, and its measures
 */
export function sameLabelEdits(food: Food, dateRead: string): Edit[] {
  const { version } = food;
  return readAgainEdits(food, { ...version, id: uuid(), seq: version.seq + 1, dateRead });
}
