import { dishesOf, type AmountContext, type Dish } from '#lib/episode/context';
import { eatenAmount } from '#lib/episode/eaten-amount';
import { finishedWeight } from '#lib/episode/finished-weight';
import type { Recipe } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { eatenShare, portionShare } from '#lib/figures/shares';
import type { Region } from '#lib/figures/line-parts';
import { NOTHING, type Parts } from '#lib/figures/parts';
import { cookingChange, ingredientParts } from '#lib/figures/recipe-parts';
import type { Nutrient } from '#lib/foods/nutrients';
import { constant } from '#lib/units/sum-of-products';
import { quickBounds } from '#lib/units/quick-bounds';

/** Of what of a dish a number is. */
export type SumScope =
  | { readonly kind: 'whole' }
  | { readonly kind: 'portion'; readonly portionId: string }
  | { readonly kind: 'day' };

/** One row of a sum: an ingredient, what cooking changes, or another dish of the day. */
export interface SumRow {
  readonly lineId: string | null;
  readonly text: string;
  /** Milligrams that count; null where it has none, or they are not known. */
  readonly massMg: number | null;
  /** What it adds; null where that is not known. */
  readonly value: number | null;
}

/** A number line by line: `(rows added up) × share + beside = value`; null where a row is not known. */
export interface DishSum {
  readonly rows: readonly SumRow[];
  readonly share: number | null;
  /** Words of the share: 'a third', 'all of it'. */
  readonly of: string;
  /** The other dishes, where the number is the day's. */
  readonly beside: readonly SumRow[];
  readonly value: number | null;
}

/** What a sum is made of; a slip changes any of it. */
export interface SumInput {
  readonly file: EpisodeFile;
  readonly context: AmountContext;
  readonly dish: Dish;
  readonly recipe: Recipe;
  readonly nutrient: Nutrient;
  readonly region: Region;
  readonly scope: SumScope;
  /** How many times an ingredient is counted, where it is not once. */
  readonly times: ReadonlyMap<string, number>;
  /** How many times the result is taken. */
  readonly again: number;
}

/** Adds a number up line by line. */
export function dishSum(input: SumInput): DishSum {
  const { dish, scope, again } = input;
  const rows = rowsOf(input);
  const share = shareOf(input);
  const beside = scope.kind === 'day' ? otherDishes(input) : [];
  const [inside, outside] = [rows, beside].map(added);
  const known = inside != null && outside != null && share !== null;
  return {
    rows,
    share: share === null ? null : share * again,
    of: shareWords(dish, scope),
    beside: beside.map((row) => ({ ...row, value: row.value === null ? null : row.value * again })),
    value: known ? (inside * share + outside) * again : null,
  };
}

function rowsOf({ context, dish, recipe, nutrient, region, times }: SumInput): SumRow[] {
  const rows = recipe.lines.map((line): SumRow => {
    const value = valueOf(ingredientParts(line, recipe, context, nutrient, region));
    const eaten = eatenAmount(line, recipe.weighings, context);
    const mass = eaten.known ? eaten.amount.massMg : null;
    const massMg = mass && eaten.known ? quickBounds(mass, eaten.amount.sources).value : null;
    const count = times.get(line.id) ?? 1;
    return {
      ...{ lineId: line.id, text: line.text },
      massMg: massMg === null ? null : massMg * count,
      // What is left out adds nothing, whether or not anybody knows what it would have added.
      value: count === 0 ? 0 : value === null ? null : value * count,
    };
  });
  const cooked = cookingChange(recipe, dish.title, context, nutrient);
  const change = valueOf(cooked);
  if (change === 0) return rows;
  return [...rows, { lineId: null, text: 'what cooking changes', massMg: null, value: change }];
}

/** The value of parts of which nothing is missing; null where something is. */
function valueOf(parts: Parts): number | null {
  if (parts.open.length + parts.above.length + parts.below.length > 0) return null;
  return quickBounds(parts.terms, parts.sources).value;
}

function added(rows: readonly SumRow[]): number | null {
  return rows.reduce<number | null>(
    (sum, { value }) => (sum === null || value === null ? null : sum + value),
    0,
  );
}

const ONE: Parts = { ...NOTHING, terms: [constant(1)] };

function shareOf({ dish, recipe, context, scope }: SumInput): number | null {
  if (scope.kind === 'whole') return 1;
  const finished = finishedWeight(recipe, context);
  if (scope.kind === 'day') return valueOf(eatenShare(dish, finished).share(ONE));
  const portion = dish.recipe.portions.find(({ id }) => id === scope.portionId);
  return portion ? valueOf(portionShare(dish, portion, finished).share(ONE)) : null;
}

function otherDishes(input: SumInput): SumRow[] {
  return dishesOf(input.file.episode.segments)
    .filter(({ id }) => id !== input.dish.id)
    .map((dish) => {
      const of = {
        ...input,
        dish,
        recipe: dish.recipe,
        again: 1,
        times: new Map<string, number>(),
      };
      const inside = added(rowsOf(of));
      const share = shareOf(of);
      const value = inside === null || share === null ? null : inside * share;
      return { lineId: null, text: dish.title, massMg: null, value };
    });
}

/** Of what a number is, as it stands behind it: 'a portion', 'for the whole dish', 'for the day'. */
export function shareWords(dish: Dish, scope: SumScope): string {
  if (scope.kind === 'whole') return 'for the whole dish';
  if (scope.kind === 'day') return 'for the day';
  const portion = dish.recipe.portions.find(({ id }) => id === scope.portionId);
  return portion?.kind === 'count' ? 'a portion' : `for ${portion?.name ?? 'a part of it'}`;
}
