import type { StockLot, PantryFood } from '#lib/episode/stock-schema';
import type { Food } from '#lib/foods/food';
import { sourceText } from '#lib/safety/caution';
import { useBy as lastDay } from '#lib/safety/cold-storage';
import { keepsInFridge } from '#lib/safety/keeps-in-fridge';
import { printGrams } from '#lib/units/print';

/** What a lot holds: the sum of its moves in milligrams. */
export function lotMg(lot: Pick<StockLot, 'moves'>): number {
  return lot.moves.reduce((sum, move) => sum + move.deltaMg, 0);
}

/** The last day on which a lot is used, and why that day. */
export interface LastDay {
  readonly on: string;
  readonly why: string;
}

/**
 * Until when a lot is good: its use-by, or the end of its storage in the refrigerator if that comes before. The days
 * of storage are the person's own for the food, else those of the published chart; they count from the opening, and
 * where no use-by is known from the day it was bought. What lies in the freezer has its use-by only.
 * @returns null where nothing limits it
 */
export function lotLastDay(
  lot: StockLot,
  food: Food,
  opened: PantryFood['opened'] = null,
): LastDay | null {
  const stored = /freez|frozen/i.test(lot.place) ? null : storageEnd(lot, food, opened);
  const useBy = lot.useBy === null ? null : { on: lot.useBy, why: `use by ${lot.useBy}` };
  if (!stored || !useBy) return stored ?? useBy;
  return stored.on < useBy.on ? stored : useBy;
}

function storageEnd(lot: StockLot, food: Food, opened: PantryFood['opened']): LastDay | null {
  const { openedOn } = lot;
  if (opened) {
    if (openedOn === null) return null;
    const on = lastDay(openedOn, { least: opened.days, most: opened.days, unit: 'days' });
    const source = opened.source === '' ? 'as you said' : opened.source;
    return { on, why: `opened ${openedOn}, keeps ${opened.days} days (${source}), until ${on}` };
  }
  const chart = keepsInFridge(food);
  if (!chart) return null;
  const bought = lot.moves.find(({ kind }) => kind === 'bought')?.at.slice(0, 10) ?? null;
  const from = openedOn ?? (lot.useBy === null ? bought : null);
  if (from === null) return null;
  const { least, most, unit } = chart.refrigerator;
  const on = lastDay(from, chart.refrigerator);
  const keeps = least === most ? `${most} ${unit}` : `${least} to ${most} ${unit}`;
  const since = openedOn === null ? 'bought' : 'opened';
  return {
    on,
    why: `${since} ${from}, ${chart.name}: ${keeps} in the refrigerator (${sourceText(chart.source)}), until ${on}`,
  };
}

/** A lot that counts: what it holds and until when. */
export interface CountedLot {
  readonly lotId: string;
  readonly place: string;
  readonly mg: number;
  readonly lastDay: string | null;
}

/** A need of a food on a day; null where nobody knows which day. */
export interface DatedNeed {
  readonly date: string | null;
  readonly mg: number;
}

export interface CountedStock {
  /** Lots that count on the first of the days, in the order in which they are used. */
  readonly lots: readonly CountedLot[];
  readonly stockMg: number;
  /** Of the needs, what the lots cover: each need by what is good on its day. */
  readonly coveredMg: number;
  /** What is left of lots that are still good on the last of the days. */
  readonly leftMg: number;
  /** Lots that do not count, each with the reason. */
  readonly notCounted: readonly string[];
}

/**
 * What of the needs is in the kitchen. Needs are met in the order of their days, each from the lots that are good on
 * that day, nearest last day first: no other order covers more, since a lot that is good later is good before.
 */
export function countStock(
  food: Food,
  stock: readonly StockLot[],
  needs: readonly DatedNeed[],
  opened: PantryFood['opened'] = null,
): CountedStock {
  const lots = inOrderOfUse(stock, food, opened);
  const dates = needs.flatMap(({ date }) => date ?? []).sort();
  const first = dates[0] ?? null;
  const left = new Map(lots.map(({ lot, mg }) => [lot.id, mg]));
  let coveredMg = 0;
  for (const { date, mg } of [...needs].sort(byDate)) {
    let open = mg;
    for (const { lot, last } of lots) {
      if (open <= 0 || !isGood(last, date)) continue;
      const used = Math.min(open, left.get(lot.id) ?? 0);
      left.set(lot.id, (left.get(lot.id) ?? 0) - used);
      open -= used;
      coveredMg += used;
    }
  }
  const counted = lots.filter(({ last, mg }) => mg > 0 && isGood(last, first));
  const last = dates.at(-1) ?? null;
  return {
    lots: counted.map(({ lot, mg, last: day }) => ({
      lotId: lot.id,
      place: lot.place,
      mg,
      lastDay: day?.on ?? null,
    })),
    stockMg: counted.reduce((sum, { mg }) => sum + mg, 0),
    coveredMg,
    leftMg: lots
      .filter(({ last: day }) => isGood(day, last))
      .reduce((sum, { lot }) => sum + (left.get(lot.id) ?? 0), 0),
    notCounted: lots
      .filter(({ last: day, mg }) => mg > 0 && !isGood(day, last))
      .map(({ lot, mg, last: day }) => {
        const what = `${printGrams(mg)} g, ${lot.place || 'stock'}: ${day?.why ?? ''}`;
        return `${what}, before the filming day${isGood(day, first) ? ` ${last ?? ''}` : ''}`;
      }),
  };
}

/** Lots of one food in the order in which they are used: nearest last day first, opened before closed, then by id. */
export function inOrderOfUse(
  stock: readonly StockLot[],
  food: Food,
  opened: PantryFood['opened'] = null,
) {
  return stock
    .filter(({ foodId }) => foodId === food.id)
    .map((lot) => ({ lot, mg: Math.max(0, lotMg(lot)), last: lotLastDay(lot, food, opened) }))
    .sort(
      (a, b) =>
        compare(a.last?.on ?? '9999', b.last?.on ?? '9999') ||
        compare(a.lot.openedOn ?? '9999', b.lot.openedOn ?? '9999') ||
        compare(a.lot.id, b.lot.id),
    );
}

function isGood(last: LastDay | null, date: string | null): boolean {
  return last === null || date === null || last.on >= date;
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
const byDate = (a: DatedNeed, b: DatedNeed) => compare(a.date ?? '', b.date ?? '');
