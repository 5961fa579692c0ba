import { z } from 'zod';
import { leavesWeight } from '#lib/episode/finished-weight';
import { COOKING_SPREAD_PERMILLE } from '#lib/episode/spreads';
import { requiredText, revision, rowId } from '../../_forms/fields';
import { optionalPercent, percent } from '../../_forms/number-fields';

const NOTHING_LEFT =
  'So much lost, and as far as it may miss, would leave nothing of the dish: look at the numbers again.';

export const cookingForm = z
  .object({
    episodeId: rowId,
    recipeId: rowId,
    rev: revision,
    moisture: percent('how much water is lost or taken up, 0 for none', -1000, 5000),
    fat: optionalPercent(-1000, 1000).transform((permille) => permille ?? 0),
    spread: optionalPercent().transform((permille) => permille ?? COOKING_SPREAD_PERMILLE),
    source: requiredText('who says so: a table and its row, or your own trays', 200),
  })
  .refine(
    ({ moisture: moisturePermille, fat: fatPermille, spread: spreadPermille }) =>
      leavesWeight({ moisturePermille, fatPermille, spreadPermille }),
    { path: ['moisture'], message: NOTHING_LEFT },
  );

export const noCookingForm = z.object({ episodeId: rowId, recipeId: rowId, rev: revision });
