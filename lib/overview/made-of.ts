import { dishesOf } from '#lib/episode/context';
import { isProposed } from '#lib/episode/is-proposed';
import type { EpisodeFile } from '#lib/episode/schema';

/** What an episode consists of, as it is told right after it was drafted. */
export interface MadeOf {
  readonly dishes: number;
  readonly ingredients: number;
  /** Segments without a dish. */
  readonly talk: number;
  /** Ingredients whose food was proposed and nobody has confirmed. */
  readonly toConfirm: number;
  /** The first dish that has one; null where nothing waits. */
  readonly confirmIn: string | null;
}

/**
 * Counts what an episode is made of, and what of it waits for the person's word.
 * @example madeOf({ segments: [aDishOfTwo] }) // { dishes: 1, ingredients: 2, talk: 0, toConfirm: 2, confirmIn: 'd' }
 */
export function madeOf({ segments }: Pick<EpisodeFile['episode'], 'segments'>): MadeOf {
  const dishes = dishesOf(segments).map(({ id, recipe }) => ({
    id,
    lines: recipe.lines.length,
    waiting: recipe.lines.filter(isProposed).length,
  }));
  return {
    dishes: dishes.length,
    ingredients: dishes.reduce((sum, { lines }) => sum + lines, 0),
    talk: segments.length - dishes.length,
    toConfirm: dishes.reduce((sum, { waiting }) => sum + waiting, 0),
    confirmIn: dishes.find(({ waiting }) => waiting > 0)?.id ?? null,
  };
}

/**
 * What there is, in words; null where there is nothing.
 * @example madeWords({ dishes: 3, ingredients: 24, talk: 1 }) // '3 dishes, 24 ingredients and one stretch of talk'
 */
export function madeWords(made: Pick<MadeOf, 'dishes' | 'ingredients' | 'talk'>): string | null {
  const parts = [
    counted(made.dishes, 'dish', 'dishes'),
    counted(made.ingredients, 'ingredient', 'ingredients'),
    counted(made.talk, 'stretch of talk', 'stretches of talk'),
  ].filter((words) => words !== null);
  const last = parts.pop();
  if (last === undefined) return null;
  return parts.length === 0 ? last : `${parts.join(', ')} and ${last}`;
}

function counted(count: number, one: string, more: string): string | null {
  if (count === 0) return null;
  return count === 1 ? `one ${one}` : `${count} ${more}`;
}
