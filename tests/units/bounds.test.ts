import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundsOf } from '#lib/units/bounds';
import { plusMinus, type Interval } from '#lib/units/interval';
import {
  divideBySource,
  evaluate,
  multiply,
  source,
  sourceIds,
  type Term,
} from '#lib/units/sum-of-products';

/** A dish of random lines, some sharing their label, some sharing one weighing. */
const dish = fc.record({
  masses: fc.array(fc.integer({ min: 1, max: 500 }), { minLength: 1, maxLength: 4 }),
  foods: fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 1, maxLength: 3 }),
  lines: fc.array(fc.tuple(fc.nat(3), fc.nat(2)), { minLength: 1, maxLength: 8 }),
  seed: fc.integer({ min: 1, max: 2 ** 31 - 2 }),
});

function build(of: { masses: number[]; foods: number[]; lines: [number, number][] }) {
  const sources = new Map<string, Interval>();
  of.masses.forEach((mass, index) => sources.set(`m${index}`, plusMinus(mass, 0.5)));
  of.foods.forEach((food, index) => sources.set(`f${index}`, plusMinus(food / 100, 0.05)));
  const terms: Term[] = of.lines.flatMap(([mass, food]) =>
    multiply([source(`m${mass % of.masses.length}`)], [source(`f${food % of.foods.length}`)]),
  );
  return { terms, sources };
}

/** Park and Miller's minimal standard generator, so that a failure can be repeated. */
function uniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

function draw(
  terms: readonly Term[],
  sources: ReadonlyMap<string, Interval>,
  random: () => number,
) {
  const at = new Map(
    sourceIds(terms).map((id) => {
      const { low, high } = sources.get(id) ?? { low: 0, high: 0 };
      return [id, low + random() * (high - low)];
    }),
  );
  return evaluate(terms, at);
}

describe('bounds', () => {
  it('hold every true sum, however sources are shared', () => {
    fc.assert(
      fc.property(dish, (of) => {
        const { terms, sources } = build(of);
        const bounds = boundsOf(terms, sources);
        const random = uniform(of.seed);
        for (let run = 0; run < 20; run += 1) {
          const truth = draw(terms, sources, random);
          expect(truth).toBeGreaterThanOrEqual(bounds.low);
          expect(truth).toBeLessThanOrEqual(bounds.high);
        }
      }),
    );
  });

  it('lie in order: low ≤ likely low ≤ value ≤ likely high ≤ high', () => {
    fc.assert(
      fc.property(dish, (of) => {
        const { terms, sources } = build(of);
        const { low, likelyLow, value, likelyHigh, high } = boundsOf(terms, sources);
        const order = [low, likelyLow, value, likelyHigh, high];
        expect([...order].sort((a, b) => a - b)).toEqual(order);
      }),
    );
  });

  // JCGM 100:2008, 4.3.7 and 5.1 (from memory): rectangular errors, coverage factor 2.
  it('hold the truth likely 95 times in 100, with one label in six lines and one reading in two', () => {
    const sources = new Map<string, Interval>([
      ['label', plusMinus(12, 0.5)],
      ['pot', plusMinus(300, 1)],
      ...[1, 2, 3, 4, 5, 6].map((n): [string, Interval] => [`m${n}`, plusMinus(20 * n, 0.5)]),
    ]);
    const terms = [
      ...[1, 2, 3, 4, 5, 6].flatMap((n) => multiply([source(`m${n}`)], [source('label')])),
      ...multiply([source('pot', 0.5)], [source('label')]),
      ...multiply([source('pot', 0.5)], [source('m6', 0.01)]),
    ];
    const bounds = boundsOf(terms, sources);
    const random = uniform(20261125);
    const runs = 20_000;
    let inside = 0;
    for (let run = 0; run < runs; run += 1) {
      const truth = draw(terms, sources, random);
      if (truth >= bounds.likelyLow && truth <= bounds.likelyHigh) inside += 1;
    }
    expect(inside / runs).toBeGreaterThanOrEqual(0.95);
    // Had the six uses of the label been taken as independent, fewer than 95 % would be inside.
    const apart = Math.sqrt(
      [1, 2, 3, 4, 5, 6].reduce((sum, n) => sum + (20 * n * 0.5) ** 2 / 3, 0),
    );
    expect(bounds.likelyHigh - bounds.value).toBeGreaterThan(2 * apart * 1.5);
  });

  it('takes a shared weight out of a ratio exactly: n servings of a label per its own serving', () => {
    const sources = new Map([
      ['serving', plusMinus(170, 0.5)],
      ['declared', plusMinus(17, 0.5)],
    ]);
    const grams = [source('serving', 2)];
    const protein = divideBySource(multiply(grams, [source('declared')]), 'serving');
    const bounds = boundsOf(protein, sources);
    expect(bounds.value).toBe(34);
    expect(bounds.low).toBeCloseTo(33, 9);
    expect(bounds.high).toBeCloseTo(35, 9);
  });

  it('lets a difference lose the errors that its sides share', () => {
    const sources = new Map([['a', plusMinus(100, 5)]]);
    const bounds = boundsOf([source('a', 3), source('a', -2)], sources);
    expect(bounds.high - bounds.low).toBeCloseTo(10, 6);
  });

  it('throws on a source that nobody gave an interval', () => {
    expect(() => boundsOf([source('nobody')], new Map())).toThrow('nobody');
  });
});
