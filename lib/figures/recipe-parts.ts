import type { AmountContext } from '#lib/episode/context';
import { eatenAmount } from '#lib/episode/eaten-amount';
import {
  finishedWeight,
  rawMass,
  rawMasses,
  sumOfMasses,
  type Mass,
} from '#lib/episode/finished-weight';
import type { Recipe, RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import { asEaten, fatParts } from '#lib/figures/cooking-parts';
import type { MissingPart } from '#lib/figures/figure';
import { lineParts, waitingOf, type Region } from '#lib/figures/line-parts';
import {
  addParts,
  divideParts,
  multiplyParts,
  NOTHING,
  scaleParts,
  type Parts,
} from '#lib/figures/parts';
import type { Nutrient } from '#lib/foods/nutrients';
import { multiply, scale, source } from '#lib/units/sum-of-products';

/**
 * A whole recipe's part of a nutrient: its ingredients, at any depth, and what cooking does to its fat and water.
 * A recipe that is made from itself is open where it would begin again.
 * @param title what a recipe without ingredients is called where it is missed
 */
export function recipeParts(
  recipe: Recipe,
  title: string,
  context: AmountContext,
  nutrient: Nutrient,
  region: Region,
  above: readonly string[] = [],
): Parts {
  if (recipe.lines.length === 0) return withoutLines(recipe, title);
  const lines = recipe.lines.map((line) =>
    ingredientParts(line, recipe, context, nutrient, region, above),
  );
  return addParts([...lines, cookingChange(recipe, title, context, nutrient)]);
}

/** A recipe without ingredients is open. */
export function withoutLines({ id }: Recipe, title: string): Parts {
  return { ...NOTHING, open: [{ lineId: id, text: title, reason: 'noLines' }] };
}

/** One ingredient's part of a nutrient, of a food or of the recipe that it is made from. */
export function ingredientParts(
  line: RecipeLine,
  recipe: Pick<Recipe, 'id' | 'weighings'>,
  context: AmountContext,
  nutrient: Nutrient,
  region: Region,
  above: readonly string[] = [],
): Parts {
  if (!line.madeFrom) return lineParts(line, recipe.weighings, context, nutrient, region);
  const ids = [...above, recipe.id];
  const nested = nestedParts(line, recipe.weighings, context, nutrient, region, ids);
  if (!line.photographed) return nested;
  const title = context.recipes.get(line.madeFrom.recipeId)?.title ?? line.text;
  return { ...nested, provisional: [...nested.provisional, ...waitingOf(line, title)] };
}

/** The part of the nested recipe that an ingredient is, with that recipe's own sources. */
function nestedParts(
  line: RecipeLine,
  weighings: readonly Weighing[],
  context: AmountContext,
  nutrient: Nutrient,
  region: Region,
  above: readonly string[],
): Parts {
  const missing = (reason: MissingPart['reason']) => ({ lineId: line.id, text: line.text, reason });
  const open = (reason: MissingPart['reason']) => ({ ...NOTHING, open: [missing(reason)] });
  const eaten = eatenAmount(line, weighings, context);
  if (!eaten.known) return open(eaten.gap);
  const nested = eaten.recipe;
  if (!nested) return open('noFood');
  if (above.includes(nested.id)) return open('cycle');
  const whole = recipeParts(nested, nested.title, context, nutrient, region, above);
  const { batches, massMg, sources } = eaten.amount;
  if (batches) {
    return asEaten(multiplyParts(whole, batches, sources), eaten, nutrient, missing);
  }
  const finished = finishedWeight(nested, context, above);
  if (!massMg || !finished) return open('noDivisor');
  const share = finished.ids.reduce(
    (parts, id) => divideParts(parts, id, finished.sources),
    multiplyParts(whole, massMg, sources),
  );
  return asEaten(share, eaten, nutrient, missing);
}

/**
 * What cooking adds to a recipe or takes from it beside its ingredients: fat by the change that is cited for it,
 * and water, which is the whole difference of weight (Greenfield & Southgate, FAO 2003, appendix on dishes).
 */
export function cookingChange(
  recipe: Recipe,
  title: string,
  context: AmountContext,
  nutrient: Nutrient,
): Parts {
  return addParts(cookingChanges(recipe, title, context, nutrient));
}

/** The same, in parts that add up to it: of water, the finished weight and the weight of each ingredient. */
export function cookingChanges(
  recipe: Recipe,
  title: string,
  context: AmountContext,
  nutrient: Nutrient,
): readonly Parts[] {
  if (nutrient === 'water') return waterChanges(recipe, context);
  const fat = recipe.cooking?.fatPermille ?? 0;
  if (!recipe.cooking || fat === 0) return [];
  const mass = rawMass(recipe, context);
  const missing = (reason: MissingPart['reason']) => ({ lineId: recipe.id, text: title, reason });
  if (!mass) return [{ ...NOTHING, open: [missing('noGrams')] }];
  const id = `fat:${recipe.id}`;
  const share = Math.abs(fat) / 1000;
  const sources = new Map([
    ...mass.sources,
    [id, { low: Math.max(0, share - HALF_PERCENT), value: share, high: share + HALF_PERCENT }],
  ] as const);
  const change = fatParts(
    multiply(mass.terms, [source(id)]),
    sources,
    nutrient,
    missing('fatLeft'),
  );
  return [scaleParts(change, Math.sign(fat))];
}

/** Changes of fat are published in whole percent. */
const HALF_PERCENT = 0.005;

function waterChanges(recipe: Recipe, context: AmountContext): readonly Parts[] {
  const finished = finishedWeight(recipe, context);
  const masses = finished && rawMasses(recipe, context);
  if (!finished || !masses) return [];
  // What one ingredient's weight takes away of another's is no part by itself: of a running total, the next reading.
  const apart = masses.every(({ terms }) => terms.every(({ coefficient }) => coefficient > 0));
  const raw = apart ? masses : [sumOfMasses(masses)];
  return [grams(finished, 1e-3), ...raw.map((mass) => grams(mass, -1e-3))];
}

const kept = new WeakMap<Mass['terms'], { perMg: number; of: Mass['sources']; parts: Parts }>();

/** Milligrams as grams of water, added or taken away; kept by the amount, which is never changed. */
function grams({ terms, sources }: Mass, perMg: number): Parts {
  const known = kept.get(terms);
  if (known?.perMg === perMg && known.of === sources) return known.parts;
  const parts = { ...NOTHING, terms: scale(terms, perMg), sources };
  kept.set(terms, { perMg, of: sources, parts });
  return parts;
}
