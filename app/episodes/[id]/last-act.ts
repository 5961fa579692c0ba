import 'server-only';
import type { EpisodeFile } from '#lib/episode/schema';
import { readEpisodeChanges, type Act } from '#lib/store/read-episode-changes';
import type { LastAct } from './_components/last-change';
import { toldAct } from './changes/told';

/** Among so many of the newest acts the last that can be undone is looked for. */
const LOOKED_AT = 6;

/**
 * The last act on an episode that says something and can be undone; null where there is none. What began the
 * episode is not offered: undone beside an ingredient, it would take all of it away.
 */
export async function lastAct(
  file: Pick<EpisodeFile, 'episode' | 'kitchen'>,
): Promise<LastAct | null> {
  const { acts, names } = await readEpisodeChanges(file.episode.id, { take: LOOKED_AT });
  const { id, region } = file.episode;
  const telling = { region, zone: file.kitchen.zone };
  const began = (act: Act) =>
    act.lines.some(({ entityId, before }) => entityId === id && before === null);
  const told = acts.filter((act) => !began(act)).map((act) => toldAct(act, names, telling));
  const last = told.find(({ undoable, words }) => undoable && words.length > 0);
  if (!last) return null;
  const { groupId, when, label, words } = last;
  return { groupId, when, label, words: words.join('. ') };
}
