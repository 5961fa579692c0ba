import { z } from 'zod';
import { LEFT_PLACES, LINE_UNITS } from '#lib/episode/recipe-schema';
import { STATES } from '#lib/foods/food';
import {
  amount,
  grams,
  optionalId,
  optionalText,
  requiredText,
  revision,
  rowId,
  ticked,
} from '../../_forms/fields';

/** What stays behind and is not eaten: the texts that an ingredient's form and its scale share. */
export const leftTexts = {
  leftWhere: z.enum(LEFT_PLACES, { error: 'Choose where it stays.' }).default('pan'),
  leftMade: z.enum(['alike', 'fat'], { error: 'Choose what of it stays.' }).default('alike'),
};

const lineTexts = {
  text: requiredText('what the ingredient is', 400),
  foodId: optionalId,
  quantity: amount,
  unit: z.enum(LINE_UNITS, { error: 'Choose a unit.' }),
  state: z.enum(STATES, { error: 'Choose how it was weighed.' }),
  grams,
  leftBehind: grams,
  /** What is left is read off a scale instead of typed here. */
  leftWeighed: ticked,
  ...leftTexts,
  note: optionalText(200),
  shopNote: optionalText(120),
  asBought: ticked,
  spoiltByTake: ticked,
};

/** Grams that are typed and to be weighed too: nobody could say which of the two counts. */
function leftOneWay(
  { leftBehind, leftWeighed }: { readonly leftBehind: unknown; readonly leftWeighed: boolean },
  context: z.RefinementCtx,
) {
  if (!leftWeighed || leftBehind === null) return;
  const message =
    'Empty the grams, or take the tick off: what is left counts as typed, or as weighed.';
  context.addIssue({ code: 'custom', path: ['leftBehind'], message });
}

export const newLineForm = z
  .object({
    episodeId: rowId,
    recipeId: rowId,
    ...lineTexts,
    /** Null for the state in which its food is listed. */
    state: z
      .enum(['', ...STATES], { error: 'Choose how it was weighed.' })
      .default('')
      .transform((state) => state || null),
  })
  .superRefine(leftOneWay);

export const lineForm = z
  .object({
    episodeId: rowId,
    lineId: rowId,
    rev: revision,
    ...lineTexts,
    /** Which of the food's measures is meant; null for the first that fits. */
    measureName: optionalText(120).transform((name) => name || null),
    /** By which of the food's yields it is cooked; null for the person's own, else the first. */
    cookMethod: optionalText(80).transform((method) => method || null),
    /** Code of the factors of what cooking leaves of vitamins and minerals; null for none. */
    retention: optionalText(8).transform((code) => code || null),
    /** The food whose measures and methods the form listed. */
    measuresOf: optionalId,
  })
  .superRefine(leftOneWay);
