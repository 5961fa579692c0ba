import type { HowToStep, Recipe } from 'schema-dts';
import { amountContext, type Dish } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import type { PublishedNumbers } from '#lib/figures/published-numbers';
import { ingredientText } from '#lib/publish/ingredient-text';
import type { LeftOfData } from '#lib/publish/structured/left-of-data';
import { nutritionData } from '#lib/publish/structured/nutrition-data';
import { recipeTimes } from '#lib/publish/structured/recipe-times';

/** A dish as a Recipe of schema.org, and what of it is left out. */
export interface RecipeData {
  readonly recipe: Recipe;
  readonly left: readonly LeftOfData[];
}

/**
 * A dish as a Recipe of schema.org 30.0: ingredients as the description has them, nutrition of a portion, the method by
 * lines, times that its steps leave no doubt about. Diets are never guessed, nor the day on which it was published. What
 * is not known is not written.
 * @param video the node of the video that it is shown in; null for none
 */
export function recipeData(
  dish: Dish,
  file: EpisodeFile,
  figures: EpisodeFigures,
  numbers: PublishedNumbers,
  video: string | null,
): RecipeData {
  const { recipe } = dish;
  const context = amountContext(file);
  const { nutrition, left } = nutritionData(dish, figures, numbers);
  const ingredients = recipe.lines.map((line) => ingredientText(line, recipe.weighings, context));
  const steps = howToSteps(recipe.method);
  const gives = yieldText(dish);
  const { times, left: leftOfTimes } = recipeTimes(dish, file.episode.links);
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
      ...leftOfTimes.map(({ what, why }) => leave(what, why)),
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
