import 'server-only';
import { createHash } from 'node:crypto';
import { episodeFigures } from '#lib/figures/episode-figures';
import { correctableCaptions, type CorrectableCaptions } from '#lib/overview/caption-corrections';
import { numbersToPublish, type NumbersToPublish } from '#lib/publish/from-lock';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readLastLock } from '#lib/store/read-locks';
import { readEditFacts } from '../../edit-facts';

/** Captions with what may be corrected in them, as they stand now. */
export interface ReadCaptions extends CorrectableCaptions {
  /** Another one where the words or what is right in their place are others. */
  readonly version: string;
}

/** The captions of an episode, held against the numbers that go out; null where there is no such episode. */
export async function readCaptions(id: string): Promise<{
  readonly source: NumbersToPublish;
  readonly captions: readonly ReadCaptions[];
} | null> {
  const live = await readEpisodeFile(id, new Date().toISOString(), { edit: true });
  if (!live) return null;
  const snapshot = (await readLastLock(id))?.snapshot ?? null;
  const source = numbersToPublish(live, snapshot);
  const facts = await readEditFacts(source.file);
  const all = correctableCaptions(source.file, facts, (nutrients) =>
    numbersToPublish(live, snapshot, episodeFigures(live, nutrients)),
  );
  return { source, captions: all.map((each) => ({ ...each, version: versionOf(each) })) };
}

function versionOf({ text, corrections }: CorrectableCaptions): string {
  const hash = createHash('sha256').update(text.text).update(JSON.stringify(corrections));
  return hash.digest('hex').slice(0, 16);
}
