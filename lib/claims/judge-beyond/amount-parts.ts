import type { BeyondDish } from '#lib/claims/judge-beyond/beyond-context';
import { plain } from '#lib/claims/judge-beyond/number-words';
import {
  countsCalled,
  portionCounts,
  type PortionCount,
} from '#lib/claims/judge-beyond/portion-counts';
import type { LikelyRange } from '#lib/claims/said-interval';
import type { Statement } from '#lib/claims/statement';
import type { AmountContext } from '#lib/episode/context';

export type AmountStatement = Statement & { readonly kind: 'amount' };

/** By how much what is known is divided, or, where a dish is made several times, multiplied. */
export interface Part {
  readonly by: LikelyRange;
  readonly name: string;
}

export const by = (value: number, name: string): Part => ({
  by: { value, low: value, high: value },
  name,
});

/** What an amount may be of; null where nothing is known of such a part. */
export function partsOf(
  { scope, food }: Pick<AmountStatement, 'scope' | 'food'>,
  { dish }: BeyondDish,
  amounts: AmountContext,
): readonly Part[] | null {
  const batches = dish.batches.num / dish.batches.den;
  const counts = (as: 'portion' | 'slice' | 'piece') =>
    countsCalled(portionCounts(dish.recipe, amounts), as).map(ofCount);
  switch (scope) {
    case 'dish':
    case 'whole':
    case 'ingredient':
    case 'unknown':
      return batches === 1 || batches === 0
        ? [by(1, '')]
        : [by(1, ''), by(1 / batches, `made ${plain(batches)} times`)];
    case 'half':
      return [by(2, 'half of it')];
    case 'portion':
      return counts('portion');
    case 'slice':
      return counts('slice');
    case 'each':
      return food === undefined ? counts('piece') : [by(1, 'one of them')];
    case 'per100g':
    case 'day':
    case 'soFar':
    case 'compared':
      return null;
  }
}

const ofCount = ({ name, count }: PortionCount): Part => ({ by: count, name: `“${name}”` });

/** One of each of the equal parts that the dish makes, whatever they are called. */
export function everyPart({ dish }: BeyondDish, amounts: AmountContext): readonly Part[] {
  return portionCounts(dish.recipe, amounts).map(ofCount);
}
