import { dishesOf } from '#lib/episode/context';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import { stableJson } from '#lib/episode/stable-json';

/**
 * An episode whose dishes, foods, shares, answers and scales are those of a lock, in the words of now: titles, method,
 * hook, links, times in the cut, steps. A dish that is new since has no recipe here, since it has no locked number; one
 * that is gone since stands behind the segment that it followed, without a place in the cut.
 * @param locked the inputs as they were frozen
 * @param live the same episode as it is now
 */
export function lockedFile(locked: EpisodeFile, live: EpisodeFile): EpisodeFile {
  const { region, energyStep, anythingElse } = locked.episode;
  const { scales, spreads } = locked.kitchen;
  return {
    ...live,
    episode: {
      ...live.episode,
      ...{ region, energyStep, anythingElse },
      segments: segmentsOf(locked, live),
    },
    foods: together(locked.foods, live.foods, (was, now) => ({ ...was, name: now.name })),
    packs: together(locked.packs, live.packs, (was, now) => ({ ...was, name: now.name })),
    recipes: together(locked.recipes, live.recipes, inWordsOf),
    kitchen: { ...live.kitchen, scales, spreads },
    said: locked.said,
  };
}

function segmentsOf(locked: EpisodeFile, live: EpisodeFile): Segment[] {
  const then = new Map(dishesOf(locked.episode.segments).map((dish) => [dish.id, dish]));
  const segments = live.episode.segments.map((segment): Segment => {
    const was = then.get(segment.id);
    if (!was) return segment.recipe === null ? segment : { ...segment, recipe: null };
    const recipe = segment.recipe ? inWordsOf(was.recipe, segment.recipe) : was.recipe;
    return { ...segment, recipe, eaten: was.eaten, ate: was.ate };
  });
  let before = -1;
  for (const segment of locked.episode.segments) {
    const at = segments.findIndex(({ id }) => id === segment.id);
    if (at >= 0) before = at;
    else if (segment.recipe !== null) {
      before += 1;
      segments.splice(before, 0, { ...segment, inFrame: null, outFrame: null });
    }
  }
  return segments;
}

/** The same thing of both sides made one; what only one side has stands as it is. */
function together<T extends { readonly id: string }>(
  locked: readonly T[],
  live: readonly T[],
  both: (was: T, now: T) => T,
): T[] {
  const now = new Map(live.map((each) => [each.id, each]));
  const then = new Set(locked.map(({ id }) => id));
  return [
    ...locked.map((was) => {
      const is = now.get(was.id);
      return is ? both(was, is) : was;
    }),
    ...live.filter(({ id }) => !then.has(id)),
  ];
}

function inWordsOf(was: Recipe, now: Recipe): Recipe {
  if (was.id !== now.id) return was;
  const named = new Map(now.portions.map(({ id, name }) => [id, name]));
  const lines = new Map(now.lines.map((line) => [line.id, line]));
  return {
    ...was,
    title: now.title,
    method: now.method,
    portions: was.portions.map((portion) => ({
      ...portion,
      name: named.get(portion.id) ?? portion.name,
    })),
    lines: was.lines.map((line) => {
      const is = lines.get(line.id);
      // Words name amounts: those of another amount would stand beside locked grams.
      return is && amountOf(is) === amountOf(line) ? { ...line, ...wordsOf(is) } : line;
    }),
  };
}

const wordsOf = ({ text, note, shopNote }: RecipeLine) => ({ text, note, shopNote });

/** All of an ingredient but its words, what a take spoils and whether its food was confirmed. */
function amountOf(line: RecipeLine): string {
  const { text: _, note: __, shopNote: ___, spoiltByTake: ____, match: _____, ...rest } = line;
  return stableJson(rest);
}
