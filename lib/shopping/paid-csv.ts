import type { PaidRow } from '#lib/shopping/basket';
import { csvText } from '#lib/units/csv';
import { minorText } from '#lib/units/print-money';

/**
 * What was paid as a table for other programs, see `csvText`: date, shop, food (empty for all of a receipt), amount,
 * currency, and the list that it was paid for.
 * @param names of shops and foods by id
 */
export function paidCsv(
  rows: readonly PaidRow[],
  list: string,
  names: ReadonlyMap<string, string>,
): string {
  const nameOf = (id: string | null) => (id === null ? '' : (names.get(id) ?? id));
  return csvText(
    ['date', 'shop', 'food', 'paid', 'currency', 'for'],
    rows.map(({ on, shopId, foodId, minor, currency }) => [
      on,
      nameOf(shopId),
      nameOf(foodId),
      minorText(minor, currency),
      currency,
      list,
    ]),
  );
}
