import { amountContext, dishesOf, type AmountContext, type Dish } from '#lib/episode/context';
import { eatenAmount } from '#lib/episode/eaten-amount';
import { findMeasure } from '#lib/episode/line-amount';
import type { SwapStep, Variant } from '#lib/episode/publish-schema';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { countOf, gramsOf, hasReadings, isOfGrams } from '#lib/swap/counted-amount';
import { unsaidLine } from '#lib/swap/unsaid-line';

/**
 * The episode as it would be with a variant's swaps in it; the file that is given stays as it is.
 *
 * Another food takes the amount of the one before it: by piece where it has that piece ("2 slices"), else in the same
 * grams, as weighed. An amount that a swap says stands for what was weighed. Where grams change, a finished weight that
 * was weighed no longer holds and is taken out: what goes by grams of the finished dish is then open.
 *
 * Laws: another food and the first one again is nothing; leaving an ingredient out and adding as much of the same is
 * nothing.
 * @returns problems where the variant names a dish, an ingredient or a food that the file does not have
 * @example applySwap(file, fullFat) // the file with full-fat yoghurt in that line's place, in the same grams
 */
export function applySwap(
  file: EpisodeFile,
  variant: Pick<Variant, 'id' | 'segmentId' | 'steps'>,
): Result<EpisodeFile> {
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === variant.segmentId);
  if (!dish) return failed(problem('segmentId', 'no-dish', 'The dish of these swaps is gone.'));
  const context = amountContext(file);
  const problems: Problem[] = [];
  let recipe: Recipe = dish.recipe;
  variant.steps.forEach((step, at) => {
    const taken = takeStep(recipe, { step, at, variantId: variant.id, dish, context });
    if (typeof taken === 'string') problems.push(problem(`steps[${at}]`, 'no-such', taken));
    else recipe = taken;
  });
  if (problems.length > 0) return failed(...problems);
  return ok(withRecipe(file, dish.id, withoutFinished(dish.recipe, recipe)));
}

function problem(path: string, code: string, message: string): Problem {
  return { path: `variant.${path}`, code, message };
}

/** A file with another recipe in a dish's place. */
export function withRecipe(file: EpisodeFile, segmentId: string, recipe: Recipe): EpisodeFile {
  const segments = file.episode.segments.map((segment) =>
    segment.id === segmentId ? { ...segment, recipe } : segment,
  );
  return { ...file, episode: { ...file.episode, segments } };
}

interface Taking {
  readonly step: SwapStep;
  readonly at: number;
  readonly variantId: string;
  readonly dish: Dish;
  readonly context: AmountContext;
}

function takeStep(recipe: Recipe, taking: Taking): Recipe | string {
  const { step, context, dish } = taking;
  if (step.kind === 'add') {
    const food = context.foods.get(step.foodId);
    if (!food) return 'The food that is to be added is not in the file.';
    const line = added(step, food.name, taking);
    return withLine(recipe, line, dish.recipe);
  }
  const line = recipe.lines.find(({ id }) => id === step.lineId);
  if (!line) return 'An ingredient that is to be swapped is gone.';
  if (step.kind === 'leaveOut') {
    return { ...recipe, lines: recipe.lines.filter((each) => each !== line) };
  }
  if (step.kind === 'amount') return atAmount(recipe, line, step.massMg, context);
  const food = context.foods.get(step.foodId);
  if (!food) return `The food that is to take the place of ${line.text} is not in the file.`;
  const first = dish.recipe.lines.find(({ id }) => id === line.id);
  const back = first?.foodId === food.id && sameAmount(first, line) ? first : null;
  const swapped = back ?? withFood(line, food.id, recipe, context);
  const inPlace = replaced(recipe, swapped);
  return step.massMg === null ? inPlace : atAmount(inPlace, swapped, step.massMg, context);
}

/** Whether nothing was said about an ingredient's amount between two states of it. */
function sameAmount(a: RecipeLine, b: RecipeLine): boolean {
  return a.planned === b.planned && a.quantity === b.quantity && a.unit === b.unit;
}

function replaced(recipe: Recipe, line: RecipeLine): Recipe {
  return { ...recipe, lines: recipe.lines.map((each) => (each.id === line.id ? line : each)) };
}

