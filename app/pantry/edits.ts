import { v7 as uuid } from 'uuid';
import type { z } from 'zod';
import { checkLabel } from '#lib/foods/check-label';
import { checkServingsInPacks, type PackAmounts } from '#lib/foods/check-servings';
import type { Food, FoodVersion } from '#lib/foods/food';
import { failed, ok, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { foodRows, versionRow } from '#lib/store/food-rows';
import type { newFoodForm } from './schema';

type NewFood = z.output<typeof newFoodForm>;
type Label = NewFood['label'];

/**
 * A version from what a label says. What cannot be is told with its field; where a reason to keep it was
 * given, it is kept with that reason.
 * @param packs what is known of its packs
 */
export function versionFromLabel(
  label: Label,
  keepReason: string,
  at: { readonly seq: number; readonly today: string },
  packs: readonly PackAmounts[],
): Result<FoodVersion> {
  const version: FoodVersion = {
    id: uuid(),
    seq: at.seq,
    ...label,
    factors: null,
    source: 'package label',
    release: '',
    sourceNo: '',
    dateRead: at.today,
    kept: [],
  };
  const problems = [...checkLabel(version), ...checkServingsInPacks(version, packs)];
  if (problems.length === 0) return ok(version);
  if (keepReason === '') return failed(...problems);
  const codes = [...new Set(problems.map(({ code }) => code))];
  return ok({ ...version, kept: codes.map((code) => ({ code, reason: keepReason })) });
}

/** A new own food with its first version and declared allergens. */
export function newFoodEdits(
  { name, section, allergens }: NewFood,
  version: FoodVersion,
  at: Date,
): { readonly foodId: string; readonly edits: Edit[] } {
  const food: Food = {
    id: uuid(),
    kind: 'label',
    name,
    section,
    witnessId: null,
    version,
    measures: [],
    yields: [],
    allergens: allergens.map((fact) => ({ id: uuid(), ...fact, reason: 'on the label' })),
  };
  const rows = foodRows(food, at);
  const edits: Edit[] = [
    { op: 'create', entity: 'Food', row: rows.Food },
    { op: 'create', entity: 'FoodVersion', row: rows.FoodVersion },
    ...rows.AllergenFact.map((row): Edit => ({ op: 'create', entity: 'AllergenFact', row })),
  ];
  return { foodId: food.id, edits };
}

/** The last reading once more, read today: the same digits, and what was kept with a reason stays kept. */
export function sameLabelEdits(food: Food, today: string): Edit[] {
  const { version } = food;
  return readAgainEdits(food, { ...version, id: uuid(), seq: version.seq + 1, dateRead: today });
}

/** A further reading of a label: the measures of the last one go with it. */
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
