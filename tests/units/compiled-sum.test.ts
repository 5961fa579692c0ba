import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundsOf } from '#lib/units/bounds';
import { compiledBounds, compileSum } from '#lib/units/compiled-sum';
import type { Interval } from '#lib/units/interval';
import { collect, constant, divideBySource, multiply, source } from '#lib/units/sum-of-products';
import type { Term } from '#lib/units/sum-of-products';

const IDS = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i', 'j', 'k'];

/** Intervals above zero, since some are divisors; some of them points. */
const intervals = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 9000 }), fc.nat(400), fc.nat(400)), {
    minLength: IDS.length,
    maxLength: IDS.length,
  })
  .map((all) => {
    const of = ([low, width, place]: [number, number, number]): Interval => ({
      low: low / 7,
      value: (low + Math.min(width, place)) / 7,
      high: (low + width) / 7,
    });
    return new Map(all.map((each, index) => [IDS[index] ?? '', of(each)] as const));
  });

const id = fc.constantFrom(...IDS);
const term: fc.Arbitrary<Term[]> = fc
  .record({
    coefficient: fc.integer({ min: -5, max: 9 }),
    up: fc.array(id, { maxLength: 3 }),
    down: fc.array(id, { maxLength: 2 }),
  })
  .map(({ coefficient, up, down }) => {
    const product = up.reduce<Term[]>(
      (all, each) => multiply(all, [source(each)]),
      [constant(coefficient)],
    );
    return down.reduce<Term[]>((all, each) => divideBySource(all, each), product);
  });
const sums = fc.array(term, { maxLength: 24 }).map((terms) => collect(terms.flat()));

describe('a compiled sum', () => {
  it('has the bounds of its terms, to the last bit', () => {
    fc.assert(
      fc.property(sums, intervals, (terms, sources) => {
        expect(compiledBounds(compileSum(terms, sources))).toEqual(boundsOf(terms, sources));
      }),
    );
  });

  it('asks for an interval of every source', () => {
    expect(() => compileSum([source('nobody')], new Map())).toThrow('nobody');
  });
});
