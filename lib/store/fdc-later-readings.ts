import type { FdcFood } from '#lib/foods/fdc-food';
import { fdcPartId } from '#lib/foods/fdc-ids';
import { bulkInsert } from '#lib/store/bulk-insert';
import type { Tx } from '#lib/store/client';
import { fdcFoodRows, fdcTokenRows, shared } from '#lib/store/fdc-rows';

/** A food that was there before a batch, with its readings then. */
export interface OldFood {
  readonly id: string;
  readonly name: string;
  readonly versions: readonly { readonly id: string; readonly seq: number }[];
}

/**
 * What readings added to foods that were there bring beside themselves: readings are numbered anew by their
 * records, and where the last one is new the food takes its name, its words and the allergens that it adds.
 */
export async function renameFdcFoods(
  tx: Tx,
  old: readonly OldFood[],
  byFood: ReadonlyMap<string, readonly FdcFood[]>,
  at: Date,
): Promise<void> {
  for (const before of old) {
    const added = byFood.get(before.id) ?? [];
    await numberAnew(tx, before, added);
    const last = added.at(-1);
    if (!last || before.versions.some(({ id }) => id > last.food.version.id)) continue;
    if (last.food.name !== before.name) await takeName(tx, last);
    await addAllergens(tx, last, at);
  }
}

async function numberAnew(tx: Tx, before: OldFood, added: readonly FdcFood[]): Promise<void> {
  const stored = new Map(before.versions.map(({ id, seq }) => [id, seq]));
  added.forEach(({ food }, place) => stored.set(food.version.id, place + 1));
  const ids = [...stored.keys()].sort();
  for (const [place, id] of ids.entries()) {
    const seq = place + 1;
    if (stored.get(id) !== seq) await tx.foodVersion.update({ where: { id }, data: { seq } });
  }
}

async function takeName(tx: Tx, last: FdcFood): Promise<void> {
  const { name, nameFolded, section } = fdcFoodRows(last);
  await tx.food.update({
    where: { id: last.food.id },
    data: { name, nameFolded, section, rev: { increment: 1 } },
  });
  // An index, not what somebody wrote: its rows are made anew.
  await tx.foodToken.deleteMany({ where: { foodId: last.food.id } });
  await bulkInsert(tx, 'FoodToken', fdcTokenRows(last));
}

async function addAllergens(tx: Tx, { food, key }: FdcFood, at: Date): Promise<void> {
  const facts = await tx.allergenFact.findMany({
    where: { foodId: food.id },
    select: { id: true, allergen: true },
  });
  const named = new Set(facts.map(({ allergen }) => allergen));
  const lacking = food.allergens.filter(({ allergen }) => !named.has(allergen));
  const taken = facts.length;
  await bulkInsert(
    tx,
    'AllergenFact',
    lacking.map((fact, index) =>
      shared({
        ...fact,
        id: fdcPartId('allergen', key, 100 + taken + index),
        foodId: food.id,
        position: taken + index,
        at,
      }),
    ),
  );
}
