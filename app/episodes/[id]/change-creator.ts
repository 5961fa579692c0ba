import type { DescriptionLayout } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { failed, type Result } from '#lib/result';
import { readRevisedEpisode } from '#lib/store/read-revised-episode';
import { act } from '../../act';

/** What the person may change of them. */
interface Ways {
  readonly wordsPerMinute?: number | null;
  readonly layout?: DescriptionLayout;
}

/**
 * One act on the ways of the person whose episode it is: all episodes read them.
 * @param ways what they are from now on, told from those that the episode was read with
 */
export async function changeCreator(
  episodeId: string,
  label: string,
  ways: (before: EpisodeFile['creator']) => Ways,
): Promise<Result<string>> {
  const read = await readRevisedEpisode(episodeId, new Date().toISOString());
  if (!read) {
    return failed({ path: '', code: 'gone', message: 'This episode is no longer there.' });
  }
  const { file, revs } = read;
  const { id } = file.creator;
  const patch = ways(file.creator);
  const rev = revs[id];
  return act('/', label, [
    rev === undefined
      ? { op: 'create', entity: 'Creator', row: { id, name: '', wordsPerMinute: null, ...patch } }
      : { op: 'update', entity: 'Creator', id, rev, patch },
  ]);
}
