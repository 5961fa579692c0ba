import 'server-only';
import type { EpisodeFile } from '#lib/episode/schema';
import { readEpisodeFile, readRevisions, type ReadEpisodeOptions } from '#lib/store/read-episode';

/** An episode with the revision of every row behind it, by id. */
export interface RevisedEpisode {
  readonly file: EpisodeFile;
  readonly revs: Record<string, number>;
}

/**
 * An episode as `readEpisodeFile` reads it, with the revisions that a change of what it shows must send. These are read
 * first, so that what somebody changes between both reads is refused as changed elsewhere and never overwritten.
 * @example const { file, revs } = await readRevisedEpisode(id, now) // an edit of a line sends revs[line.id]
 */
export async function readRevisedEpisode(
  episodeId: string,
  savedAt: string,
  options: ReadEpisodeOptions = {},
): Promise<RevisedEpisode | null> {
  const revs = await readRevisions(episodeId, options.creatorId, options.dayId);
  const file = await readEpisodeFile(episodeId, savedAt, options);
  return file && { file, revs };
}
