import { standingOf, type ListState } from '#lib/shopping/fold-list';
import type { TakenPacks } from '#lib/shopping/list-events';
import type { Cost, ShoppingItem } from '#lib/shopping/list-types';
import { shelfAmount } from '#lib/shopping/shelf-amount';
import type { ShelfUnits } from '#lib/episode/stock-schema';
import { priceText } from '#lib/units/print-money';

/** How a food of the list stands on this device, in the shop. */
export type RowStanding = 'open' | 'inBasket' | 'instead' | 'putAway';

/**
 * How a food stands, beside a list that was made when some goods had been put away: what is to be bought after that is
 * bought once more.
 * @param atList entries whose goods had been put away when the list was made
 */
export function rowStanding(
  state: ListState,
  foodId: string,
  atList: readonly string[],
): RowStanding {
  const standing = standingOf(state, foodId);
  const latest = state.basket[foodId];
  return standing === 'putAway' && latest && atList.includes(latest.id) ? 'open' : standing;
}

/** How far the shopping is. */
export interface BasketCount {
  readonly done: number;
  readonly all: number;
}

/** `basketCount(items, state, [])` → `{ done: 4, all: 21 }`: of what is to be bought, what is taken or put away. */
export function basketCount(
  items: readonly Pick<ShoppingItem, 'foodId'>[],
  state: ListState,
  atList: readonly string[],
): BasketCount {
  const done = items.filter(({ foodId }) => rowStanding(state, foodId, atList) !== 'open').length;
  return { done, all: items.length };
}

/** What of a list was paid, and where and when, the latest word of each. */
export interface PaidRow {
  readonly shopId: string | null;
  readonly foodId: string | null;
  readonly minor: number;
  readonly currency: string;
  readonly on: string;
}

/** What was paid, by date, then shop and food; what was taken back is left out. */
export function paidRows(state: ListState): readonly PaidRow[] {
  const rows = Object.values(state.paid).flatMap(({ foodId, payload }): PaidRow[] => {
    const { shopId, minor, currency, on } = payload;
    return minor === null ? [] : [{ shopId, foodId, minor, currency, on }];
  });
  const key = ({ on, shopId, foodId }: PaidRow) => `${on} ${shopId ?? ''} ${foodId ?? ''}`;
  return rows.sort((a, b) => (key(a) < key(b) ? -1 : 1));
}

/** The sums of what was paid, one for each currency: `'USD 61.15'`; null where nothing was. */
export function paidText(rows: readonly PaidRow[]): string | null {
  const sums = new Map<string, number>();
  for (const { minor, currency } of rows) sums.set(currency, (sums.get(currency) ?? 0) + minor);
  if (sums.size === 0) return null;
  return [...sums].map(([currency, minor]) => priceText(minor, currency)).join(' + ');
}

/** What was paid beside what was foreseen: `'USD 1.20 more than foreseen'`; null where they cannot be compared. */
export function paidBesideCost(rows: readonly PaidRow[], cost: Cost | null): string | null {
  if (cost === null || rows.length === 0) return null;
  if (rows.some(({ currency }) => currency !== cost.currency)) return null;
  const more = rows.reduce((sum, { minor }) => sum + minor, 0) - cost.minor;
  const foreseen = cost.atLeast ? 'the prices that were known' : 'foreseen';
  if (more === 0) return `just what was ${cost.atLeast ? 'known' : 'foreseen'}`;
  return `${priceText(Math.abs(more), cost.currency)} ${more > 0 ? 'more' : 'less'} than ${foreseen}`;
}

/** What lies in the basket, in words: `'900 g'`; null where nobody said how much. */
export function takenText(packs: readonly TakenPacks[], units: ShelfUnits): string | null {
  const known = packs.flatMap(({ mg }) => (mg === null ? [] : [mg]));
  if (known.length < packs.length || known.length === 0) return null;
  return shelfAmount(
    known.reduce((sum, mg) => sum + mg, 0),
    units,
  );
}
