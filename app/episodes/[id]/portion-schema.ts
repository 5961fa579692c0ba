import { z } from 'zod';
import type { Ratio } from '#lib/episode/fields';
import type { Portion } from '#lib/episode/recipe-schema';
import { readGrams } from '#lib/units/read-quantity';
import { unclearNumber } from '#lib/units/printed';
import { optionalText, rowId } from '../../_forms/fields';
import { optionalPercent } from '../../_forms/number-fields';
import { readShare } from './share-field';

/** What one portion is, as it was typed; `permille` is null for the kitchen's own spread. */
export type TypedPortion =
  | { readonly kind: 'count'; readonly of: number }
  | { readonly kind: 'mass'; readonly massMg: number }
  | { readonly kind: 'byEye'; readonly share: Ratio; readonly permille: number | null };

/** What would be right, where a size says nothing. */
const SIZES: Readonly<Record<Portion['kind'], string>> = {
  count: 'Write into how many equal portions it goes: 2.',
  mass: 'Write the grams of one portion: 180.',
  byEye: 'Write what part of the dish it is: 1/3. All of it, 1, is the most.',
};

export const portionForm = z
  .object({
    episodeId: rowId,
    recipeId: rowId,
    size: z.string().trim().max(40, 'This is too long for a size.').default(''),
    kind: z.enum(['count', 'mass', 'byEye'], {
      error: 'Choose equal portions, grams or a share by eye.',
    }),
    spread: optionalPercent(),
    name: optionalText(80),
  })
  .transform(({ size, kind, spread, ...rest }, context) => {
    const portion = sized(kind, size, spread);
    if (portion) return { ...rest, portion };
    context.addIssue({
      code: 'custom',
      path: ['size'],
      message: unclearNumber(size) ?? SIZES[kind],
    });
    return z.NEVER;
  });

function sized(kind: Portion['kind'], size: string, permille: number | null): TypedPortion | null {
  if (kind === 'count') {
    const of = /^\d{1,4}$/.test(size) ? Number(size) : 0;
    return of >= 1 && of <= 1000 ? { kind, of } : null;
  }
  if (kind === 'mass') {
    const mass = readGrams(size);
    const exact = mass && mass.lowMg === mass.highMg && mass.valueMg > 0;
    return exact ? { kind, massMg: mass.valueMg } : null;
  }
  const share = readShare(size);
  return share && share.num > 0 && share.num <= share.den ? { kind, share, permille } : null;
}
