import type { Product } from '#lib/figures/compiled/summand';

/** Whether two sums have the same arrangement: the same foods and sources in the same order, whatever the numbers. */
export function areAlike(a: readonly Product[], b: readonly Product[]): boolean {
  if (a.length !== b.length) return false;
  for (let place = 0; place < a.length; place += 1) {
    if (!isAlike(a[place], b[place])) return false;
  }
  return true;
}

function isAlike(a: Product | undefined, b: Product | undefined): boolean {
  if (a === b) return true;
  if (!a || !b || a.of !== b.of || a.sign !== b.sign) return false;
  const [first, second] = [a.factor, b.factor];
  if (first === second) return true;
  return (
    first.none === second.none &&
    areEqual(first.ids, second.ids) &&
    first.pairs.length === second.pairs.length &&
    first.pairs.every(
      (pair, place) => second.pairs[place]?.a === pair.a && second.pairs[place]?.b === pair.b,
    )
  );
}

/** Whether two lists have the same items in the same order. */
export function areEqual<T>(a: ArrayLike<T>, b: ArrayLike<T>): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let place = 0; place < a.length; place += 1) if (a[place] !== b[place]) return false;
  return true;
}
