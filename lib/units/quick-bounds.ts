import { boundsOf, type Bounds } from '#lib/units/bounds';
import { compiledBounds, compileSum } from '#lib/units/compiled-sum';
import type { Sources, Term } from '#lib/units/sum-of-products';

/**
 * The bounds of `boundsOf`, to the last bit: by a compiled sum where every source is an input, by terms where one is
 * itself a sum.
 * @example quickBounds([source('a')], new Map([['a', plusMinus(10, 1)]])) // value 10, low 9, high 11
 */
export function quickBounds(terms: readonly Term[], sources: Sources): Bounds {
  const sum = compileSum(terms, sources);
  return sum.intervals.some(({ of }) => of) ? boundsOf(terms, sources) : compiledBounds(sum);
}
