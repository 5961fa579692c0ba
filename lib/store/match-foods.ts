import 'server-only';
import type { Food } from '#lib/foods/food';
import { database } from '#lib/store/client';
import type { Create } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { folded } from '#lib/store/fold';
import { ALIVE } from '#lib/store/load';
import { readFoodsById } from '#lib/store/read-foods';
import { chooseMatch } from '#lib/foods/choose-match';
import { rankMatches, saidFood, type Match } from '#lib/foods/match-food';
import { findHits, knownWords } from '#lib/store/reference-search';
import { v7 as uuid } from 'uuid';

/** The food that an ingredient's words most likely mean. */
export interface FoodMatch {
  readonly food: Food;
  /** True where the person has confirmed this food for these words before. */
  readonly remembered: boolean;
}

/**
 * The best match for each ingredient's words, in their order; null where nothing fits or nothing is asked.
 * Words that the person has confirmed before mean that food again; for others the food that fits all of them, and
 * none where no food does or several do that are not the same.
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
      const chosen = key === '' ? null : await meantFood(each, creatorId);
      found.set(key, chosen ? { food: chosen, remembered: false } : null);
    }
  }
  return words.map((each) => found.get(folded(each)) ?? null);
}

/** How many foods the search gives to choose from, and among how many of those that fit is chosen. */
const SEARCHED = 40;
const CHOSEN_AMONG = 12;

/** The foods that words may mean, best first. */
async function rankedMatches(words: string, creatorId: string) {
  const known = await knownWords();
  const said = saidFood(words, known);
  const asked = { take: SEARCHED, creatorId, products: false, whole: true };
  return { said, ranked: rankMatches(said, await findHits(said.query, asked), known) };
}

/** The one food that words mean, if it is plain which. */
async function meantFood(words: string, creatorId: string): Promise<Food | null> {
  const { said, ranked } = await rankedMatches(words, creatorId);
  const fitting = ranked.filter(({ fit }) => fit === 'fits').slice(0, CHOSEN_AMONG);
  const byId = await foodsOf(fitting, creatorId);
  return chooseMatch(
    said,
    fitting.flatMap((match) => {
      const food = byId.get(match.hit.entry.id);
      return food ? [{ match, food }] : [];
    }),
  );
}

async function foodsOf(
  matches: readonly Match[],
  creatorId: string,
): Promise<ReadonlyMap<string, Food>> {
  const ids = matches.map(({ hit }) => hit.entry.id);
  const foods = await readFoodsById(ids, creatorId);
  return new Map(foods.map((food) => [food.id, food]));
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
    const { ranked } =
      folded(words) === '' ? { ranked: [] } : await rankedMatches(words, creatorId);
    const best = ranked.slice(0, OTHERS + 1);
    const byId = await foodsOf(best, creatorId);
    const foods = best.flatMap(({ hit }) => byId.get(hit.entry.id) ?? []);
    found[id] = foods.filter((food) => food.id !== foodId).slice(0, OTHERS);
  }
  return found;
}
