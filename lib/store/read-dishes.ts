import 'server-only';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE, byIds, BY_POSITION } from '#lib/store/load';
import { readDishesToCopy } from '#lib/store/read-again';

/** Where a dish that others are made from stands. */
export interface DishPlace {
  readonly recipeId: string;
  readonly segmentId: string;
  readonly title: string;
  readonly episodeId: string;
  readonly episodeTitle: string;
}

/**
 * The places of recipes, by the recipe's id; one that came with a file and is no dish of any episode has none.
 * Where several segments have it, the first.
 */
export async function readDishPlaces(
  recipeIds: readonly string[],
): Promise<Readonly<Record<string, DishPlace>>> {
  const rows = await byIds([...new Set(recipeIds)], (ids) =>
    database().segment.findMany({
      where: { ...ALIVE, recipeId: { in: ids }, episode: ALIVE },
      orderBy: { id: 'asc' },
      select: {
        id: true,
        recipeId: true,
        title: true,
        episode: { select: { id: true, title: true } },
      },
    }),
  );
  const places: Record<string, DishPlace> = {};
  for (const { id, recipeId, title, episode } of rows) {
    if (recipeId === null) continue;
    places[recipeId] ??= {
      recipeId,
      segmentId: id,
      title,
      episodeId: episode.id,
      episodeTitle: episode.title,
    };
  }
  return places;
}

/** A dish that an ingredient can be made from. */
export interface DishChoice {
  readonly recipeId: string;
  readonly title: string;
  readonly episodeTitle: string;
  /** Its last filming date, else its publish date; null where it has neither. */
  readonly date: string | null;
  /** The names of its portions, each once. */
  readonly portions: readonly string[];
}

/** Dishes of all episodes that have all the words in their title or episode's title, the latest first. */
export async function readDishChoices(
  of: { readonly words?: string; readonly take?: number } = {},
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly DishChoice[]> {
  const { dishes } = await readDishesToCopy(of, creatorId);
  const recipes = await recipesOf(dishes.map(({ segmentId }) => segmentId));
  return dishes.flatMap(({ segmentId, title, episodeTitle, date }): DishChoice[] => {
    const recipe = recipes.get(segmentId);
    if (!recipe) return [];
    return [{ recipeId: recipe.id, title, episodeTitle, date, portions: recipe.portions }];
  });
}

/** A recipe as an ingredient names it. */
export interface NamedRecipe {
  readonly id: string;
  readonly rev: number;
  readonly title: string;
  readonly portions: readonly string[];
}

/** The recipe that an ingredient is to be made from; null where it is not there. */
export async function readNamedRecipe(
  id: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<NamedRecipe | null> {
  const found = await database().recipe.findFirst({
    where: { id, creatorId, ...ALIVE },
    select: {
      ...NAMED,
      segments: { where: ALIVE, select: { title: true }, orderBy: { id: 'asc' }, take: 1 },
    },
  });
  if (!found) return null;
  const { segments, ...recipe } = found;
  return { ...recipe, title: segments[0]?.title ?? recipe.title, portions: names(recipe) };
}

const NAMED = {
  id: true,
  rev: true,
  title: true,
  portions: { ...BY_POSITION, select: { name: true } },
} as const;

const names = ({ portions }: { readonly portions: readonly { readonly name: string }[] }) => [
  ...new Set(portions.map(({ name }) => name)),
];

/** Recipes by the segment that has them. */
async function recipesOf(segmentIds: string[]) {
  const segments = await database().segment.findMany({
    where: { id: { in: segmentIds } },
    select: { id: true, recipe: { select: NAMED } },
  });
  return new Map(
    segments.flatMap(({ id, recipe }) =>
      recipe ? [[id, { ...recipe, portions: names(recipe) }] as const] : [],
    ),
  );
}
