import { z } from 'zod';
import { grams, ingredientList, revision, rowId } from '../../_forms/fields';

const episodeId = rowId;
const lineId = rowId;

export const pasteForm = z.object({ episodeId, recipeId: rowId, list: ingredientList });

export const confirmForm = z.object({ episodeId, lineId, rev: revision });
export const confirmAllForm = z.object({ episodeId, recipeId: rowId });
export const takeFoodForm = z.object({ episodeId, lineId, rev: revision, foodId: rowId });
export const eitherFoodForm = z.object({
  episodeId,
  lineId,
  rev: revision,
  orFoodId: z.string().trim().min(1, 'Choose the second food.').max(64),
});
export const sayGramsForm = z.object({
  episodeId,
  lineId,
  rev: revision,
  grams: grams.refine((mass) => mass !== null, 'Write grams, or a range of grams: 20 or 15–25.'),
});
export const takeMeasureForm = z.object({
  episodeId,
  lineId,
  rev: revision,
  measureName: z.string().trim().min(1, 'Choose what one of it is.').max(120),
});
