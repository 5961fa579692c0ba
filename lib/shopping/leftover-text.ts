import type { ShelfUnits } from '#lib/episode/stock-schema';
import type { ShoppingItem } from '#lib/shopping/list-types';
import { shelfAmount } from '#lib/shopping/shelf-amount';
import { printDay } from '#lib/units/print-date';

/**
 * What is left of a food after the shoot, until when it is used, and who could use it: one sentence each.
 * @example leftoverText(skyr, 'metric') // ['Left over: 300 g, use by Sat 19 Dec.', 'Pancakes on Tue 15 Dec needs 250 g of it.']
 */
export function leftoverText(
  { leftover }: Pick<ShoppingItem, 'leftover'>,
  units: ShelfUnits,
): readonly string[] {
  if (leftover === null) return [];
  const { mg, lastDay, uses } = leftover;
  const until = lastDay === null ? '' : `, use by ${printDay(lastDay)}`;
  return [
    `Left over: ${shelfAmount(mg, units)}${until}.`,
    ...uses.map(({ segment, date, mg: need }) => {
      const on = date === null ? '' : ` on ${printDay(date)}`;
      return `${segment}${on} needs ${shelfAmount(need, units)} of it.`;
    }),
  ];
}
