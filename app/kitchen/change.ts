import 'server-only';
import { revalidatePath } from 'next/cache';
import type { Kitchen } from '#lib/episode/schema';
import { failed, ok, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { readKitchen } from '#lib/store/read-kitchen';
import { write } from '#lib/store/write';

/** One act on the kitchen; figures and plans rest on it, so all pages are read anew. */
export async function change(label: string, edits: readonly Edit[]): Promise<Result<string>> {
  const written = await write({ actor: DEFAULT_CREATOR_ID, label, at: new Date(), edits });
  if (!written.ok) return written;
  revalidatePath('/', 'layout');
  return ok(`${label}: done.`);
}

export const GONE = failed({
  path: '',
  code: 'gone',
  message: 'This kitchen is no longer there: open the page again.',
});

/** Refuses a part too many; null where one more fits. */
export async function noRoom(kitchenId: string, parts: (kitchen: Kitchen) => number, most: number) {
  const stored = await readKitchen(kitchenId);
  if (!stored) return GONE;
  if (parts(stored.kitchen) < most) return null;
  return failed({ path: '', code: 'too-many', message: `At most ${most} fit here.` });
}
