import { dayWithYear } from '#lib/episode/again-labels';
import type { DishChoice } from '#lib/store/read-dishes';

/** A dish that an ingredient can be made from, in the words of a list. */
export interface DishHit {
  readonly recipeId: string;
  readonly title: string;
  /** Its episode and day, in a few words. */
  readonly note: string;
  /** The names of its portions. */
  readonly portions: readonly string[];
}

export function dishHit({ recipeId, title, episodeTitle, date, portions }: DishChoice): DishHit {
  const on = date === null ? 'no date yet' : dayWithYear(date);
  return { recipeId, title, note: `${episodeTitle}, ${on}`, portions };
}
