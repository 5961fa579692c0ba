import { productOf, type Product } from '#lib/figures/compiled/summand';
import { compileFactor } from '#lib/units/compiled-factor';
import type { Term } from '#lib/units/sum-of-products';

/**
 * Products without the terms that come to nothing together: where an amount is added as a whole and taken away
 * ingredient by ingredient, as of water in a dish within a dish, some terms of one are those of the other. By terms
 * they are collected and gone; here they stand in products of their own, and so do the sources that only they name.
 */
export function withoutCancelled(products: readonly Product[]): readonly Product[] {
  const gone = cancelledTerms(products);
  if (gone.size === 0) return products;
  return products.flatMap((product) => {
    const { amount, of, sign } = product;
    const terms = amount.terms.filter((term) => !gone.has(keyOf(term, of.only)));
    if (of.only === null || terms.length === amount.terms.length) return [product];
    if (terms.length === 0) return [];
    const factor = compileFactor(terms, amount.sources);
    // What is no factor without them stays as it was: the sum is the same.
    return [factor ? productOf({ ...amount, terms }, factor, of, sign) : product];
  });
}

/** Keys of the terms of amounts alone whose coefficients, with their signs, add up to nothing. */
function cancelledTerms(products: readonly Product[]): ReadonlySet<string> {
  const alone = products.filter(({ of }) => of.only !== null);
  if (!alone.some(({ sign }) => sign < 0)) return new Set();
  const sums = new Map<string, number>();
  for (const { amount, of, sign } of alone) {
    for (const term of amount.terms) {
      const key = keyOf(term, of.only);
      sums.set(key, (sums.get(key) ?? 0) + sign * term.coefficient);
    }
  }
  return new Set([...sums].flatMap(([key, sum]) => (sum === 0 ? [key] : [])));
}

const keyOf = ({ up, down }: Term, nutrient: number | null): string =>
  `${nutrient}:${up.join('|')}/${down.join('|')}`;
