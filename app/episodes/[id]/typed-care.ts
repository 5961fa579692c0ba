import 'server-only';
import { keepTyped } from '#lib/store/keep-typed';
import { readEpisodeFile } from '#lib/store/read-episode';
import type { Care } from '../../_forms/parse-then-act';
import { rowTexts } from './_components/row-texts';

/**
 * How a form of one row keeps what it refuses: as the row's draft, to be offered on the next visit; and
 * beside what was typed, the texts that stand there now.
 * @param idField the form's field that names the row
 */
export function careOf(
  entity: 'Episode' | 'Segment' | 'RecipeLine' | 'TalkingPoint',
  idField: string,
): Care {
  return {
    keep: (typed) => keepTyped(entity, typed[idField] ?? '', typed, new Date()),
    standing: async (typed) => {
      const file = await readEpisodeFile(typed.episodeId ?? '', new Date().toISOString());
      return file && rowTexts(file, typed[idField] ?? '');
    },
  };
}
