import 'server-only';
import { createHash } from 'node:crypto';
import type { EpisodeFile } from '#lib/episode/schema';
import { correctableCaptions, type CorrectableCaptions } from '#lib/overview/caption-corrections';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readEditFacts } from '../../edit-facts';

/** Captions with what may be corrected in them, as they stand now. */
export interface ReadCaptions extends CorrectableCaptions {
  /** Another one where the words or what is right in their place are others. */
  readonly version: string;
}

/** The captions of an episode; null where there is no such episode. */
export async function readCaptions(
  id: string,
): Promise<{ readonly file: EpisodeFile; readonly captions: readonly ReadCaptions[] } | null> {
  const file = await readEpisodeFile(id, new Date().toISOString(), { edit: true });
  if (!file) return null;
  const all = correctableCaptions(file, await readEditFacts(file));
  return { file, captions: all.map((each) => ({ ...each, version: versionOf(each) })) };
}

function versionOf({ text, corrections }: CorrectableCaptions): string {
  const hash = createHash('sha256').update(text.text).update(JSON.stringify(corrections));
  return hash.digest('hex').slice(0, 16);
}
