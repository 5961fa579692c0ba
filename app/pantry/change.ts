import 'server-only';
import { redirect } from 'next/navigation';
import { failed, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { act } from '../act';

export const GONE = failed({
  path: '',
  code: 'gone',
  message: 'This is no longer there: open the page again.',
});

/** One act on the pantry; foods stand in every episode, so all pages are read anew. */
export const change = (label: string, edits: readonly Edit[], at?: Date): Promise<Result<string>> =>
  act('/', label, edits, at);

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
