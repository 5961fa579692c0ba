import 'server-only';
import type { EpisodeFile } from '#lib/episode/schema';
import { readKeptTexts } from '#lib/store/keep-typed';
import { localMoment } from '#lib/units/local-date';
import type { KeptTyping } from '../../_forms/form-frame';
import { rowTexts } from './_components/row-texts';
import { throwAway } from './actions';

/** What waits in a row's form from an earlier visit; null where nothing does. */
export async function keptTyping(
  file: EpisodeFile,
  rowId: string,
  using: boolean,
): Promise<KeptTyping | null> {
  const kept = await readKeptTexts(rowId);
  const standing = rowTexts(file, rowId);
  if (!kept || !standing) return null;
  const episodeId = file.episode.id;
  const href = `/episodes/${episodeId}?edit=${encodeURIComponent(rowId)}&kept=use#row-${rowId}`;
  return {
    texts: kept.texts,
    standing,
    when: localMoment(kept.at, file.kitchen.zone),
    using,
    useHref: href,
    throwAway,
    values: { episodeId, rowId },
  };
}
