import 'server-only';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { readJournalText } from '#lib/store/journal';
import { ALIVE } from '#lib/store/load';

/** A food that became part of another, and the act that made it so. */
export interface MergedFood {
  readonly id: string;
  readonly name: string;
  readonly groupId: string;
  readonly at: Date;
}

/** The food that a food is part of; null where it is part of none. */
export async function readPartOf(
  foodId: string,
): Promise<{ readonly id: string; readonly name: string } | null> {
  const food = await database().food.findUnique({
    where: { id: foodId },
    select: { mergedIntoId: true },
  });
  if (food === null || food.mergedIntoId === null) return null;
  return database().food.findUnique({
    where: { id: food.mergedIntoId },
    select: { id: true, name: true },
  });
}

/** The foods that became part of a food, the last one first. */
export async function readMergedInto(
  foodId: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly MergedFood[]> {
  const foods = await database().food.findMany({
    where: { creatorId, ...ALIVE, mergedIntoId: foodId },
    select: { id: true, name: true },
  });
  const merged = await Promise.all(
    foods.map(async ({ id, name }): Promise<MergedFood[]> => {
      const changes = await database().change.findMany({
        where: { entity: 'Food', entityId: id },
        orderBy: { seq: 'desc' },
        select: { groupId: true, at: true, before: true, after: true },
      });
      const act = changes.find(
        ({ before, after }) =>
          readJournalText(after)?.mergedIntoId === foodId &&
          readJournalText(before)?.mergedIntoId !== foodId,
      );
      return act ? [{ id, name, groupId: act.groupId, at: act.at }] : [];
    }),
  );
  return merged.flat().sort((a, b) => b.at.getTime() - a.at.getTime());
}
