import 'server-only';
import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { failed, ok, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { readKitchen } from '#lib/store/read-kitchen';
import { write } from '#lib/store/write';
import { localDate } from '#lib/units/local-date';

export const GONE = failed({
  path: '',
  code: 'gone',
  message: 'This is no longer there: open the page again.',
});

/** One act on the pantry; foods stand in every episode, so all pages are read anew. */
export async function change(
  label: string,
  edits: readonly Edit[],
  at = new Date(),
): Promise<Result<string>> {
  const written = await write({ actor: DEFAULT_CREATOR_ID, label, at, edits });
  if (!written.ok) return written;
  revalidatePath('/', 'layout');
  return ok(`${label}: done.`);
}

/** The same, and then the page that shows it. */
export async function changeAndShow(
  path: string,
  label: string,
  edits: readonly Edit[],
  at = new Date(),
): Promise<Result<string>> {
  const done = await change(label, edits, at);
  if (done.ok) redirect(path);
  return done;
}

/** The date in the person's kitchen. */
export async function dateIn(at: Date): Promise<string> {
  const stored = await readKitchen();
  return localDate(at, stored?.kitchen.zone ?? 'UTC');
}
