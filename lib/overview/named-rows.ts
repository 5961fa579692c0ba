import type { NotCounted } from '#lib/claims/named-not-counted';
import type { NamedFood } from '#lib/episode/edit-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { placeWords } from '#lib/overview/said-rows';

/** A food that is named in the texts and is in no ingredient, in the words of the screen. */
export interface NamedRow {
  /** Its name, folded: by it an answer is kept. */
  readonly food: string;
  /** As the texts say it first. */
  readonly words: string;
  /** Where it is named: '3:10', 'description, line 4'. */
  readonly places: readonly string[];
  /** The dishes that are talked about there. */
  readonly dishes: readonly { readonly segmentId: string; readonly title: string }[];
  /** What its ingredient would begin with: '30 g butter'. */
  readonly add: string;
  readonly answer: NamedFood['answer'] | null;
  /** The row of the answer, so that it can be changed; null while there is none. */
  readonly answerId: string | null;
}

/**
 * Foods that are named and not counted, each once with all its places.
 * @example namedRows(read.named, file)[0] // { food: 'sour cream', places: ['3:10'], answer: null, … }
 */
export function namedRows(
  named: readonly NotCounted[],
  { episode }: Pick<EpisodeFile, 'episode'>,
): NamedRow[] {
  return named.map(({ food, words, places, segmentIds, answer, answerId, add }) => ({
    food,
    words,
    places: [...new Set(places.map(({ place }) => placeWords(place)))],
    dishes: episode.segments
      .filter(({ id, recipe }) => recipe !== null && segmentIds.includes(id))
      .map(({ id, title }) => ({ segmentId: id, title })),
    add: add.text,
    answer,
    answerId,
  }));
}
