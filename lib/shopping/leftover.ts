import type { PantryFood } from '#lib/episode/stock-schema';
import type { Food } from '#lib/foods/food';
import { sourceText } from '#lib/safety/caution';
import { useBy as lastDayOf } from '#lib/safety/cold-storage';
import { keepsInFridge } from '#lib/safety/keeps-in-fridge';
import type { CountedLot } from '#lib/shopping/counted-stock';
import type { LaterUse } from '#lib/shopping/list-types';

/** Until when what is left of a food is used, and why. */
export interface Keeping {
  readonly lastDay: string | null;
  readonly why: string | null;
}

/**
 * Until when the rest of a food is used that was opened on the filming day: by the person's own number of days, else by
 * the chart; unknown where neither says. A rest of what was bought whole is taken for opened: it keeps no shorter.
 */
export function restKeeps(
  food: Food,
  filmedOn: string | null,
  opened: PantryFood['opened'] = null,
): Keeping {
  if (filmedOn === null) return { lastDay: null, why: null };
  if (opened) {
    const { days, source } = opened;
    const lastDay = lastDayOf(filmedOn, { least: days, most: days, unit: 'days' });
    return { lastDay, why: `keeps ${days} days opened (${source || 'as you said'})` };
  }
  const chart = keepsInFridge(food);
  if (!chart) return { lastDay: null, why: null };
  return { lastDay: lastDayOf(filmedOn, chart.refrigerator), why: sourceText(chart.source) };
}

/** The earlier of two last days: of a rest that was in stock, its lot's own last day counts too. */
export function earlierOf(keeping: Keeping, lots: readonly CountedLot[]): Keeping {
  const last = lots.at(-1)?.lastDay ?? null;
  if (last === null || (keeping.lastDay !== null && keeping.lastDay <= last)) return keeping;
  return { lastDay: last, why: 'the last day of what is in stock' };
}

/** The planned uses that a rest still serves: those up to its last day; all where nobody knows how long it keeps. */
export function usesWithin(uses: readonly LaterUse[], lastDay: string | null): readonly LaterUse[] {
  if (lastDay === null) return uses;
  return uses.filter(({ date }) => date !== null && date <= lastDay);
}
