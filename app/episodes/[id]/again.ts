import 'server-only';
import { dayWithYear, foodsOf, labelsToAsk } from '#lib/episode/again-labels';
import type { EpisodeFile } from '#lib/episode/schema';
import {
  readCopies,
  readCopyNotes,
  readDishesToCopy,
  type DishCopy,
  type DishesToCopy,
} from '#lib/store/read-again';

/** A label of a copied dish that waits for a word. */
export interface LabelQuestion {
  readonly foodId: string;
  readonly name: string;
  /** As in 'Mon 4 May 2026'; null where no date is known. */
  readonly readOn: string | null;
}

/** Where a segment was copied from, and its labels that were last read long before. */
export interface CopyView extends DishCopy {
  readonly copiedDay: string;
  readonly labels: readonly LabelQuestion[];
}

export interface AgainView {
  readonly copies: readonly CopyView[];
  /** What could not come along with what was copied just now, by the id of the segment or episode. */
  readonly notes: { readonly of: string; readonly messages: readonly string[] } | null;
  /** What another dish can be begun from, found by `words`; null where nobody has looked for any. */
  readonly dishes: DishesToCopy;
  readonly words: string | null;
}

/** All that the episode page shows of copies. */
export async function againOf(
  file: EpisodeFile,
  asked: { readonly copied: string | null; readonly words: string | null },
): Promise<AgainView> {
  const { copied, words } = asked;
  const copies = await readCopies(file);
  return {
    copies: copies.map((copy) => ({
      ...copy,
      copiedDay: dayWithYear(copy.copiedOn),
      labels: labelsOf(file, copy),
    })),
    notes:
      copied === null ? null : { of: copied, messages: await readCopyNotes(file, copies, copied) },
    dishes: await readDishesToCopy(words === null ? {} : { words, take: 40 }),
    words,
  };
}

function labelsOf(file: EpisodeFile, { segmentId, copiedOn }: DishCopy): LabelQuestion[] {
  const segments = file.episode.segments.filter(({ id }) => id === segmentId);
  return labelsToAsk(foodsOf(file, segments), copiedOn).map(({ id, name, version }) => ({
    foodId: id,
    name,
    readOn: version.dateRead && dayWithYear(version.dateRead),
  }));
}
