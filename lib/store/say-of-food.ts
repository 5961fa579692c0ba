import 'server-only';
import { v7 as uuid } from 'uuid';
import type { PantryFood } from '#lib/episode/stock-schema';
import { pantryFoodSchema } from '#lib/episode/stock-schema';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { pantryFrom } from '#lib/store/from-rows';
import { ALIVE } from '#lib/store/load';
import { pantryColumns } from '#lib/store/stock-columns';

/**
 * The edits that say something of a food at home. Of two devices that answer, the last one counts: an answer is
 * given anew and never merged.
 * @param said what changes; what is left out stays as it was said before
 */
export async function sayOfFoodEdits(
  foodId: string,
  said: Partial<Pick<PantryFood, 'answer' | 'opened'>>,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Edit[]> {
  const row = await newestRow(foodId, creatorId);
  const before = row && pantryFoodSchema.parse(pantryFrom(row));
  const columns = pantryColumns({ answer: null, opened: null, ...before, ...said, foodId });
  if (!row) return [{ op: 'create', entity: 'PantryFood', row: { id: uuid(), ...columns } }];
  return [{ op: 'update', entity: 'PantryFood', id: row.id, rev: row.rev, patch: columns }];
}

/** What was said of a food at home, the newest that counts. */
async function newestRow(foodId: string, creatorId: string) {
  return database().pantryFood.findFirst({
    where: { ...ALIVE, creatorId, foodId },
    orderBy: { id: 'desc' },
  });
}
