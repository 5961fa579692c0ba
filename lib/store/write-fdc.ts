import 'server-only';
import { v7 as uuid } from 'uuid';
import { FDC_SOURCE, type FdcFood } from '#lib/foods/fdc-food';
import { bulkInsert } from '#lib/store/bulk-insert';
import { database, inTransaction, type Tx } from '#lib/store/client';
import { SHARED_CREATOR_ID } from '#lib/store/creators';
import { numbered, takeLaterReadings, type OldFood } from '#lib/store/fdc-later-readings';
import { fdcFoodRows, fdcTokenRows, fdcVersionRow, shared } from '#lib/store/fdc-rows';
import { writeJournal } from '#lib/store/write';

/** What a batch has changed: nothing, where all of it was there. */
export interface FdcWritten {
  readonly newFoods: number;
  /** Readings that were added, to new foods and to those that were there. */
  readonly newReadings: number;
}

/**
 * Brings foods of FoodData Central in, in one transaction. Records that are there already are passed over, so the
 * same batch again changes nothing. Records of one barcode number are readings of one food: the last record's
 * reading is the one in use, and the food has its name. As for other published tables the journal has one line
 * for the whole release (`finishFdcRelease`).
 */
export async function writeFdcFoods(foods: readonly FdcFood[], at: Date): Promise<FdcWritten> {
  if (foods.length === 0) return { newFoods: 0, newReadings: 0 };
  return inTransaction(async (tx) => {
    const fresh = await notThere(tx, foods);
    if (fresh.length === 0) return { newFoods: 0, newReadings: 0 };
    const byFood = new Map<string, FdcFood[]>();
    for (const each of fresh) {
      byFood.set(each.food.id, [...(byFood.get(each.food.id) ?? []), each]);
    }
    const old = await tx.food.findMany({
      where: { id: { in: [...byFood.keys()] } },
      select: { id: true, name: true, versions: { select: { id: true, seq: true } } },
    });
    const oldIds = new Set(old.map(({ id }) => id));
    const newest = [...byFood].flatMap(([id, all]) => (oldIds.has(id) ? [] : (all.at(-1) ?? [])));
    await bulkInsert(tx, 'Food', newest.map(fdcFoodRows));
    await bulkInsert(tx, 'FoodVersion', versionRows(byFood, old));
    await bulkInsert(
      tx,
      'FoodMeasure',
      fresh.flatMap(({ food }) =>
        food.measures.map((measure, position) =>
          shared({ ...measure, versionId: food.version.id, position }),
        ),
      ),
    );
    await bulkInsert(
      tx,
      'AllergenFact',
      newest.flatMap(({ food }) =>
        food.allergens.map((fact, position) => shared({ ...fact, foodId: food.id, position, at })),
      ),
    );
    await bulkInsert(tx, 'FoodToken', newest.flatMap(fdcTokenRows));
    await takeLaterReadings(tx, old, byFood, at);
    return { newFoods: newest.length, newReadings: fresh.length };
  });
}

/** The foods whose records are not in the store, each record once, in the order of their numbers. */
async function notThere(tx: Tx, foods: readonly FdcFood[]): Promise<FdcFood[]> {
  const byVersion = new Map(foods.map((each) => [each.food.version.id, each]));
  const known = await tx.foodVersion.findMany({
    where: { id: { in: [...byVersion.keys()] } },
    select: { id: true },
  });
  for (const { id } of known) byVersion.delete(id);
  return [...byVersion.values()].sort((a, b) => a.fdcId - b.fdcId);
}

/** Readings are numbered in the order of their records, among those that were there. */
function versionRows(byFood: ReadonlyMap<string, readonly FdcFood[]>, old: readonly OldFood[]) {
  const before = new Map(old.map((food) => [food.id, food]));
  return [...byFood].flatMap(([id, added]) => {
    const numbers = numbered(before.get(id), added);
    return added.map((each) => fdcVersionRow(each, numbers.get(each.food.version.id) ?? 1));
  });
}

/** A release that was read to its end. */
export interface FdcRelease {
  /** As in "Branded 2025-04-24". */
  readonly release: string;
  /** Of the download's bytes. */
  readonly sha256: string;
  readonly foodCount: number;
  readonly at: Date;
}

/** When a download of just these bytes was imported to its end; null if it was not. */
export async function fdcReleaseOf(
  sha256: string,
): Promise<{ readonly release: string; readonly at: Date; readonly foodCount: number } | null> {
  return database().referenceRelease.findFirst({
    where: { source: FDC_SOURCE, sha256, deletedAt: null },
    select: { release: true, at: true, foodCount: true },
  });
}

/** Says that a download is in the store as a whole, with one line in the journal; once for the same bytes. */
export async function finishFdcRelease({
  release,
  sha256,
  foodCount,
  at,
}: FdcRelease): Promise<void> {
  await inTransaction(async (tx) => {
    const where = { source: FDC_SOURCE, sha256, deletedAt: null };
    if (await tx.referenceRelease.findFirst({ where, select: { id: true } })) return;
    const loaded = shared({ id: uuid(), source: FDC_SOURCE, release, sha256, foodCount, at });
    await tx.referenceRelease.create({ data: loaded });
    await writeJournal(
      tx,
      { actor: 'import', label: `Import ${FDC_SOURCE}, ${release}`, at },
      SHARED_CREATOR_ID,
      uuid(),
      [{ entity: 'ReferenceRelease', entityId: loaded.id, before: null, after: loaded }],
    );
  });
}
