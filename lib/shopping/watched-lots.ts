import { addDays } from 'date-fns/addDays';
import { format } from 'date-fns/format';
import { parseISO } from 'date-fns/parseISO';
import type { StockLot, PantryFood } from '#lib/episode/stock-schema';
import type { Food } from '#lib/foods/food';
import { inOrderOfUse, type LastDay } from '#lib/shopping/counted-stock';

/** A food with its lots, and how long it keeps once opened where the person said so. */
export interface StockedFood {
  readonly food: Food;
  readonly lots: readonly StockLot[];
  readonly opened: PantryFood['opened'];
}

/** A lot whose last day is near or past. */
export interface WatchedLot {
  readonly food: Food;
  readonly lot: StockLot;
  readonly mg: number;
  readonly last: LastDay;
  /** It does not count any more today. */
  readonly past: boolean;
}

/**
 * The lots with something left that are past their last day or come to it by a day, the first one first.
 * @param today in the kitchen
 * @param until the last day that is looked at
 * @example watchedLots([turkey], '2026-12-12', '2026-12-19')[0].last.why // 'opened 2026-12-10, raw ground meat …'
 */
export function watchedLots(
  foods: readonly StockedFood[],
  today: string,
  until: string,
): readonly WatchedLot[] {
  const found = foods.flatMap(({ food, lots, opened }) =>
    inOrderOfUse(lots, food, opened).flatMap(({ lot, mg, last }) =>
      mg > 0 && last !== null && last.on <= until
        ? [{ food, lot, mg, last, past: last.on < today }]
        : [],
    ),
  );
  return found.sort((a, b) =>
    a.last.on === b.last.on ? (a.lot.id < b.lot.id ? -1 : 1) : a.last.on < b.last.on ? -1 : 1,
  );
}

/** Days that are looked ahead. */
const WEEK = 7;

/** The last day of the week that begins on a date. `aWeekOn('2026-11-29')` → `'2026-12-06'`. */
export function aWeekOn(today: string): string {
  return format(addDays(parseISO(today), WEEK), 'yyyy-MM-dd');
}
