import type { Tx } from '#lib/store/client';
import {
  presentIn,
  recipeFrom,
  recipeOf,
  segmentFrom,
  tiesWithin,
} from '#lib/store/episode-from-rows';
import { foodFrom, lotFrom, packFrom } from '#lib/store/from-rows';
import {
  ALIVE,
  byIds,
  EPISODE_INCLUDE,
  loadFoods,
  loadMadeFrom,
  LOT_INCLUDE,
  PACK_INCLUDE,
  type DayTree,
  type RecipeTree,
  type SegmentTree,
} from '#lib/store/load';

/** What the file has already, whose ids the others leave out. */
interface Known {
  readonly foods: readonly { readonly id: string }[];
  readonly recipes: readonly { readonly id: string }[];
}

const OTHER_INCLUDE = { links: EPISODE_INCLUDE.links, segments: EPISODE_INCLUDE.segments };

/**
 * The rows of the other episodes that are filmed on a day, each as far as the day is about it, in the order in which
 * they came to it. One that was removed, or has nothing on the day any more, is none.
 */
export async function loadOthers(
  tx: Tx,
  day: DayTree,
  episodeId: string,
  creatorId: string,
  known: Known,
) {
  const asked = [...new Set(day.episodes.map((each) => each.episodeId))];
  const ids = asked.filter((id) => id !== episodeId);
  if (ids.length === 0) return [];
  const onDay = new Set(day.segments.map(({ segmentId }) => segmentId));
  const rows = await tx.episode.findMany({
    where: { id: { in: ids }, creatorId, ...ALIVE },
    include: OTHER_INCLUDE,
  });
  const recipeIds = new Set(known.recipes.map(({ id }) => id));
  const foodIds = new Set(known.foods.map(({ id }) => id));
  const others = [];
  for (const id of ids) {
    const row = rows.find((each) => each.id === id);
    const segments = row?.segments.filter((segment) => onDay.has(segment.id)) ?? [];
    if (row === undefined || segments.length === 0) continue;
    const ofSegments = segments.flatMap((segment) => recipeOf(segment) ?? []);
    const madeFrom = await loadMadeFrom(tx, ofSegments);
    const recipes = madeFrom.filter((recipe) => !recipeIds.has(recipe.id));
    for (const recipe of [...ofSegments, ...recipes]) recipeIds.add(recipe.id);
    const all = await loadFoods(tx, foodsOf([...ofSegments, ...madeFrom]), creatorId);
    const foods = all.filter((food) => !foodIds.has(food.id));
    for (const food of foods) foodIds.add(food.id);
    others.push({
      row,
      segments,
      madeFrom,
      recipes,
      all,
      foods,
      ...(await stockOf(tx, foods, creatorId)),
    });
  }
  return others;
}

export type Others = Awaited<ReturnType<typeof loadOthers>>;

function foodsOf(recipes: readonly RecipeTree[]): string[] {
  return recipes.flatMap(({ lines }) =>
    lines.flatMap((line) => [line.foodId ?? [], line.orFoodId ?? []].flat()),
  );
}

async function stockOf(tx: Tx, foods: readonly { readonly id: string }[], creatorId: string) {
  const ids = foods.map(({ id }) => id);
  const where = (some: string[]) => ({ ...ALIVE, creatorId, foodId: { in: some } });
  return {
    lots: await byIds(ids, (some) =>
      tx.stockLot.findMany({ where: where(some), include: LOT_INCLUDE, orderBy: { id: 'asc' } }),
    ),
    packs: await byIds(ids, (some) =>
      tx.pack.findMany({ where: where(some), include: PACK_INCLUDE, orderBy: { id: 'asc' } }),
    ),
  };
}

interface Surroundings {
  readonly kitchen: Parameters<typeof presentIn>[3] & {
    readonly scales: readonly { readonly id: string }[];
  };
  readonly shops: Parameters<typeof packFrom>[1];
}

/** Other episodes of a day as plain data, still to be checked by `alsoFilmedSchema`; undefined where there are none. */
export function alsoFrom(others: Others, { kitchen, shops }: Surroundings) {
  if (others.length === 0) return undefined;
  const scales = new Set(kitchen.scales.map(({ id }) => id));
  // A scale of another kitchen would become one of this episode's, under whose numbers it is not.
  const weighedHere = (recipe: RecipeTree): RecipeTree => ({
    ...recipe,
    weighings: recipe.weighings.filter(({ scaleId }) => scales.has(scaleId)),
  });
  return others.map(({ row, madeFrom, recipes, all, foods, lots, packs, ...other }) => {
    const segments = other.segments.map((segment): SegmentTree => ({
      ...segment,
      recipe: segment.recipe && weighedHere(segment.recipe),
    }));
    // Numbers that a display has still to give are its own episode's, as all its numbers are.
    const present = presentIn({ segments }, madeFrom, all, kitchen, new Map());
    const { id, title, region } = row;
    return {
      ...{ id, title, region },
      segments: segments.map((segment) => segmentFrom(segment, present)),
      links: tiesWithin(row.links, present),
      foods: foods.map(foodFrom),
      recipes: recipes.map((recipe) => recipeFrom(weighedHere(recipe), present)),
      stock: lots.map(lotFrom),
      packs: packs.map((pack) => packFrom(pack, shops)),
    };
  });
}
