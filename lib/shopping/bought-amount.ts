import type { Food } from '#lib/foods/food';
import type { AmountContext } from '#lib/episode/context';
import { meanYield, statesMatch } from '#lib/episode/eaten-amount';
import { writtenAmount } from '#lib/episode/line-amount';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { boughtRefuse } from '#lib/shopping/bought-refuse';
import { evaluate, type Term } from '#lib/units/sum-of-products';

/** How much of a food an ingredient makes one buy, once through the recipe. */
export interface BoughtAmount {
  readonly mg: number | null;
  /** Where only a volume is known. */
  readonly ml: number | null;
  /** Whether peel, ends or shell are bought on top of what is used. */
  readonly isMore: boolean;
}

/**
 * Grams to buy for an ingredient as planned: edible grams over refuse where the food is bought with peel, ends or shell,
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
    return written.volumeMl ? { mg: null, ml: valueOf(written.volumeMl), isMore: false } : null;
  }
  const mg = rawAmount(valueOf(written.massMg), line, food);
  if (mg === null) return null;
  const edible = 1 - boughtRefuse(line, food) / 100;
  const withPeel = line.asBought && !written.edible;
  return { mg: withPeel ? mg : mg / edible, ml: null, isMore: !withPeel && edible < 1 };
}

/** Shops sell raw and dry: a cooked amount is turned back by the food's yield, a raw one stands. */
function rawAmount(mg: number, line: RecipeLine, food: Food): number | null {
  if (line.state !== 'cooked') return mg;
  const share = meanYield(food);
  if (share !== null) return mg / share;
  return statesMatch(line.state, food.version.state) ? mg : null;
}
