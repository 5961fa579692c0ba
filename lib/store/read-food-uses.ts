import 'server-only';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE, byIds } from '#lib/store/load';
import { pageOf, wanted, type Page, type PageOf } from '#lib/store/page';
import { readDishPlaces, type DishPlace } from '#lib/store/read-dishes';

/** An ingredient that is of a food. */
export interface FoodUse {
  readonly id: string;
  /** The ingredient as written. */
  readonly words: string;
  /** Whether the person has said so, the search proposed it, or it is one of two that it could be. */
  readonly how: 'confirmed' | 'proposed' | 'either';
  readonly recipeTitle: string;
  /** Where its dish stands; null for one that came with a file and is no dish of any episode. */
  readonly place: DishPlace | null;
  /** Dishes that are made from its dish, at any depth. */
  readonly within: readonly DishPlace[];
}

/** The ingredients that are of a food, the last written first. */
export async function readFoodUses(
  foodId: string,
  of: PageOf = {},
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Page<FoodUse>> {
  const found = await database().recipeLine.findMany({
    where: {
      creatorId,
      ...ALIVE,
      recipe: ALIVE,
      OR: [{ foodId }, { orFoodId: foodId }],
      ...(of.after ? { id: { lt: of.after } } : {}),
    },
    orderBy: { id: 'desc' },
    take: wanted(of),
    select: {
      id: true,
      text: true,
      match: true,
      orFoodId: true,
      recipe: { select: { id: true, title: true } },
    },
  });
  const page = pageOf(found, of);
  const above = await dishesAbove(page.rows.map(({ recipe }) => recipe.id));
  const all = [...above].flatMap(([recipeId, over]) => [recipeId, ...over]);
  const places = await readDishPlaces(all);
  const rows = page.rows.map(({ id, text, match, orFoodId, recipe }): FoodUse => {
    const how = orFoodId === null ? (match === 'confirmed' ? match : 'proposed') : 'either';
    return {
      id,
      words: text,
      how,
      recipeTitle: recipe.title,
      place: places[recipe.id] ?? null,
      within: [...(above.get(recipe.id) ?? [])].flatMap((each) => places[each] ?? []),
    };
  });
  return { ...page, rows };
}

/** How many ingredients are of a food. */
export async function countFoodUses(
  foodId: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<number> {
  return database().recipeLine.count({
    where: { creatorId, ...ALIVE, recipe: ALIVE, OR: [{ foodId }, { orFoodId: foodId }] },
  });
}

/** An episode in which a food is used, and whether its numbers were ever locked. */
export interface EpisodeUsing {
  readonly id: string;
  readonly title: string;
  readonly locked: boolean;
}

/** The episodes with a dish that rests on one of these foods, at any depth; the last made first. */
export async function readEpisodesUsing(
  foodIds: readonly string[],
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly EpisodeUsing[]> {
  const db = database();
  const ids = [...foodIds];
  const lines = await db.recipeLine.findMany({
    where: { creatorId, ...ALIVE, OR: [{ foodId: { in: ids } }, { orFoodId: { in: ids } }] },
    select: { recipeId: true },
    distinct: ['recipeId'],
  });
  const above = await dishesAbove(lines.map(({ recipeId }) => recipeId));
  const recipeIds = new Set([...above].flatMap(([recipeId, over]) => [recipeId, ...over]));
  const segments = await byIds([...recipeIds], (some) =>
    db.segment.findMany({
      where: { ...ALIVE, recipeId: { in: some }, episode: { ...ALIVE, creatorId } },
      select: { episode: { select: { id: true, title: true } } },
    }),
  );
  const episodes = new Map(segments.map(({ episode }) => [episode.id, episode.title]));
  const locks = await byIds([...episodes.keys()], (some) =>
    db.numbersLock.findMany({
      where: { ...ALIVE, episodeId: { in: some } },
      select: { episodeId: true },
      distinct: ['episodeId'],
    }),
  );
  const locked = new Set(locks.map(({ episodeId }) => episodeId));
  return [...episodes]
    .map(([id, title]) => ({ id, title, locked: locked.has(id) }))
    .sort((a, b) => (a.id < b.id ? 1 : -1));
}

/** For each recipe those that are made from it, at any depth; a ring is entered once. */
async function dishesAbove(
  recipeIds: readonly string[],
): Promise<ReadonlyMap<string, ReadonlySet<string>>> {
  const madeFrom = new Map<string, Set<string>>();
  const asked = new Set<string>();
  let latest = [...new Set(recipeIds)];
  while (latest.length > 0) {
    for (const id of latest) asked.add(id);
    const lines = await byIds(latest, (some) =>
      database().recipeLine.findMany({
        where: { ...ALIVE, recipe: ALIVE, madeFromId: { in: some } },
        select: { recipeId: true, madeFromId: true },
      }),
    );
    for (const { recipeId, madeFromId } of lines) {
      if (madeFromId === null) continue;
      const known = madeFrom.get(madeFromId) ?? new Set<string>();
      madeFrom.set(madeFromId, known.add(recipeId));
    }
    latest = [...new Set(lines.map(({ recipeId }) => recipeId))].filter((id) => !asked.has(id));
  }
  return new Map([...new Set(recipeIds)].map((id) => [id, allAbove(id, madeFrom)]));
}

function allAbove(
  recipeId: string,
  madeFrom: ReadonlyMap<string, ReadonlySet<string>>,
): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (id: string) => {
    for (const over of madeFrom.get(id) ?? []) {
      if (over === recipeId || found.has(over)) continue;
      found.add(over);
      visit(over);
    }
  };
  visit(recipeId);
  return found;
}
