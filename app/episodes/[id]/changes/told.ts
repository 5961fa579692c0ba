import type { EpisodeFile } from '#lib/episode/schema';
import { actWords } from '#lib/overview/change-words';
import type { Act, Names } from '#lib/store/read-episode-changes';
import { localMoment } from '#lib/units/local-date';

/** An act of the journal as a page shows it. */
export interface ToldAct {
  readonly groupId: string;
  readonly label: string;
  readonly when: string;
  readonly words: readonly string[];
  /** Whether it can be undone: what was kept beside a refused form, or entered on the day, cannot. */
  readonly undoable: boolean;
}

/** Kept as it was, whatever comes after. */
const STANDS = new Set(['Draft', 'DayEvent']);

/** An act in words, by the episode's clock and units. */
export function toldAct(
  act: Act,
  names: Names,
  file: Pick<EpisodeFile, 'episode' | 'kitchen'>,
): ToldAct {
  const { zone } = file.kitchen;
  return {
    groupId: act.groupId,
    label: act.label,
    when: localMoment(act.at, zone),
    words: actWords(act.lines, { names, region: file.episode.region, zone }),
    undoable: act.lines.some(({ entity }) => !STANDS.has(entity)),
  };
}
