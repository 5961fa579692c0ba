import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { StockLot, PantryFood } from '#lib/episode/stock-schema';
import type { Food } from '#lib/foods/food';
import { boughtRefuse } from '#lib/shopping/bought-refuse';
import { inOrderOfUse } from '#lib/shopping/counted-stock';

/** What is taken out of a lot, in milligrams. */
export interface LotTake {
  readonly lotId: string;
  readonly mg: number;
}

export interface Taken {
  readonly takes: readonly LotTake[];
  /** What the lots lacked; a lot is never taken below nothing. */
  readonly shortMg: number;
}

/**
 * Takes an amount out of a food's lots, nearest last day first; those past it on the day are left, since nobody cooks
 * with them.
 * @example 500 g of lots with 300 g until the 7th and 400 g until the 9th: 300 g and 200 g
 */
export function takeFromLots(
  food: Food,
  stock: readonly StockLot[],
  mg: number,
  on: string,
  opened: PantryFood['opened'] = null,
): Taken {
  let shortMg = mg;
  const takes: LotTake[] = [];
  for (const { lot, mg: there, last } of inOrderOfUse(stock, food, opened)) {
    const taken = Math.min(there, shortMg);
    if (taken <= 0 || (last !== null && last.on < on)) continue;
    takes.push({ lotId: lot.id, mg: taken });
    shortMg -= taken;
  }
  return { takes, shortMg };
}

/**
 * What a raw reading of an ingredient takes off the shelf, in whole milligrams: with its peel, shell or ends where only
 * the rest was weighed.
 * @example 380 g of zucchini, weighed without its ends (5 %): 400 g
 */
export function offTheShelf(
  mg: number,
  line: Pick<RecipeLine, 'asBought' | 'text' | 'note'>,
  food: Food,
): number {
  const edible = 1 - boughtRefuse(line, food) / 100;
  return Math.round(line.asBought ? mg : mg / edible);
}
