import type { FoodMention } from '#lib/claims/read-edit';
import type { NamedFood } from '#lib/episode/edit-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { fold } from '#lib/foods/search-text';
import { placeWords } from '#lib/overview/said-rows';

/** A food that is named in the texts and is in no ingredient, with all places at which it is. */
export interface NamedRow {
  /** Its name, folded: by it an answer is kept. */
  readonly food: string;
  /** As the texts say it first. */
  readonly words: string;
  readonly places: readonly {
    readonly id: string;
    readonly words: string;
    readonly textId: string;
  }[];
  /** The dishes that are talked about where it is named. */
  readonly dishes: readonly { readonly segmentId: string; readonly title: string }[];
  readonly answer: NamedFood | null;
}

/**
 * Foods that are named and not counted, each once, in the order in which they are first named.
 * @example namedRows(read.foods, file)[0] // { food: 'sour cream', places: [{ words: '3:10', … }], answer: null, … }
 */
export function namedRows(
  mentions: readonly FoodMention[],
  { edit, episode }: Pick<EpisodeFile, 'edit' | 'episode'>,
): NamedRow[] {
  const byFood = new Map<string, FoodMention[]>();
  for (const mention of mentions) {
    const food = fold(mention.statement.food).trim().slice(0, 120);
    byFood.set(food, [...(byFood.get(food) ?? []), mention]);
  }
  return [...byFood].map(([food, all]) => {
    const segments = new Set(all.flatMap(({ place }) => place.segmentId ?? []));
    return {
      food,
      words: all[0]?.statement.food ?? food,
      places: all.map(({ id, place }) => ({ id, words: placeWords(place), textId: place.textId })),
      dishes: episode.segments
        .filter(({ id, recipe }) => recipe !== null && segments.has(id))
        .map(({ id, title }) => ({ segmentId: id, title })),
      answer: edit?.named.find((each) => each.food === food) ?? null,
    };
  });
}
