import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileFactor } from '#lib/units/compiled-factor';
import type { Factor } from '#lib/units/factor';
import type { Interval } from '#lib/units/interval';
import { plusMinus } from '#lib/units/interval';
import { scale, source, type Term } from '#lib/units/sum-of-products';

const IDS = ['a', 'b', 'c', 'd', 'e'];

/** A product of sources that differ, the first multiplied and the others divisors; divisors are above zero. */
const product = fc
  .record({
    coefficient: fc.integer({ min: 1, max: 900 }),
    order: fc.shuffledSubarray(IDS),
    times: fc.nat(IDS.length),
    numbers: fc.array(fc.tuple(fc.nat(9000), fc.nat(400), fc.nat(400)), {
      minLength: IDS.length,
      maxLength: IDS.length,
    }),
  })
  .map(({ coefficient, order, times, numbers }) => {
    const term: Term = { coefficient, up: order.slice(0, times), down: order.slice(times) };
    const sources = new Map(
      IDS.map((id, at) => {
        const [size = 0, width = 0, place = 0] = numbers[at] ?? [];
        const low = (term.down.includes(id) ? size + 1 : size) / 7;
        const [value, high] = [low + Math.min(width, place) / 7, low + width / 7];
        return [id, { low, value, high } satisfies Interval] as const;
      }),
    );
    return { term, sources };
  });

/** Which two sources meet in each pair, in an order of their own, with the derivative that the row has for them. */
function pairsOf({ ids, pairs, numbers }: Factor): readonly (readonly [string, number])[] {
  const from = numbers.length - pairs.length;
  return pairs
    .map(({ a, b }, at) => {
      const both = [ids[a] ?? '', ids[b] ?? ''].sort().join();
      return [both, numbers[from + at] ?? NaN] as const;
    })
    .sort(([a], [b]) => (a < b ? -1 : 1));
}

describe('a factor', () => {
  it('that is one product has the numbers of the same product in two halves, which is a sum', () => {
    fc.assert(
      fc.property(product, ({ term, sources }) => {
        const one = compileFactor([term], sources);
        const halves = compileFactor([...scale([term], 1 / 2), ...scale([term], 1 / 2)], sources);
        if (!one || !halves) throw new Error('products of what is not negative are factors');
        expect({ ids: one.ids, rises: one.rises }).toEqual({
          ids: halves.ids,
          rises: halves.rises,
        });
        const [mine, theirs] = [pairsOf(one), pairsOf(halves)];
        expect(mine.map(([both]) => both)).toEqual(theirs.map(([both]) => both));
        const rows = [one, halves].map((factor, which) => [
          // A sum has no coefficient and no number of sources of its own.
          ...factor.numbers.slice(0, 5),
          ...factor.numbers.slice(7, factor.numbers.length - factor.pairs.length),
          ...(which === 0 ? mine : theirs).map(([, slope]) => slope),
        ]);
        rows[0]?.forEach((number, at) => {
          const other = rows[1]?.[at] ?? NaN;
          expect(Math.abs(number - other)).toBeLessThanOrEqual(1e-12 * Math.abs(other));
        });
        expect(rows[0]?.length).toBe(rows[1]?.length);
      }),
    );
  });

  it('of grams per gram: 100 ± 1 divided by 4 ± 1, by hand', () => {
    const sources = new Map([
      ['w', plusMinus(100, 1)],
      ['d', plusMinus(4, 1)],
    ]);
    const factor = compileFactor([{ coefficient: 2, up: ['w'], down: ['d'] }], sources);
    // Value 2 · 100 / 4; least 2 · 99 / 5, most 2 · 101 / 3.
    const [value, low, high] = factor?.numbers ?? [];
    expect([value, low, high]).toEqual([50, 39.6, 202 / 3]);
    expect(factor?.rises).toEqual([true, false]);
  });

  it('is none where it may be negative', () => {
    expect(compileFactor([source('a', -2)], new Map([['a', plusMinus(3, 1)]]))).toBeNull();
  });
});
