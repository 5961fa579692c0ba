import 'server-only';
import type { Food } from '#lib/foods/food';
import { database } from '#lib/store/client';
import type { Create } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { folded } from '#lib/store/fold';
import { ALIVE } from '#lib/store/load';
import { readFoodsById } from '#lib/store/read-foods';
import { findFoods } from '#lib/store/reference-search';
import { v7 as uuid } from 'uuid';

/** The food that an ingredient's words most likely mean. */
export interface FoodMatch {
  readonly food: Food;
  /** True where the person has confirmed this food for these words before. */
  readonly remembered: boolean;
}

/**
 * The best match for each ingredient's words, in their order; null where nothing fits or nothing is asked.
 * Words that the person has confirmed before mean that food again; for others the search's first.
 * @example await matchFoods(['rolled oats']) // [{ food: Oats 20038, remembered: false }]
 */
export async function matchFoods(
  words: readonly string[],
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly (FoodMatch | null)[]> {
  const known = await rememberedFoods(words, creatorId);
  const found = new Map<string, FoodMatch | null>();
  for (const each of words) {
    const key = folded(each);
    if (found.has(key)) continue;
    const before = known.get(key);
    if (before) found.set(key, { food: before, remembered: true });
    else {
      const [food] =
        key === '' ? [] : await findFoods(each, { take: 1, creatorId, products: false });
      found.set(key, food ? { food, remembered: false } : null);
    }
  }
  return words.map((each) => found.get(folded(each)) ?? null);
}

/** Foods by the folded words that were confirmed for them; the last word counts. */
async function rememberedFoods(
  words: readonly string[],
  creatorId: string,
): Promise<ReadonlyMap<string, Food>> {
  const asked = [...new Set(words.map(folded))].filter((each) => each !== '');
  const rows = await database().lineMatch.findMany({
    where: { creatorId, ...ALIVE, wordsFolded: { in: asked } },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
    select: { wordsFolded: true, foodId: true },
  });
  const ids = new Map(rows.map(({ wordsFolded, foodId }) => [wordsFolded, foodId]));
  const foods = await readFoodsById([...new Set(ids.values())], creatorId);
  const byId = new Map(foods.map((food) => [food.id, food]));
  return new Map(
    [...ids].flatMap(([key, id]) => {
      const food = byId.get(id);
      return food ? [[key, food] as const] : [];
    }),
  );
}

/** The edit that remembers which food the person has confirmed for an ingredient's words. */
export function rememberMatch(words: string, foodId: string, at: Date): Create<'LineMatch'> {
  const wordsFolded = folded(words);
  return { op: 'create', entity: 'LineMatch', row: { id: uuid(), wordsFolded, foodId, at } };
}

/** How many other foods are offered beside a match. */
const OTHERS = 4;

/**
 * For each ingredient that has no confirmed food, the foods that its words may mean beside the one it has, best
 * first, by the ingredient's id.
 */
export async function otherFoods(
  lines: readonly { readonly id: string; readonly foodId: string | null; readonly words: string }[],
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Readonly<Record<string, readonly Food[]>>> {
  const found: Record<string, readonly Food[]> = {};
  for (const { id, foodId, words } of lines) {
    const foods =
      words === '' ? [] : await findFoods(words, { take: OTHERS + 1, creatorId, products: false });
    found[id] = foods.filter((food) => food.id !== foodId).slice(0, OTHERS);
  }
  return found;
}
