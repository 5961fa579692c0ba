import { z } from 'zod';
import { NUTRIENTS, STATED_NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { mostIn100g } from '#lib/foods/plausible-maximum';
import { revision, rowId } from '../../_forms/fields';
import { number } from '../../_forms/number-fields';

const nutrient = z.enum(STATED_NUTRIENTS as unknown as [Nutrient, ...Nutrient[]], {
  error: 'Something is missing: open the page again.',
});
const ids = { episodeId: rowId, lineId: rowId, rev: revision };

export const boundForm = z
  .object({ ...ids, nutrient, maxPer100: number('the most in 100 g', 0, 1_000_000) })
  .superRefine(({ nutrient: of, maxPer100 }, context) => {
    const most = mostIn100g(of);
    if (maxPer100 <= most) return;
    const { unit, label } = NUTRIENTS[of];
    const message = `100 g of anything hold at most ${most} ${unit} ${label}: this is ${maxPer100}.`;
    context.addIssue({ code: 'custom', path: ['maxPer100'], message });
  });

export const giveBackForm = z.object({ ...ids, nutrient });
export const boundAllForm = z.object({ episodeId: rowId, recipeId: rowId });
