import { z } from 'zod';
import type { LineUnit } from '#lib/episode/recipe-schema';
import { amount, optionalText, revision, rowId, ticked } from '../../_forms/fields';
import { DISH_MASS_UNITS, PORTION_UNIT } from './dish-units';

/** How much is counted in, and of which portion. */
export interface DishUnit {
  readonly unit: LineUnit;
  readonly measureName: string | null;
}

const unit = z
  .string()
  .max(120)
  .transform((text, context): DishUnit => {
    const plain = [...DISH_MASS_UNITS, 'batch' as const].find((each) => each === text);
    if (plain) return { unit: plain, measureName: null };
    const name = text.startsWith(PORTION_UNIT) ? text.slice(PORTION_UNIT.length) : '';
    if (name !== '') return { unit: 'portion', measureName: name };
    context.addIssue({ code: 'custom', message: 'Choose grams, batches or a portion.' });
    return z.NEVER;
  });

const texts = {
  text: optionalText(400),
  madeFromId: z.string().trim().min(1, 'Choose the dish that it is made from.').max(64),
  quantity: amount,
  unit,
  note: optionalText(200),
  spoiltByTake: ticked,
};

export const newDishLineForm = z.object({ episodeId: rowId, recipeId: rowId, ...texts });
export const dishLineForm = z.object({ episodeId: rowId, lineId: rowId, rev: revision, ...texts });
export const foodAgainForm = z.object({ episodeId: rowId, lineId: rowId, rev: revision });
export const placeDishForm = z.object({ episodeId: rowId, recipeId: rowId });
