import type { Food } from '#lib/foods/food';
import { dishesOf, type AmountContext, type Dish } from '#lib/episode/context';
import { finishedWeight } from '#lib/episode/finished-weight';
import { writtenAmount } from '#lib/episode/line-amount';
import { nestedRecipe } from '#lib/episode/made-from';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { Segment } from '#lib/episode/schema';
import { evaluate, type Term } from '#lib/units/sum-of-products';

/** An ingredient of a food, and how often it is bought. */
export interface Need {
  readonly dish: Dish;
  readonly line: RecipeLine;
  readonly food: Food;
  /** Its words, and those of the ingredient that it is within: "tinned tomatoes, in 120 g tomato sauce". */
  readonly words: string;
  /** How many times all of it; null where it is not known how much is taken of the dish that it is within. */
  readonly times: number | null;
  /** Further takes among them that need all of it again. */
  readonly spareTakes: number;
  /** And so many kept for pickups on another day. */
  readonly pickups: number;
}

export interface Needs {
  /** In viewing order. */
  readonly needs: readonly Need[];
  /** Ingredients that are of no food and of no dish. */
  readonly unmatched: readonly { readonly segment: string; readonly line: string }[];
}

/**
 * What the dishes of an episode take of foods, with batches, spare takes and what is kept for pickups, through dishes
 * that others are made from at any depth.
 *
 * A dish that is made in the same episode is made as often as it says there, and others take from it; only what they
 * take beyond that is bought on top. One that comes from elsewhere is bought by the share that is taken: batches,
 * portions, or grams of its finished weight. A ring is entered once.
 * @example half a sauce of 400 g tomatoes, in a lasagne that is made twice: 400 g of tomatoes
 */
export function foodNeeds(segments: readonly Segment[], context: AmountContext): Needs {
  const dishes = dishesOf(segments);
  const surroundings = { context, own: new Set(dishes.map(({ recipe }) => recipe.id)) };
  const taken = new Map<string, number>();
  const found = new Map<Dish, readonly Part[]>();
  for (const dish of usersFirst(dishes, context)) {
    const made = dish.batches.num / dish.batches.den;
    const batches = Math.max(made, taken.get(dish.recipe.id) ?? 0);
    const parts = dish.recipe.lines.flatMap((line) => {
      const retaken = dish.spareScope === 'whole' || line.spoiltByTake;
      const spareTakes = retaken ? dish.spareTakes : 0;
      const pickups = retaken ? dish.pickupReserve : 0;
      const times = batches + spareTakes + pickups;
      const of = { line, words: line.text, times, spareTakes, pickups };
      return partsOf(of, [dish.recipe.id], surroundings);
    });
    for (const { of, dishId } of parts) {
      if (dishId !== null) taken.set(dishId, (taken.get(dishId) ?? 0) + (of.times ?? 0));
    }
    found.set(dish, parts);
  }
  const all = dishes.flatMap((dish) => (found.get(dish) ?? []).map((part) => ({ dish, part })));
  return {
    needs: all.flatMap(({ dish, part: { of, food } }) => (food ? [{ dish, food, ...of }] : [])),
    unmatched: all
      .filter(({ part: { food, dishId } }) => !food && dishId === null)
      .map(({ dish, part }) => ({ segment: dish.title, line: part.of.words })),
  };
}

type Taken = Pick<Need, 'line' | 'words' | 'times' | 'spareTakes' | 'pickups'>;

/** Where an ingredient's amount ends: at a food, at a dish of the episode that it is taken from, or at neither. */
interface Part {
  readonly of: Taken;
  readonly food: Food | null;
  readonly dishId: string | null;
}

interface Surroundings {
  readonly context: AmountContext;
  /** Recipes of the episode's own dishes. */
  readonly own: ReadonlySet<string>;
}

function partsOf(of: Taken, above: readonly string[], { context, own }: Surroundings): Part[] {
  const { line, words, times } = of;
  const nested = nestedRecipe(line, context);
  if (!nested) return [{ of, food: context.foods.get(line.foodId ?? '') ?? null, dishId: null }];
  if (above.includes(nested.id)) return [];
  const share = takenShare(line, nested, context);
  const each = times === null || share === null ? null : times * share;
  if (own.has(nested.id)) return [{ of: { ...of, times: each }, food: null, dishId: nested.id }];
  return nested.lines.flatMap((inner) => {
    const within = `${inner.text}, in ${words}`;
    const taken = { line: inner, words: within, times: each, spareTakes: 0, pickups: 0 };
    return partsOf(taken, [...above, nested.id], { context, own });
  });
}

/** How many times a whole dish an ingredient takes as planned; null where that is not known. */
function takenShare(line: RecipeLine, nested: Recipe, context: AmountContext): number | null {
  const { batches, massMg, sources } = writtenAmount(line, null, context);
  const values = new Map([...sources].map(([id, { value }]) => [id, value]));
  const valueOf = (terms: readonly Term[]) => evaluate(terms, values);
  if (batches) return valueOf(batches);
  const finished = massMg && finishedWeight(nested, context);
  return finished ? valueOf(massMg) / finished.interval.value : null;
}

/** Dishes in viewing order, but each after those that are made from it. */
function usersFirst(dishes: readonly Dish[], context: AmountContext): readonly Dish[] {
  const placed = new Set<string>();
  const usedFirst: Dish[] = [];
  const place = (recipe: Recipe) => {
    if (placed.has(recipe.id)) return;
    placed.add(recipe.id);
    for (const line of recipe.lines) {
      const nested = nestedRecipe(line, context);
      if (nested) place(nested);
    }
    usedFirst.push(...dishes.filter((dish) => dish.recipe.id === recipe.id));
  };
  for (const dish of [...dishes].reverse()) place(dish.recipe);
  return usedFirst.reverse();
}
