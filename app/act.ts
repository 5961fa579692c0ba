import 'server-only';
import { revalidatePath } from 'next/cache';
import { ok, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { write } from '#lib/store/write';

/**
 * One act of the person: its edits are written together, then every page under an address is read anew.
 * @param pages `/` for what stands in every episode, as foods and the kitchen; else the episode's own address
 */
export async function act(
  pages: string,
  label: string,
  edits: readonly Edit[],
  at = new Date(),
): Promise<Result<string>> {
  const written = await write({ actor: DEFAULT_CREATOR_ID, label, at, edits });
  if (!written.ok) return written;
  revalidatePath(pages, 'layout');
  return ok(`${label}: done.`);
}
