import { amountContext, dishesOf, type AmountContext, type Dish } from '#lib/episode/context';
import { eatenAmount, type EatenAmount } from '#lib/episode/eaten-amount';
import type { EpisodeFile, RecipeLine } from '#lib/episode/schema';
import { finishedWeight, shareByMass, withoutDivisor } from '#lib/figures/finished-weight';
import { lineParts } from '#lib/figures/line-parts';
import { addParts, NOTHING, scaleParts, type Parts } from '#lib/figures/parts';
import type { NumberScope } from '#lib/figures/published-numbers';
import type { Nutrient } from '#lib/foods/nutrients';

/** An ingredient's part of a figure, before bounds are taken. */
export interface RowParts {
  readonly dish: Dish;
  readonly line: RecipeLine;
  readonly eaten: EatenAmount;
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
    const parts = dishes.map((dish) => of(dish, eatenShare(dish)));
    const total =
      dishes.length === 0
        ? lacking(file.episode.id, file.episode.title)
        : addParts(parts.map((each) => each.total));
    return { total, rows: parts.flatMap(({ rows }) => rows), divisors: new Set() };
  }
  const dish = dishes.find((each) =>
    scope.kind === 'portion'
      ? each.recipe.portions.some(({ id }) => id === scope.portionId)
      : each.id === scope.segmentId,
  );
  if (!dish) return null;
  const { share, divisors } = shareOf(dish, context, scope);
  return { ...of(dish, share), divisors: new Set(divisors) };
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
  const whole = lines.map((line) => lineParts(line, weighings, context, nutrient, region));
  const rows = lines.map((line, index): RowParts => {
    const eaten = eatenAmount(line, weighings, context);
    const terms = eaten.known ? (eaten.amount.massMg ?? []) : [];
    const sources = eaten.known ? eaten.amount.sources : NOTHING.sources;
    const massMg = share({ ...NOTHING, terms, sources });
    return { dish, line, eaten, massMg, parts: share(whole[index] ?? NOTHING) };
  });
  const sum = lines.length === 0 ? lacking(id, dish.title) : addParts(whole);
  return { total: share(sum), rows };
}

const eatenShare = (dish: Dish) => (parts: Parts) =>
  scaleParts(parts, dish.eaten.num / dish.eaten.den);

interface Share {
  readonly share: (parts: Parts) => Parts;
  readonly divisors: readonly string[];
}

function shareOf(
  dish: Dish,
  context: AmountContext,
  scope: Exclude<NumberScope, { kind: 'day' }>,
): Share {
  const exact = (share: Share['share']): Share => ({ share, divisors: [] });
  const byMass = (massMg: number): Share => {
    const finished = finishedWeight(dish.recipe, context);
    if (!finished) return exact(() => withoutDivisor(dish.recipe));
    // The first id is the reading itself; a scale's accuracy is an error of the ingredients as well.
    return {
      share: (parts) => shareByMass(parts, finished, massMg),
      divisors: finished.ids.slice(0, 1),
    };
  };
  switch (scope.kind) {
    case 'whole':
      return exact((parts) => parts);
    case 'eaten':
      return exact(eatenShare(dish));
    case 'per100g':
      return byMass(100_000);
    case 'portion': {
      const portion = dish.recipe.portions.find(({ id }) => id === scope.portionId);
      if (portion?.kind === 'mass') return byMass(portion.massMg);
      const of = portion?.of ?? 1;
      return exact((parts) => scaleParts(parts, 1 / of));
    }
  }
}
