import type { Parts } from '#lib/figures/parts';
import type { Interval } from '#lib/units/interval';
import type { Sources, Term } from '#lib/units/sum-of-products';

/**
 * Parts whose sources bear another name wherever the other side has one of that name in another range: an amount that
 * was changed is another reading, not the same one read otherwise. Sources in the same range stay one error.
 * @example amount:oil is 30 to 31 g before and 20 to 21 g after: after, it is amount:oil~
 */
export function renamedApart(parts: Parts, others: Sources): Parts {
  const apart = new Set<string>();
  for (const [id, interval] of parts.sources) {
    const other = others.get(id);
    if (other && !sameRange(interval, other)) apart.add(id);
  }
  // What a sum of sources rests on may be apart as well; then so is the sum.
  for (let before = -1; before !== apart.size;) {
    before = apart.size;
    for (const [id, { of }] of parts.sources) {
      const rests = of?.some(({ up, down }) => [...up, ...down].some((each) => apart.has(each)));
      if (rests) apart.add(id);
    }
  }
  if (apart.size === 0) return parts;
  const name = (id: string) => (apart.has(id) ? `${id}~` : id);
  const renamed = (terms: readonly Term[]): Term[] =>
    terms.map(({ coefficient, up, down }) => ({
      coefficient,
      up: up.map(name).sort(),
      down: down.map(name).sort(),
    }));
  return {
    ...parts,
    terms: renamed(parts.terms),
    sources: new Map(
      [...parts.sources].map(([id, interval]): [string, Interval] => [
        name(id),
        interval.of ? { ...interval, of: renamed(interval.of) } : interval,
      ]),
    ),
  };
}

function sameRange(a: Interval, b: Interval): boolean {
  const alike = a.low === b.low && a.value === b.value && a.high === b.high;
  return alike && JSON.stringify(a.of ?? null) === JSON.stringify(b.of ?? null);
}
