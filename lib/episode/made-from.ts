import type { AmountContext } from '#lib/episode/context';
import type { LineAmount } from '#lib/episode/line-amount';
import type { Portion, Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { Interval } from '#lib/units/interval';
import { quantityText } from '#lib/units/read-quantity';
import { constant, multiply, source, type Term } from '#lib/units/sum-of-products';

/** The recipe that an ingredient is made from; null where it is not, or the recipe is not at hand. */
export function nestedRecipe(line: RecipeLine, context: AmountContext): Recipe | null {
  return line.madeFrom ? (context.recipes.get(line.madeFrom.recipeId) ?? null) : null;
}

/** A share by eye as a source of its own: 1/3 ± 15 % is 0.283 to 0.383. */
export function byEyeShare(share: { num: number; den: number }, permille: number): Interval {
  const value = share.num / share.den;
  const spread = (value * permille) / 1000;
  return { low: Math.max(0, value - spread), value, high: value + spread };
}

/**
 * So many batches or portions of a recipe: exact as batches, by weight where the portion is of so many grams.
 * Null where the recipe has no portion of that name.
 */
export function nestedAmount(
  count: readonly Term[],
  unit: 'batch' | 'portion',
  portionName: string | null,
  recipe: Recipe,
): Pick<LineAmount, 'massMg' | 'batches' | 'sources'> | null {
  if (unit === 'batch') return { massMg: null, batches: count, sources: new Map() };
  const portion = portionOf(recipe, portionName);
  if (!portion) return null;
  if (portion.kind === 'mass') {
    const massMg = multiply(count, [constant(portion.massMg)]);
    return { massMg, batches: null, sources: new Map() };
  }
  if (portion.kind === 'count') {
    const batches = multiply(count, [constant(1 / portion.of)]);
    return { massMg: null, batches, sources: new Map() };
  }
  const id = `portion:${portion.id}`;
  return {
    massMg: null,
    batches: multiply(count, [source(id)]),
    sources: new Map([[id, byEyeShare(portion.share, portion.permille)]]),
  };
}

/**
 * How much of a dish an ingredient is, where it is given in batches or portions, in words; null where it is by weight
 * or not at all.
 * @example takenWords({ quantity: two, unit: 'portion', measureName: 'a ladle' }) // '2 × a ladle'
 */
export function takenWords({
  quantity,
  unit,
  measureName,
}: Pick<RecipeLine, 'quantity' | 'unit' | 'measureName'>): string | null {
  if (!quantity || (unit !== 'batch' && unit !== 'portion')) return null;
  const count = quantityText(quantity);
  if (unit === 'portion') return `${count} × ${measureName ?? 'a portion'}`;
  return `${count} ${quantity.high.num > quantity.high.den ? 'batches' : 'batch'}`;
}

function portionOf(recipe: Recipe, name: string | null): Portion | null {
  if (name === null) return recipe.portions[0] ?? null;
  return recipe.portions.find((portion) => portion.name === name) ?? null;
}

/** A recipe as far as it is made from others. */
export interface RecipeTies {
  readonly id: string;
  readonly title: string;
  readonly lines: readonly Pick<RecipeLine, 'madeFrom'>[];
}

/**
 * The ring that recipes close when they are made from each other, by their titles, first and last the same;
 * null where there is none. `extra` is one more tie that is about to be made.
 * @example recipeRing(recipes, { in: 'sauce', from: 'lasagne' }) // ['Sauce', 'Lasagne', 'Sauce']
 */
export function recipeRing(
  recipes: readonly RecipeTies[],
  extra?: { readonly in: string; readonly from: string },
): readonly string[] | null {
  const byId = new Map(recipes.map((recipe) => [recipe.id, recipe]));
  const below = (id: string): readonly string[] => [
    ...(byId.get(id)?.lines.flatMap((line) => line.madeFrom?.recipeId ?? []) ?? []),
    ...(extra?.in === id ? [extra.from] : []),
  ];
  const clear = new Set<string>();
  const walk = (id: string, above: readonly string[]): readonly string[] | null => {
    if (clear.has(id)) return null;
    const at = above.indexOf(id);
    if (at >= 0) return [...above.slice(at), id];
    for (const next of below(id)) {
      const ring = walk(next, [...above, id]);
      if (ring) return ring;
    }
    clear.add(id);
    return null;
  };
  for (const id of extra ? [extra.in] : byId.keys()) {
    const ring = walk(id, []);
    if (ring) return ring.map((each) => byId.get(each)?.title ?? 'a recipe that is not here');
  }
  return null;
}
