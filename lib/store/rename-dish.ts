import 'server-only';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';

/**
 * The edits by which a dish's recipe is called as its segment is about to be: the name under which it stands where
 * others are made from it. None where it is called so already, or the segment is talk.
 */
export async function renameEdits(segmentId: string, title: string): Promise<Edit[]> {
  const segment = await database().segment.findUnique({
    where: { id: segmentId },
    select: { recipe: { select: { id: true, rev: true, title: true, deletedAt: true } } },
  });
  const recipe = segment?.recipe;
  if (!recipe || recipe.deletedAt !== null || recipe.title === title) return [];
  const { id, rev } = recipe;
  return [{ op: 'update', entity: 'Recipe', id, rev, patch: { title } }];
}
