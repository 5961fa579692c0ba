import { RETENTION_ROWS } from '#lib/foods/retention';
import type { Recipe, RecipeLine, Weighing } from '#lib/episode/recipe-schema';

/** Tells a fault at a path. */
export type Say = (path: string, code: string, message: string) => void;
/** Tells an id that nothing of its kind has. */
export type Refer = (
  path: string,
  what: string,
  set: ReadonlySet<string>,
  id: string | null,
) => void;

/** Ids that a recipe may name, and the recipes that it may be made from. */
export interface RecipeSurroundings {
  readonly foods: ReadonlySet<string>;
  readonly scales: ReadonlySet<string>;
  readonly recipes: ReadonlyMap<string, Recipe>;
}

/**
 * The faults of one recipe that a schema cannot see: ids that nothing has, amounts that cannot be, what is both a
 * food and a dish.
 */
export function recipeProblems(
  recipe: Recipe,
  path: string,
  known: RecipeSurroundings,
  say: Say,
  refer: Refer,
): void {
  recipe.lines.forEach((line, index) => {
    lineProblems(line, `${path}.lines[${index}]`, known, say, refer);
  });
  recipe.weighings.forEach((weighing, index) => {
    weighingProblems(weighing, recipe, `${path}.weighings[${index}]`, known, say, refer);
  });
}

function lineProblems(
  line: RecipeLine,
  path: string,
  known: RecipeSurroundings,
  say: Say,
  refer: Refer,
): void {
  refer(`${path}.foodId`, 'food', known.foods, line.foodId);
  refer(`${path}.orFoodId`, 'food', known.foods, line.orFoodId);
  const { leftBehind, planned, quantity, retention } = line;
  if (leftBehind.kind === 'mass' && planned && leftBehind.valueMg > planned.highMg) {
    say(`${path}.leftBehind`, 'too-much', 'more is left behind than there was');
  }
  if (quantity && quantity.low.num * quantity.high.den > quantity.high.num * quantity.low.den) {
    say(`${path}.quantity`, 'order', 'the low amount is above the high one');
  }
  if (retention !== null && !RETENTION_ROWS.some(({ code }) => code === retention)) {
    say(
      `${path}.retention`,
      'unknown-id',
      `no row of retention factors has the code "${retention}"`,
    );
  }
  if (line.madeFrom) madeFromProblems(line, line.madeFrom.recipeId, path, known, say, refer);
}

function madeFromProblems(
  line: RecipeLine,
  recipeId: string,
  path: string,
  known: RecipeSurroundings,
  say: Say,
  refer: Refer,
): void {
  refer(`${path}.madeFrom.recipeId`, 'recipe', new Set(known.recipes.keys()), recipeId);
  for (const field of ['foodId', 'orFoodId'] as const) {
    if (line[field] === null) continue;
    say(`${path}.${field}`, 'two-kinds', 'an ingredient made from a recipe has no food beside it');
  }
  const recipe = known.recipes.get(recipeId);
  const { measureName } = line;
  if (!recipe || line.unit !== 'portion' || measureName === null) return;
  if (recipe.portions.some(({ name }) => name === measureName)) return;
  const message = `no portion of "${recipe.title}" is called "${measureName}"`;
  say(`${path}.measureName`, 'unknown-id', message);
}

function weighingProblems(
  weighing: Weighing,
  { lines, weighings }: Recipe,
  path: string,
  known: RecipeSurroundings,
  say: Say,
  refer: Refer,
): void {
  const own = new Set(lines.map(({ id }) => id));
  refer(`${path}.scaleId`, 'scale', known.scales, weighing.scaleId);
  weighing.shares.forEach((share, position) => {
    refer(`${path}.shares[${position}].lineId`, 'ingredient of this dish', own, share.lineId);
  });
  const shared = weighing.shares.reduce((sum, { share }) => sum + share.num / share.den, 0);
  if (shared > 1 + 1e-9) {
    say(`${path}.shares`, 'too-much', 'the shares of this reading are more than all of it');
  }
  if (weighing.tareMg > weighing.grossMg) {
    say(`${path}.tareMg`, 'order', 'the empty container weighs more than the full one');
  }
  const others = new Set(weighings.map(({ id }) => id).filter((id) => id !== weighing.id));
  refer(`${path}.afterId`, 'other reading of this dish', others, weighing.afterId);
}
