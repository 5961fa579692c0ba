import type { Prisma } from '#db/generated/sqlite/client';
import type { Tx } from '#lib/store/client';
import { SHARED_CREATOR_ID } from '#lib/store/creators';

/** Rows that were not removed. */
export const ALIVE = { deletedAt: null } as const;

/** Children in their order; the id, which carries the time of making, breaks ties. */
export const BY_POSITION = {
  where: ALIVE,
  orderBy: [{ position: 'asc' as const }, { id: 'asc' as const }],
};
export const BY_ID = { where: ALIVE, orderBy: { id: 'asc' as const } };

/** Parts of a published food are its table's, and those that this creator added. */
const seenBy = (creatorId: string) => ({
  ...BY_POSITION,
  where: { ...ALIVE, creatorId: { in: [creatorId, SHARED_CREATOR_ID] } },
});

/** A food with the version in use (the last one read) and all its parts. */
export function foodInclude(creatorId: string) {
  return {
    versions: {
      where: ALIVE,
      orderBy: [{ seq: 'desc' }, { id: 'desc' }],
      take: 1,
      include: { measures: seenBy(creatorId) },
    },
    yields: seenBy(creatorId),
    allergens: seenBy(creatorId),
  } satisfies Prisma.FoodInclude;
}
export type FoodTree = Prisma.FoodGetPayload<{ include: ReturnType<typeof foodInclude> }>;

export const KITCHEN_INCLUDE = {
  ovens: { ...BY_POSITION, include: { changes: BY_POSITION } },
  appliances: BY_POSITION,
  scales: BY_POSITION,
  spreads: BY_POSITION,
  houseShots: BY_POSITION,
} satisfies Prisma.KitchenInclude;
export type KitchenTree = Prisma.KitchenGetPayload<{ include: typeof KITCHEN_INCLUDE }>;

export const RECIPE_INCLUDE = {
  lines: BY_POSITION,
  portions: BY_POSITION,
  weighings: { ...BY_ID, include: { shares: BY_POSITION } },
} satisfies Prisma.RecipeInclude;
export type RecipeTree = Prisma.RecipeGetPayload<{ include: typeof RECIPE_INCLUDE }>;

export const EPISODE_INCLUDE = {
  targets: BY_POSITION,
  webLinks: BY_POSITION,
  links: BY_POSITION,
  segments: {
    ...BY_POSITION,
    include: {
      recipe: { include: RECIPE_INCLUDE },
      steps: BY_POSITION,
      perishables: { ...BY_POSITION, include: { spans: BY_POSITION } },
      shots: BY_POSITION,
      talkingPoints: BY_POSITION,
    },
  },
  days: {
    where: { ...ALIVE, day: ALIVE },
    include: {
      day: {
        include: {
          // In the order in which they came to the day.
          episodes: { where: { ...ALIVE, episode: ALIVE }, orderBy: { id: 'asc' } },
          segments: BY_POSITION,
          appointments: BY_POSITION,
          pins: BY_POSITION,
        },
      },
    },
  },
} satisfies Prisma.EpisodeInclude;
export type EpisodeTree = Prisma.EpisodeGetPayload<{ include: typeof EPISODE_INCLUDE }>;
export type SegmentTree = EpisodeTree['segments'][number];
export type DayTree = EpisodeTree['days'][number]['day'];

export const LOT_INCLUDE = { moves: BY_ID } satisfies Prisma.StockLotInclude;
export type LotTree = Prisma.StockLotGetPayload<{ include: typeof LOT_INCLUDE }>;

/** Prices of a pack that are looked at, the latest first. */
const PRICES = 60;

/** A pack with the last prices seen. */
export const PACK_INCLUDE = {
  prices: { where: ALIVE, orderBy: [{ seenOn: 'desc' }, { id: 'desc' }], take: PRICES },
} satisfies Prisma.PackInclude;
export type PackTree = Prisma.PackGetPayload<{ include: typeof PACK_INCLUDE }>;
export type ShopRow = Prisma.ShopGetPayload<object>;
export type PantryRow = Prisma.PantryFoodGetPayload<object>;

/** Ids in one question at most: a longer list is refused by the database. */
const IDS = 5000;

/** Asks for rows by id in as many questions as it takes. */
export async function byIds<T>(
  ids: readonly string[],
  ask: (some: string[]) => Promise<T[]>,
): Promise<T[]> {
  const found: T[] = [];
  for (let at = 0; at < ids.length; at += IDS) found.push(...(await ask(ids.slice(at, at + IDS))));
  return found;
}

/** Foods by id with the witnesses that they name; removed ones too, since a dish may still rest on them. */
export async function loadFoods(
  tx: Tx,
  ids: readonly string[],
  creatorId: string,
): Promise<FoodTree[]> {
  const found = new Map<string, FoodTree>();
  let asked = [...new Set(ids)];
  while (asked.length > 0) {
    const foods = await byIds(asked, (some) =>
      tx.food.findMany({ where: { id: { in: some } }, include: foodInclude(creatorId) }),
    );
    for (const food of foods) found.set(food.id, food);
    const witnesses = foods.flatMap((food) => food.witnessId ?? []);
    asked = [...new Set(witnesses)].filter((id) => !found.has(id));
  }
  return [...found.values()].sort(
    (a, b) => compare(a.nameFolded, b.nameFolded) || compare(a.id, b.id),
  );
}

/**
 * The recipes that others are made from, at any depth, without those given; in the order of their ids.
 * Each is loaded once, so that recipes made from each other end.
 */
export async function loadMadeFrom(
  tx: Tx,
  recipes: readonly RecipeTree[],
): Promise<readonly RecipeTree[]> {
  const known = new Set(recipes.map(({ id }) => id));
  const found: RecipeTree[] = [];
  let latest = recipes;
  while (latest.length > 0) {
    const named = latest.flatMap(({ lines }) => lines.flatMap((line) => line.madeFromId ?? []));
    const asked = [...new Set(named)].filter((id) => !known.has(id));
    latest = await byIds(asked, (some) =>
      tx.recipe.findMany({ where: { id: { in: some }, ...ALIVE }, include: RECIPE_INCLUDE }),
    );
    for (const recipe of latest) known.add(recipe.id);
    found.push(...latest);
  }
  return found.sort((a, b) => compare(a.id, b.id));
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
