import 'server-only';
import { FDC_SOURCE } from '#lib/foods/fdc-food';
import { foodSchema, type Food, type FoodVersion, type Section } from '#lib/foods/food';
import { foodVersionSchema, sectionSchema } from '#lib/foods/food';
import { packSchema, type Pack } from '#lib/episode/stock-schema';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID, SHARED_CREATOR_ID } from '#lib/store/creators';
import { foodFrom, packFrom, versionFrom } from '#lib/store/from-rows';
import { ALIVE, byIds, foodInclude, PACK_INCLUDE, type FoodTree } from '#lib/store/load';

/** A food with the revisions of its row and parts, by id, for forms. */
export interface StoredFood {
  readonly id: string;
  readonly food: Food;
  readonly revs: Readonly<Record<string, number>>;
  /** False for a food of a published table, which nobody changes. */
  readonly own: boolean;
  readonly packs: readonly Pack[];
  /** When each of its cooked weights was observed, and whether the person kept it and may take it out. */
  readonly yieldFacts: Readonly<Record<string, { readonly on: string; readonly mine: boolean }>>;
}

function storedFood(
  tree: FoodTree & { readonly packs: readonly Parameters<typeof packFrom>[0][] },
): StoredFood {
  const parts = [tree, ...tree.versions, ...tree.yields, ...tree.allergens, ...tree.packs];
  const measures = tree.versions.flatMap((version) => version.measures);
  return {
    id: tree.id,
    food: foodSchema.parse(foodFrom(tree)),
    revs: Object.fromEntries([...parts, ...measures].map(({ id, rev }) => [id, rev])),
    own: tree.creatorId !== SHARED_CREATOR_ID,
    packs: tree.packs.map((pack) => packSchema.parse(packFrom(pack))),
    yieldFacts: Object.fromEntries(
      tree.yields.map(({ id, at, creatorId }) => {
        return [id, { on: at.toISOString().slice(0, 10), mine: creatorId !== SHARED_CREATOR_ID }];
      }),
    ),
  };
}

function withPacks(creatorId: string) {
  const packs = {
    where: { ...ALIVE, creatorId },
    orderBy: { id: 'asc' as const },
    include: PACK_INCLUDE,
  };
  return { ...foodInclude(creatorId), packs };
}

const seenBy = (creatorId: string) => ({
  ...ALIVE,
  creatorId: { in: [creatorId, SHARED_CREATOR_ID] },
});

/** A food with its revisions, packs and last prices; null if there is none. */
export async function readStoredFood(
  id: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<StoredFood | null> {
  const tree = await database().food.findFirst({
    where: { id, ...seenBy(creatorId) },
    include: withPacks(creatorId),
  });
  return tree && storedFood(tree);
}

/** A food with the version in use; null if there is none. */
export async function readFood(id: string, creatorId = DEFAULT_CREATOR_ID): Promise<Food | null> {
  return (await readStoredFood(id, creatorId))?.food ?? null;
}

/** Foods in the order of the ids given, leaving out what is not there: what a search has found. */
export async function readFoodsById(
  ids: readonly string[],
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly Food[]> {
  const trees = await byIds(ids, (some) =>
    database().food.findMany({
      where: { id: { in: some }, ...seenBy(creatorId) },
      include: foodInclude(creatorId),
    }),
  );
  const byId = new Map(trees.map((tree) => [tree.id, tree]));
  return ids.flatMap((id) => byId.get(id) ?? []).map((tree) => foodSchema.parse(foodFrom(tree)));
}

/** All readings of a food, the one in use first. */
export async function readFoodVersions(foodId: string): Promise<readonly FoodVersion[]> {
  const versions = await database().foodVersion.findMany({
    where: { foodId, ...ALIVE },
    orderBy: [{ seq: 'desc' }, { id: 'desc' }],
  });
  return versions.map((version) => foodVersionSchema.parse(versionFrom(version)));
}

/** What a search index needs of a food. */
export interface FoodEntry {
  readonly id: string;
  readonly name: string;
  readonly sourceNo: string;
  readonly section: Section;
  readonly own: boolean;
}

/** Every food of the reference table, in order of number; imported foods may be millions and are not among them. */
export async function readReferenceFoods(): Promise<readonly FoodEntry[]> {
  const versions = await database().foodVersion.findMany({
    // Before and after one source rather than not of it: so the index of sources passes over its millions.
    where: {
      creatorId: SHARED_CREATOR_ID,
      ...ALIVE,
      OR: [{ source: { lt: FDC_SOURCE } }, { source: { gt: FDC_SOURCE } }],
    },
    orderBy: [{ source: 'asc' }, { release: 'asc' }, { sourceNo: 'asc' }],
    select: { foodId: true, sourceNo: true },
  });
  const foods = await byIds(
    versions.map(({ foodId }) => foodId),
    (some) =>
      database().food.findMany({
        where: { id: { in: some }, ...ALIVE },
        select: { id: true, name: true, section: true },
      }),
  );
  const byId = new Map(foods.map((food) => [food.id, food]));
  return versions.flatMap(({ foodId, sourceNo }) => {
    const food = byId.get(foodId);
    byId.delete(foodId);
    return food
      ? [{ ...food, section: sectionSchema.parse(food.section), sourceNo, own: false }]
      : [];
  });
}

/** Every own food that was not merged into another. */
export async function readOwnFoodEntries(
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly FoodEntry[]> {
  const foods = await database().food.findMany({
    where: { creatorId, ...ALIVE, mergedIntoId: null },
    orderBy: [{ nameFolded: 'asc' }, { id: 'asc' }],
    select: { id: true, name: true, section: true },
  });
  return foods.map((food) => ({
    ...food,
    section: sectionSchema.parse(food.section),
    sourceNo: '',
    own: true,
  }));
}
