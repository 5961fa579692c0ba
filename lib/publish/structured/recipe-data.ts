import type { HowToStep, Recipe } from 'schema-dts';
import { amountContext, type Dish } from '#lib/episode/context';
import type { EpisodeFile, Step } from '#lib/episode/schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import type { PublishedNumbers } from '#lib/figures/published-numbers';
import { ingredientText } from '#lib/publish/ingredient-text';
import type { LeftOfData } from '#lib/publish/structured/left-of-data';
import { nutritionData } from '#lib/publish/structured/nutrition-data';
import { isoDuration } from '#lib/units/iso-duration';

/** A dish as a Recipe of schema.org, and what of it is left out. */
export interface RecipeData {
  readonly recipe: Recipe;
  readonly left: readonly LeftOfData[];
}

/**
 * A dish as a Recipe of schema.org 30.0: ingredients as the description has them, nutrition of a portion, the method by
 * lines, times of its steps one after the other. Diets are never guessed. What is not known is not written.
 * @param published the day of publishing, where it is known and here
 * @param video the node of the video that it is shown in; null for none
 */
export function recipeData(
  dish: Dish,
  file: EpisodeFile,
  figures: EpisodeFigures,
  numbers: PublishedNumbers,
  { published, video }: { readonly published: string | null; readonly video: string | null },
): RecipeData {
  const { recipe } = dish;
  const context = amountContext(file);
  const { nutrition, left } = nutritionData(dish, figures, numbers);
  const ingredients = recipe.lines.map((line) => ingredientText(line, recipe.weighings, context));
  const steps = howToSteps(recipe.method);
  const gives = yieldText(dish);
  const times = timesOf(dish.steps);
  const leave = (what: string, why: string): LeftOfData => {
    return { segmentId: dish.id, dish: dish.title, what, why };
  };
  return {
    recipe: {
      '@type': 'Recipe',
      '@id': `#dish-${dish.id}`,
      name: dish.title,
      ...(file.creator.name === ''
        ? {}
        : { author: { '@type': 'Person', name: file.creator.name } }),
      ...(published === null ? {} : { datePublished: published }),
      ...(gives === null ? {} : { recipeYield: gives }),
      ...times,
      ...(ingredients.length === 0 ? {} : { recipeIngredient: ingredients }),
      ...(steps.length === 0 ? {} : { recipeInstructions: steps }),
      ...(nutrition === null ? {} : { nutrition }),
      ...(video === null ? {} : { video: { '@id': video } }),
    },
    left: [
      ...(gives === null ? [leave('portions', 'no equal portions are set')] : []),
      ...(ingredients.length === 0 ? [leave('ingredients', 'it has none yet')] : []),
      ...(steps.length === 0 ? [leave('method', 'none is written')] : []),
      ...(times === null ? [leave('times', 'it has no steps to cook or wait')] : []),
      ...left,
    ],
  };
}

/** `'4 portions'` where it is cut into equal ones; a dish in unequal portions has no number of them. */
function yieldText({ recipe }: Dish): string | null {
  const equal = recipe.portions.find((portion) => portion.kind === 'count');
  if (!equal) return null;
  return equal.of === 1 ? '1 portion' : `${equal.of} portions`;
}

/** Numbering that a person typed before a line: `1. `, `2) `. */
const NUMBERING = /^\s*\d{1,2}[.)]\s+/;

function howToSteps(method: string): HowToStep[] {
  return method
    .split('\n')
    .map((line) => line.replace(NUMBERING, '').trim())
    .filter((line) => line !== '')
    .map((text, at) => ({ '@type': 'HowToStep', position: at + 1, text }));
}

/**
 * Times as if each step waited for the one before: what is prepared, what cooks, and both with all waiting. Null where
 * nothing cooks or waits, since times would then be of preparing alone.
 */
function timesOf(steps: readonly Step[]) {
  const seconds = (...roles: readonly Step['role'][]) =>
    steps.filter(({ role }) => roles.includes(role)).reduce((sum, { usualS }) => sum + usualS, 0);
  const [prep, cook, wait] = [seconds('prep'), seconds('cook'), seconds('wait')];
  if (cook + wait === 0) return null;
  return {
    ...(prep === 0 ? {} : { prepTime: isoDuration(prep) }),
    ...(cook === 0 ? {} : { cookTime: isoDuration(cook) }),
    totalTime: isoDuration(prep + cook + wait),
  };
}
