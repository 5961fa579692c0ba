import type { Food } from '#lib/foods/food';
import type { AmountContext } from '#lib/episode/context';
import { statesMatch } from '#lib/episode/eaten-amount';
import { writtenAmount } from '#lib/episode/line-amount';
import type { RecipeLine } from '#lib/episode/schema';
import { evaluate, type Term } from '#lib/units/sum-of-products';

/** How much of a food an ingredient makes one buy, once through the recipe. */
export interface BoughtAmount {
  readonly mg: number | null;
  /** Where only a volume is known. */
  readonly ml: number | null;
}

/**
 * Grams to buy for an ingredient as planned: edible grams over refuse where the food has peel, ends or shell,
 * raw grams where the recipe gives cooked weight. What stays in the pan is bought all the same.
 * @returns null where neither grams nor a volume is known
 * @example 380 g of zucchini as used, 5 % ends: 400 g to buy
 */
export function boughtAmount(
  line: RecipeLine,
  food: Food,
  context: AmountContext,
): BoughtAmount | null {
  const written = writtenAmount(line, food, context);
  const valueOf = (terms: readonly Term[]) =>
    evaluate(terms, new Map([...written.sources].map(([id, { value }]) => [id, value])));
  if (!written.massMg) {
    return written.volumeMl ? { mg: null, ml: valueOf(written.volumeMl) } : null;
  }
  const inFoodState = toFoodState(valueOf(written.massMg), line, food);
  if (inFoodState === null) return null;
  const edible = 1 - (food.version.refuse?.percent ?? 0) / 100;
  return { mg: line.asBought ? inFoodState : inFoodState / edible, ml: null };
}

function toFoodState(mg: number, line: RecipeLine, food: Food): number | null {
  if (statesMatch(line.state, food.version.state)) return mg;
  const observed = food.yields[0];
  if (!observed) return null;
  const share = observed.cookedMg / observed.rawMg;
  const lineIsRaw = line.state === 'raw' || line.state === 'dry';
  return lineIsRaw ? mg * share : mg / share;
}
