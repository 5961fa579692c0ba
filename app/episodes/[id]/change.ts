import { redirect } from 'next/navigation';
import { ok, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { dropTyped } from '#lib/store/keep-typed';
import { removalEdits } from '#lib/store/remove-rows';
import { act } from '../../act';

/** One act of the person on this episode; all pages of it are read anew. */
export const change = (
  episodeId: string,
  label: string,
  edits: readonly Edit[],
  at?: Date,
): Promise<Result<string>> => act(`/episodes/${episodeId}`, label, edits, at);

/** Shows the page at a row with its form closed, once the row was saved. */
export async function changeAndClose(
  episodeId: string,
  rowId: string,
  label: string,
  edits: readonly Edit[],
): Promise<Result<string>> {
  const done = await change(episodeId, label, edits);
  if (!done.ok) return done;
  await dropTyped(rowId, new Date());
  redirect(`/episodes/${episodeId}#row-${rowId}`);
}

/** Takes a row out with all that hangs on it, and shows the page, which offers to undo it. */
export async function takeOut(
  episodeId: string,
  label: string,
  { entity, id, rev }: Extract<Edit, { op: 'remove' }>,
): Promise<Result<string>> {
  const done = await change(episodeId, label, await removalEdits(entity, id, rev));
  if (done.ok) redirect(`/episodes/${episodeId}`);
  return done;
}

/** Tries of an order that others change at the same time. */
const TRIES = 3;

/** Puts rows into the order wanted: the last one to say so wins, and no row is lost. */
export async function reorder(
  episodeId: string,
  label: string,
  edits: () => Promise<readonly Edit[]>,
): Promise<Result<string>> {
  for (let attempt = 1; ; attempt++) {
    const wanted = await edits();
    if (wanted.length === 0) return ok('It stands there already.');
    const done = await change(episodeId, label, wanted);
    const raced = !done.ok && done.problems.some(({ code }) => code === 'conflict');
    if (!raced || attempt === TRIES) return done;
  }
}
