import 'server-only';
import { statesMatch } from '#lib/episode/eaten-amount';
import { matchQuery } from '#lib/episode/match-line';
import { readIngredient } from '#lib/episode/read-ingredient';
import { ownRecipesOf } from '#lib/episode/context';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { yieldFactor } from '#lib/episode/yield-choice';
import { yieldPercent } from '#lib/episode/yield-words';
import type { Food } from '#lib/foods/food';
import { findFoods } from '#lib/store/reference-search';
import { foodHit } from '../../foods/search/food-hit';
import type { FoodHit } from '../../foods/search/hit';

/** A cooked weight of another food that may hold for this one too. */
export interface CounterpartYield {
  readonly foodId: string;
  readonly yieldId: string;
  readonly words: string;
}

/** The ways out for an ingredient whose food is listed in another state, with no cooked weight known. */
export interface StatesWays {
  /** The words that look for it in the state in which it was weighed. */
  readonly look: string;
  /** Foods that are listed in that state, best first. */
  readonly foods: readonly FoodHit[];
  readonly yields: readonly CounterpartYield[];
}

/** As many as can be looked over at a glance. */
const SHOWN = 4;
const ASKED = 24;

/** The ways out of each ingredient that waits for one, by its id; nothing is looked up for the others. */
export async function statesWays(
  file: Pick<EpisodeFile, 'episode' | 'foods'>,
): Promise<Readonly<Record<string, StatesWays>>> {
  const foods = new Map(file.foods.map((food) => [food.id, food]));
  const lines = ownRecipesOf(file).flatMap((recipe) => recipe.lines);
  const ways: Record<string, StatesWays> = {};
  for (const line of lines) {
    const food = foods.get(line.foodId ?? '');
    if (!food || line.madeFrom || statesMatch(line.state, food.version.state)) continue;
    if (yieldFactor(food, line)) continue;
    ways[line.id] = await waysOf(line, food, foods.get(food.witnessId ?? '') ?? null);
  }
  return ways;
}

async function waysOf(line: RecipeLine, food: Food, witness: Food | null): Promise<StatesWays> {
  const [part] = readIngredient(line.text);
  const named = part ? matchQuery({ ...part, state: null }) : line.text;
  const look = `${named} ${line.state}`.trim();
  const found = (await findFoods(look, { take: ASKED, products: false })).filter(
    ({ id }) => id !== food.id,
  );
  const fits = found.filter(
    ({ version: { state } }) => state !== 'asIs' && statesMatch(line.state, state),
  );
  const like = [...(witness ? [witness] : []), ...found.filter(({ id }) => id !== witness?.id)];
  const known = like.filter(({ yields }) => yields.length > 0);
  return {
    look,
    foods: fits.slice(0, SHOWN).map(foodHit),
    yields: known.flatMap(yieldsOf).slice(0, SHOWN),
  };
}

function yieldsOf(food: Food): readonly CounterpartYield[] {
  return food.yields.map((observed) => ({
    foodId: food.id,
    yieldId: observed.id,
    words: `${yieldPercent(observed)}, ${observed.method}, of ${food.name} (${observed.source})`,
  }));
}
