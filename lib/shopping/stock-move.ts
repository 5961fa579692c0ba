import { failed, ok, type Result } from '#lib/result';
import type { StockLot } from '#lib/episode/stock-schema';
import { lotMg } from '#lib/shopping/shopping-list';
import { printGrams } from '#lib/units/print';

export type MoveKind = StockLot['moves'][number]['kind'];

export const MOVE_WORDS: Readonly<Record<MoveKind, string>> = {
  bought: 'bought',
  counted: 'counted',
  used: 'used',
  thrownAway: 'thrown away',
};

/**
 * What a move changes in a lot, in milligrams: bought adds, used and thrown away take, counted sets right
 * what is there. No more can be taken than is there; then the lot has to be counted first.
 * `moveDelta(lot of 500 g, 'counted', 420_000)` → −80,000.
 */
export function moveDelta(
  lot: Pick<StockLot, 'moves'>,
  kind: MoveKind,
  mg: number,
): Result<number> {
  const there = lotMg({ ...EMPTY_LOT, moves: lot.moves });
  if (kind === 'bought') return ok(mg);
  if (kind === 'counted') return ok(mg - there);
  if (mg <= there) return ok(-mg);
  return failed({
    path: 'grams',
    code: 'more-than-there',
    message: `${printGrams(mg)} g is ${printGrams(mg - there)} g more than is there, ${printGrams(there)} g: count it first.`,
    facts: { mg, there },
  });
}

const EMPTY_LOT: StockLot = {
  id: 'lot',
  foodId: 'food',
  place: '',
  openedOn: null,
  useBy: null,
  moves: [],
};

/** A change in words with its sign: `signedGrams(-80_000)` → `'−80 g'`. */
export function signedGrams(mg: number): string {
  const sign = mg > 0 ? '+' : mg < 0 ? '−' : '';
  return `${sign}${printGrams(Math.abs(mg))} g`;
}
