import 'server-only';
import { createHash } from 'node:crypto';
import { v7 as uuid } from 'uuid';
import { Prisma } from '#db/generated/sqlite/client';
import type { Food } from '#lib/foods/food';
import { ok, type Result } from '#lib/result';
import { database, inTransaction } from '#lib/store/client';
import { SHARED_CREATOR_ID } from '#lib/store/creators';
import { folded } from '#lib/store/fold';
import { foodRows } from '#lib/store/food-rows';
import type { RowInput } from '#lib/store/rows';
import { writeJournal } from '#lib/store/write';

export interface Release {
  readonly source: string;
  readonly release: string;
  readonly at: Date;
}

/** Whether a release was loaded: its foods come in one transaction, so one of them stands for all. */
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
  const owner = { creatorId: SHARED_CREATOR_ID };
  const rows = foods.map((food) => foodRows(food, at));
  const sha256 = createHash('sha256').update(JSON.stringify(foods)).digest('hex');
  const own = <T extends object>(row: T) => ({ ...row, ...owner });
  const names = rows.map(({ Food: row }) => ({ ...own(row), nameFolded: folded(row.name) }));
  const versions = rows.map(({ FoodVersion: row }) => asJson(own(row)));
  await inTransaction(async (tx) => {
    for (const data of batches(names)) await tx.food.createMany({ data });
    for (const data of batches(versions)) await tx.foodVersion.createMany({ data });
    for (const data of batches(rows.flatMap((row) => row.FoodMeasure.map(own)))) {
      await tx.foodMeasure.createMany({ data });
    }
    for (const data of batches(rows.flatMap((row) => row.YieldObservation.map(own)))) {
      await tx.yieldObservation.createMany({ data });
    }
    for (const data of batches(rows.flatMap((row) => row.AllergenFact.map(own)))) {
      await tx.allergenFact.createMany({ data });
    }
    const loaded = { id: uuid(), source, release, sha256, foodCount: foods.length, at };
    await tx.referenceRelease.create({ data: own(loaded) });
    await writeJournal(
      tx,
      { actor: 'prepare', label: `Load ${source}, ${release}`, at },
      SHARED_CREATOR_ID,
      uuid(),
      [
        {
          entity: 'ReferenceRelease',
          entityId: loaded.id,
          before: null,
          after: { ...own(loaded), rev: 1, deletedAt: null },
        },
      ],
    );
  });
  return ok(foods.length);
}

/** Values as the client takes them over whole, instead of walking through every printed cell. */
function asJson(row: RowInput<'FoodVersion'> & { creatorId: string }) {
  const whole = (value: object) => ({ toJSON: () => value }) as unknown as Prisma.InputJsonValue;
  return {
    ...row,
    values: whole(row.values),
    kept: whole(row.kept),
    factors: row.factors ? whole(row.factors) : Prisma.DbNull,
    secondValues: row.secondValues ? whole(row.secondValues) : Prisma.DbNull,
  };
}

/** Cells to a statement: the client's work for one statement grows faster than its cells. */
const CELLS = 700;

/**
 * Rows in batches for one statement each. Columns that no row fills are left out, since every cell costs;
 * the database puts nothing there.
 */
function batches<T extends object>(rows: readonly T[]): T[][] {
  const filled = new Set<string>();
  for (const row of rows) {
    for (const [column, value] of Object.entries(row)) {
      if (value !== null && value !== Prisma.DbNull) filled.add(column);
    }
  }
  const size = Math.max(1, Math.floor(CELLS / Math.max(1, filled.size)));
  const lean = rows.map(
    (row) => Object.fromEntries(Object.entries(row).filter(([column]) => filled.has(column))) as T,
  );
  return Array.from({ length: Math.ceil(rows.length / size) }, (_, index) =>
    lean.slice(index * size, (index + 1) * size),
  );
}
