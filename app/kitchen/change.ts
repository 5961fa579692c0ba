import 'server-only';
import type { Kitchen } from '#lib/episode/kitchen-schema';
import { failed, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { readKitchen } from '#lib/store/read-kitchen';
import { act } from '../act';

/** One act on the kitchen; figures and plans rest on it, so all pages are read anew. */
export const change = (label: string, edits: readonly Edit[]): Promise<Result<string>> =>
  act('/', label, edits);

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
