import 'server-only';
import { createHash } from 'node:crypto';
import { v7 as uuid } from 'uuid';
import type { Food } from '#lib/foods/food';
import { ok, type Result } from '#lib/result';
import { bulkInsert } from '#lib/store/bulk-insert';
import { database, inTransaction } from '#lib/store/client';
import { SHARED_CREATOR_ID } from '#lib/store/creators';
import { folded } from '#lib/store/fold';
import { foodRows } from '#lib/store/food-rows';
import { writeJournal } from '#lib/store/write';

export interface Release {
  readonly source: string;
  readonly release: string;
  readonly at: Date;
}

/** Whether a release was loaded: its foods come in one transaction, so one row stands for all. */
export async function isReleaseLoaded(source: string, release: string): Promise<boolean> {
  const where = { source, release, deletedAt: null };
  return (await database().referenceRelease.findFirst({ where, select: { id: true } })) !== null;
}

/**
 * The funnel's wide mouth: a whole published table in one transaction, with one line in the journal for the
 * release, since a journal of a public table would only repeat it. The foods have passed their reader, so
 * rows are not checked again. Returns the number of foods; a release that is loaded already adds nothing.
 */
export async function writeReference(
  foods: readonly Food[],
  { source, release, at }: Release,
): Promise<Result<number>> {
  if (await isReleaseLoaded(source, release)) return ok(0);
  const common = { creatorId: SHARED_CREATOR_ID, rev: 1, deletedAt: null };
  const own = <T extends object>(row: T) => ({ ...row, ...common });
  const rows = foods.map((food) => foodRows(food, at));
  const sha256 = createHash('sha256').update(JSON.stringify(foods)).digest('hex');
  const foodCount = foods.length;
  const loaded = own({ id: uuid(), source, release, sha256, foodCount, at });
  await inTransaction(async (tx) => {
    const names = rows.map(({ Food: row }) => ({ ...own(row), nameFolded: folded(row.name) }));
    await bulkInsert(tx, 'Food', names);
    await bulkInsert(
      tx,
      'FoodVersion',
      rows.map((row) => own(row.FoodVersion)),
    );
    for (const part of ['FoodMeasure', 'YieldObservation', 'AllergenFact'] as const) {
      await bulkInsert(
        tx,
        part,
        rows.flatMap((row) => row[part].map(own)),
      );
    }
    await tx.referenceRelease.create({ data: loaded });
    await writeJournal(
      tx,
      { actor: 'prepare', label: `Load ${source}, ${release}`, at },
      SHARED_CREATOR_ID,
      uuid(),
      [{ entity: 'ReferenceRelease', entityId: loaded.id, before: null, after: loaded }],
    );
  });
  return ok(foodCount);
}
