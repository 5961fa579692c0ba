import 'server-only';
import { revalidatePath } from 'next/cache';
import { failed, ok, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
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
