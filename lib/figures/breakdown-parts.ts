import { amountContext, dishesOf, type AmountContext, type Dish } from '#lib/episode/context';
import { eatenAmount, type EatenAmount } from '#lib/episode/eaten-amount';
import { finishedWeight } from '#lib/episode/finished-weight';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { addParts, NOTHING, type Parts } from '#lib/figures/parts';
import type { NumberScope } from '#lib/figures/published-numbers';
import { cookingChange, ingredientParts, recipeParts } from '#lib/figures/recipe-parts';
import { eatenShare, massShare, portionShare, type Share } from '#lib/figures/shares';
import type { Nutrient } from '#lib/foods/nutrients';

/** An ingredient's part of a figure, before bounds are taken. */
export interface RowParts {
  readonly dish: Dish;
  /** Without a food where it is what cooking changes, which is no ingredient. */
  readonly line: Pick<
    RecipeLine,
    'id' | 'text' | 'foodId' | 'orFoodId' | 'madeFrom' | 'state' | 'cookMethod'
  >;
  readonly eaten: EatenAmount | null;
  readonly parts: Parts;
  /** Milligrams of the ingredient in the amount; without terms where they are not known. */
  readonly massMg: Parts;
}

export interface FigureParts {
  /** All of it; the same sum that the episode's figure is taken from. */
  readonly total: Parts;
  readonly rows: readonly RowParts[];
  /** Ids of readings that divide all of it and belong to no ingredient: the finished dish. */
  readonly divisors: ReadonlySet<string>;
}

/**
 * A figure of an episode ingredient by ingredient, kept as sums over sources: the rows add up to the total.
 * Null where the episode does not have the scope.
 */
export function figureParts(
  file: EpisodeFile,
  scope: NumberScope,
  nutrient: Nutrient,
): FigureParts | null {
  const context = amountContext(file);
  const dishes = dishesOf(file.episode.segments);
  const of = (dish: Dish, share: (parts: Parts) => Parts) =>
    dishRows(dish, context, nutrient, file.episode.region, share);
  if (scope.kind === 'day') {
    const shares = dishes.map((dish) => eatenShare(dish, finishedWeight(dish.recipe, context)));
    const parts = dishes.map((dish, index) => of(dish, shares[index]?.share ?? ((all) => all)));
    const divisors = new Set(shares.flatMap(({ own }) => own));
    const total =
      dishes.length === 0
        ? lacking(file.episode.id, file.episode.title)
        : addParts(parts.map((each) => each.total));
    return { total, rows: parts.flatMap(({ rows }) => rows), divisors };
  }
  const dish = dishes.find((each) =>
    scope.kind === 'portion'
      ? each.recipe.portions.some(({ id }) => id === scope.portionId)
      : each.id === scope.segmentId,
  );
  if (!dish) return null;
  const { share, own } = shareOf(dish, context, scope);
  return { ...of(dish, share), divisors: new Set(own) };
}

function lacking(lineId: string, text: string): Parts {
  return { ...NOTHING, open: [{ lineId, text, reason: 'noLines' }] };
}

function dishRows(
  dish: Dish,
  context: AmountContext,
  nutrient: Nutrient,
  region: EpisodeFile['episode']['region'],
  share: (parts: Parts) => Parts,
) {
  const { id, lines, weighings } = dish.recipe;
  const change = cookingChange(dish.recipe, dish.title, context, nutrient);
  const whole = lines.map((line) => ingredientParts(line, dish.recipe, context, nutrient, region));
  const rows = lines.map((line, index): RowParts => {
    const eaten = eatenAmount(line, weighings, context);
    const terms = eaten.known ? (eaten.amount.massMg ?? []) : [];
    const sources = eaten.known ? eaten.amount.sources : NOTHING.sources;
    const massMg = share({ ...NOTHING, terms, sources });
    return { dish, line, eaten, massMg, parts: share(whole[index] ?? NOTHING) };
  });
  const changes = change.terms.length + change.open.length > 0;
  const text = 'gained or lost in cooking';
  const line = { ...NO_FOOD, id: `cooking-${id}`, text };
  const cooking: RowParts = { dish, line, eaten: null, massMg: NOTHING, parts: share(change) };
  return {
    rows: changes ? [...rows, cooking] : rows,
    total: share(recipeParts(dish.recipe, dish.title, context, nutrient, region)),
  };
}

/** What stands where the ingredient would, in a row that is none. */
const NO_FOOD = {
  foodId: null,
  orFoodId: null,
  madeFrom: null,
  state: 'asIs',
  cookMethod: null,
} as const;

function shareOf(
  dish: Dish,
  context: AmountContext,
  scope: Exclude<NumberScope, { kind: 'day' }>,
): Share {
  const finished = finishedWeight(dish.recipe, context);
  const whole: Share = { share: (parts) => parts, own: [] };
  switch (scope.kind) {
    case 'whole':
      return whole;
    case 'eaten':
      return eatenShare(dish, finished);
    case 'per100g':
      return massShare(dish, finished, 100_000);
    case 'portion': {
      const portion = dish.recipe.portions.find(({ id }) => id === scope.portionId);
      return portion ? portionShare(dish, portion, finished) : whole;
    }
  }
}
