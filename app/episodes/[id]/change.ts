import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { ok, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { write } from '#lib/store/write';

/** One act of the person on this episode; all pages of it are read anew. */
export async function change(
  episodeId: string,
  label: string,
  edits: readonly Edit[],
  at = new Date(),
): Promise<Result<string>> {
  const written = await write({ actor: DEFAULT_CREATOR_ID, label, at, edits });
  if (!written.ok) return written;
  revalidatePath(`/episodes/${episodeId}`, 'layout');
  return ok(`${label}: done.`);
}

/** Shows the page at a row with its form closed, once the row was saved. */
export async function changeAndClose(
  episodeId: string,
  rowId: string,
  label: string,
  edits: readonly Edit[],
): Promise<Result<string>> {
  const done = await change(episodeId, label, edits);
  if (done.ok) redirect(`/episodes/${episodeId}#row-${rowId}`);
  return done;
}

/** Takes a row out, and shows the page with the way to take it back in. */
export async function takeOut(
  episodeId: string,
  label: string,
  edit: Extract<Edit, { op: 'remove' }>,
): Promise<Result<string>> {
  const written = await write({
    actor: DEFAULT_CREATOR_ID,
    label,
    at: new Date(),
    edits: [edit],
  });
  if (!written.ok) return written;
  revalidatePath(`/episodes/${episodeId}`, 'layout');
  redirect(`/episodes/${episodeId}?undo=${written.value.groupId}`);
}
