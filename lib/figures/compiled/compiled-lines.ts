import { recipesOf, type AmountContext, type Dish } from '#lib/episode/context';
import type { Recipe } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { dishSum, type DishSum } from '#lib/figures/compiled/dish-sum';
import { compileLine, type CompiledLine } from '#lib/figures/compiled/line';
import { askedSummand } from '#lib/figures/compiled/summand';
import type { KeptDish, Memory } from '#lib/figures/compiled/memory';
import { cookingChanges, withoutLines } from '#lib/figures/recipe-parts';

/** The ingredients of a recipe, compiled; each that is the same object in the same readings and context, once. */
export function compiledLines(
  recipe: Recipe,
  context: AmountContext,
  memory: Memory,
): readonly CompiledLine[] {
  const { id: recipeId, weighings } = recipe;
  return recipe.lines.map((line) => {
    const own = line.madeFrom ? context : memory.context;
    const known = memory.lines.get(line.id);
    const same = known?.compiled.line === line && known.recipeId === recipeId;
    if (same && known.weighings === weighings && known.context === own) return known.compiled;
    const recipe = { id: recipeId, weighings };
    // What it was before it was edited: lists that stay the same are taken over from it.
    const compiled = compileLine(line, recipe, own, memory.panel, known?.compiled);
    memory.lines.set(line.id, { recipeId, weighings, context: own, compiled });
    return compiled;
  });
}

/**
 * What a recipe's amounts are read against: of recipes only those that it is made from, at any depth. The same object
 * as before while these are the same.
 */
function contextOf(
  recipe: Recipe,
  file: Pick<EpisodeFile, 'episode' | 'recipes'>,
  memory: Memory,
): AmountContext {
  if (recipe.lines.every(({ madeFrom }) => madeFrom === null)) return memory.context;
  const recipes = madeFromOf(recipe, new Map(recipesOf(file).map((each) => [each.id, each])));
  const known = memory.contexts.get(recipe.id);
  const same =
    known?.recipes.size === recipes.size &&
    [...recipes].every(([id, each]) => known.recipes.get(id) === each);
  if (known && same) return known;
  const context = { ...memory.context, recipes };
  memory.contexts.set(recipe.id, context);
  return context;
}

function madeFromOf(
  recipe: Recipe,
  all: ReadonlyMap<string, Recipe>,
  found = new Map<string, Recipe>(),
): ReadonlyMap<string, Recipe> {
  for (const { madeFrom } of recipe.lines) {
    const nested = madeFrom && all.get(madeFrom.recipeId);
    if (!nested || found.has(nested.id)) continue;
    found.set(nested.id, nested);
    madeFromOf(nested, all, found);
  }
  return found;
}

/**
 * A dish of a file with its sum. One that was kept in the context without recipes needs none: its ingredients are
 * then not looked through for what they are made from.
 */
export function dishIn(
  file: Pick<EpisodeFile, 'episode' | 'recipes'>,
  dish: Dish,
  memory: Memory,
): KeptDish {
  const known = memory.dishes.get(dish.id);
  if (known?.dish === dish && known.context === memory.context) return known;
  return keptDish(dish, contextOf(dish.recipe, file, memory), memory);
}

/** A dish with its sum, worked out once as long as it is the same object in the same context. */
export function keptDish(dish: Dish, context: AmountContext, memory: Memory): KeptDish {
  const known = memory.dishes.get(dish.id);
  if (known?.dish === dish && known.context === context) return known;
  const lines = compiledLines(dish.recipe, context, memory);
  const kept = { dish, context, lines, sum: sumOf(dish, lines, context, memory), worked: null };
  memory.dishes.set(dish.id, kept);
  return kept;
}

function sumOf(
  { recipe, title }: Dish,
  lines: readonly CompiledLine[],
  context: AmountContext,
  memory: Memory,
): DishSum {
  const { panel } = memory;
  if (lines.length === 0) {
    return dishSum(recipe.id, [askedSummand(panel, () => [withoutLines(recipe, title)])], memory);
  }
  const cooking = askedSummand(panel, (place) =>
    cookingChanges(recipe, title, context, panel.nutrients[place] ?? 'water'),
  );
  return dishSum(recipe.id, [...lines, cooking], memory);
}
