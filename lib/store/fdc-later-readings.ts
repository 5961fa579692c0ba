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

/** A food's readings old and new in the order of their records, each with the number that it should have. */
export function numbered(
  before: OldFood | undefined,
  added: readonly FdcFood[],
): ReadonlyMap<string, number> {
  const ids = [
    ...(before?.versions.map(({ id }) => id) ?? []),
    ...added.map(({ food }) => food.version.id),
  ];
  return new Map(ids.sort().map((id, place) => [id, place + 1]));
}

/**
 * What readings added to foods that were there bring beside themselves: readings after an older one that came
 * late are numbered anew, and where the last one is new the food takes its name, its words and the allergens that
 * it adds.
 */
export async function takeLaterReadings(
  tx: Tx,
  old: readonly OldFood[],
  byFood: ReadonlyMap<string, readonly FdcFood[]>,
  at: Date,
): Promise<void> {
  const later: FdcFood[] = [];
  const renamed: FdcFood[] = [];
  for (const before of old) {
    const added = byFood.get(before.id) ?? [];
    const numbers = numbered(before, added);
    for (const { id, seq } of before.versions) {
      const wanted = numbers.get(id) ?? seq;
      if (wanted !== seq) await tx.foodVersion.update({ where: { id }, data: { seq: wanted } });
    }
    const last = added.at(-1);
    if (!last || before.versions.some(({ id }) => id > last.food.version.id)) continue;
    later.push(last);
    if (last.food.name !== before.name) renamed.push(last);
  }
  await takeNames(tx, renamed);
  await addAllergens(tx, later, at);
}

async function takeNames(tx: Tx, renamed: readonly FdcFood[]): Promise<void> {
  for (const each of renamed) {
    const { id, name, nameFolded, section } = fdcFoodRows(each);
    const data = { name, nameFolded, section, rev: { increment: 1 } };
    await tx.food.updateMany({ where: { id }, data });
  }
  // An index, not what somebody wrote: its rows are made anew.
  const foodId = { in: renamed.map(({ food }) => food.id) };
  if (renamed.length > 0) await tx.foodToken.deleteMany({ where: { foodId } });
  await bulkInsert(tx, 'FoodToken', renamed.flatMap(fdcTokenRows));
}

async function addAllergens(tx: Tx, later: readonly FdcFood[], at: Date): Promise<void> {
  const proposing = later.filter(({ food }) => food.allergens.length > 0);
  const facts = await tx.allergenFact.findMany({
    where: { foodId: { in: proposing.map(({ food }) => food.id) } },
    select: { foodId: true, allergen: true },
  });
  const named = new Map<string, Set<string>>();
  for (const { foodId, allergen } of facts) {
    named.set(foodId, (named.get(foodId) ?? new Set()).add(allergen));
  }
  await bulkInsert(
    tx,
    'AllergenFact',
    proposing.flatMap(({ food, key }) => {
      const there = named.get(food.id) ?? new Set();
      return food.allergens
        .filter(({ allergen }) => !there.has(allergen))
        .map((fact, index) => {
          const position = there.size + index;
          const id = fdcPartId('allergen', key, 100 + position);
          return shared({ ...fact, id, foodId: food.id, position, at });
        });
    }),
  );
}
