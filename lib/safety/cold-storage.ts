import { COLD_STORAGE_CHART, type Source } from '#lib/safety/caution';

/** A length of storage as published; null where the chart says not to. */
export interface Keeps {
  readonly least: number;
  readonly most: number;
  readonly unit: 'days' | 'weeks' | 'months';
}

/** How long a food keeps at 40 °F (4 °C) and at 0 °F (−18 °C). */
export interface ColdStorage {
  readonly id: string;
  readonly name: string;
  readonly refrigerator: Keeps;
  readonly freezer: Keeps | null;
  readonly source: Source;
}

const days = (least: number, most = least): Keeps => ({ least, most, unit: 'days' });
const weeks = (least: number, most = least): Keeps => ({ least, most, unit: 'weeks' });
const months = (least: number, most = least): Keeps => ({ least, most, unit: 'months' });

function row(id: string, name: string, refrigerator: Keeps, freezer: Keeps | null): ColdStorage {
  return { id, name, refrigerator, freezer, source: COLD_STORAGE_CHART };
}

/** Cold storage times (FoodSafety.gov, Cold Food Storage Chart). */
export const COLD_STORAGE: readonly ColdStorage[] = [
  row('rawGround', 'raw ground meat and poultry', days(1, 2), months(3, 4)),
  row('rawPoultryWhole', 'raw poultry, whole', days(1, 2), months(12)),
  row('rawPoultryPieces', 'raw poultry, pieces', days(1, 2), months(9)),
  row('steaks', 'raw steaks', days(3, 5), months(6, 12)),
  row('chops', 'raw chops', days(3, 5), months(4, 6)),
  row('roasts', 'raw roasts', days(3, 5), months(4, 12)),
  row('bacon', 'bacon', days(7), months(1)),
  row('rawSausage', 'raw sausage', days(1, 2), months(1, 2)),
  row('cookedMeat', 'cooked meat or poultry', days(3, 4), months(2, 6)),
  row('pizza', 'pizza', days(3, 4), months(1, 2)),
  row('soups', 'soups and stews', days(3, 4), months(2, 3)),
  row('casseroles', 'casseroles', days(3, 4), months(4, 6)),
  row('saladsWithEgg', 'egg, chicken and tuna salads', days(3, 5), null),
  row('eggsInShell', 'eggs in shell', weeks(3, 5), null),
  row('eggsHardCooked', 'eggs, hard-cooked', weeks(1), null),
  row('rawWhitesYolks', 'raw egg whites and yolks', days(2, 4), months(12)),
  row('lunchMeatOpened', 'lunch meat, opened', days(3, 5), months(1, 2)),
  row('lunchMeatUnopened', 'lunch meat, unopened', weeks(2), months(1, 2)),
];

/**
 * The last date by which a food should be used, counting full days from the date it was bought or
 * cooked; the chart's upper end. A month that lacks the day ends on its last one.
 *
 * @example useBy('2026-03-02', days 1–2) → "2026-03-04"; useBy('2026-01-31', 1 month) → "2026-02-28"
 */
export function useBy(fromDate: string, keeps: Keeps): string {
  const from = new Date(`${fromDate}T00:00:00Z`);
  if (keeps.unit === 'months') {
    const day = from.getUTCDate();
    from.setUTCMonth(from.getUTCMonth() + keeps.most);
    if (from.getUTCDate() !== day) from.setUTCDate(0);
  } else {
    from.setUTCDate(from.getUTCDate() + keeps.most * (keeps.unit === 'weeks' ? 7 : 1));
  }
  return from.toISOString().slice(0, 10);
}