/** The ingredient with another food: what was said of the first food's cooking and gaps is none of the second's. */
function withFood(
  line: RecipeLine,
  foodId: string,
  recipe: Recipe,
  context: AmountContext,
): RecipeLine {
  const food = context.foods.get(foodId);
  const next: RecipeLine = {
    ...line,
    ...{ foodId, orFoodId: null, madeFrom: null, match: 'confirmed', photographed: null },
    ...{ cookMethod: null, retention: null, bounded: [] },
    text: food?.name ?? line.text,
  };
  const byGrams = line.planned !== null || hasReadings(recipe, line.id);
  if (byGrams || line.unit === null || line.quantity === null || !food) return next;
  const own = {
    ...next,
    measureName: food.measures.some(({ name }) => name === line.measureName)
      ? line.measureName
      : null,
  };
  const piece = line.unit === 'piece' && line.measureName !== null && own.measureName === null;
  const fits =
    line.unit === 'serving' ||
    line.unit === 'pack' ||
    findMeasure(line.unit, own.measureName, food) !== null;
  if (!piece && fits && eatenAmount(own, recipe.weighings, context).known) return own;
  const planned = gramsOf(line, recipe, context);
  return planned ? { ...next, planned } : next;
}

/**
 * An ingredient at so many grams: what it weighed before no longer counts. One that is counted in pieces stays so where
 * the grams are quarters of a piece, and keeps what the measure may be off by.
 */
export function atAmount(
  recipe: Recipe,
  line: RecipeLine,
  massMg: number,
  context: AmountContext,
): Recipe {
  const counted = countOf(line, massMg, recipe, context);
  const amount = counted
    ? { quantity: counted }
    : { planned: { lowMg: massMg, valueMg: massMg, highMg: massMg } };
  const weighings = recipe.weighings.map((weighing) =>
    isOfGrams(weighing) && weighing.shares.some(({ lineId }) => lineId === line.id)
      ? { ...weighing, shares: weighing.shares.filter(({ lineId }) => lineId !== line.id) }
      : weighing,
  );
  return { ...replaced(recipe, { ...line, ...amount, photographed: null }), weighings };
}

/** A new ingredient, or the one that was left out before where it is the same food in the same amount. */
function added(
  step: Extract<SwapStep, { kind: 'add' }>,
  text: string,
  { at, variantId, dish, context }: Taking,
): RecipeLine {
  const again = dish.recipe.lines.find(
    (line) =>
      line.foodId === step.foodId &&
      line.state === step.state &&
      gramsOf(line, dish.recipe, context)?.valueMg === step.massMg,
  );
  const { foodId, state, massMg } = step;
  const planned = { lowMg: massMg, valueMg: massMg, highMg: massMg };
  const id = `add-${at}-${variantId}`.slice(0, 64);
  return again ?? { ...unsaidLine(id), text, foodId, state, planned };
}

/** A recipe with a line in the place that it has in the first recipe, at the end where it has none. */
function withLine(recipe: Recipe, line: RecipeLine, first: Recipe): Recipe {
  const order = first.lines.map(({ id }) => id);
  const place = order.indexOf(line.id);
  if (place < 0) return { ...recipe, lines: [...recipe.lines, line] };
  if (recipe.lines.some(({ id }) => id === line.id)) {
    const twice = { ...line, id: `add-${line.id}`.slice(0, 64) };
    return { ...recipe, lines: [...recipe.lines, twice] };
  }
  const before = recipe.lines.filter(({ id }) => {
    const at = order.indexOf(id);
    return at >= 0 && at < place;
  });
  const rest = recipe.lines.filter((each) => !before.includes(each));
  return { ...recipe, lines: [...before, line, ...rest] };
}

/** Without its finished weights where a swap changes any grams. */
function withoutFinished(was: Recipe, becomes: Recipe): Recipe {
  if (!amountsDiffer(was, becomes)) return becomes;
  return { ...becomes, weighings: becomes.weighings.filter(({ kind }) => kind !== 'finished') };
}

/** Whether the amounts of two states of a recipe are not the same, ingredient by ingredient. */
export function amountsDiffer(a: Recipe, b: Recipe): boolean {
  if (a.lines.length !== b.lines.length) return true;
  return b.lines.some((line) => {
    const other = a.lines.find(({ id }) => id === line.id);
    if (!other) return true;
    return !sameAmount(other, line) || hasReadings(a, line.id) !== hasReadings(b, line.id);
  });
}
