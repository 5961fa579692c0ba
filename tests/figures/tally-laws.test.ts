import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tally, type TallyNode } from '#lib/figures/tally';
import { seeded } from '../shoot/seeded';

/** A number in hundredths, within so much of its value. */
function leaf(id: string, hundredths: number, half: number): TallyNode {
  const value = hundredths / 100;
  return {
    id,
    value,
    low: Math.max(0, value - half),
    high: value + half,
    fixed: null,
    children: [],
  };
}

function sum(id: string, children: readonly TallyNode[]): TallyNode {
  const of = (pick: (node: TallyNode) => number) =>
    children.reduce((total, node) => total + pick(node), 0);
  return {
    id,
    value: of(({ value }) => value),
    low: of(({ low }) => low),
    high: of(({ high }) => high),
    fixed: null,
    children,
  };
}

/** Day, dishes and unequal portions, some dishes uncut. */
const day = fc
  .record({
    dishes: fc.array(
      fc.array(fc.integer({ min: 0, max: 90_000 }), { minLength: 1, maxLength: 4 }),
      { minLength: 1, maxLength: 5 },
    ),
    half: fc.constantFrom(0.01, 0.2, 3),
  })
  .map(({ dishes, half }) =>
    sum(
      'day',
      dishes.map((portions, d) => {
        const parts = portions.map((each, p) => leaf(`d${d}p${p}`, each, half));
        const [only] = parts;
        return parts.length === 1 && only ? { ...only, id: `d${d}` } : sum(`d${d}`, parts);
      }),
    ),
  );

const flat = (node: TallyNode): TallyNode[] => [node, ...node.children.flatMap(flat)];
const printedOf = (root: TallyNode, step: number) => {
  const { numbers } = tally(root, step);
  return (id: string) => numbers.get(id)?.printed ?? NaN;
};

/** Σ |printed − value| below the root, to what arithmetic leaves of it. */
function change(root: TallyNode, step: number): number {
  const printed = printedOf(root, step);
  const misses = flat(root).map(({ id, value }) => Math.abs(printed(id) - value));
  return Math.round(misses.reduce((total, miss) => total + miss, 0) * 1e6) / 1e6;
}

function shuffled(node: TallyNode, seed: number): TallyNode {
  const { shuffle } = seeded(seed);
  const deep = (each: TallyNode): TallyNode => ({
    ...each,
    children: shuffle(each.children).map(deep),
  });
  return deep(node);
}

/** The tree with one of its numbers spoken. */
function spoken(node: TallyNode, id: string, amount: number): TallyNode {
  return {
    ...node,
    fixed: node.id === id ? amount : node.fixed,
    children: node.children.map((child) => spoken(child, id, amount)),
  };
}

describe('laws of the tally', () => {
  it('there is always a way: every number one of its two neighbours, every parent its children', () => {
    fc.assert(
      fc.property(day, fc.constantFrom(1, 5, 10), (root, step) => {
        const { addsUp, numbers, clashing } = tally(root, step);
        expect([addsUp, clashing]).toEqual([true, []]);
        for (const { id, value, children } of flat(root)) {
          const printed = numbers.get(id)?.printed ?? NaN;
          expect(Math.abs(printed % step)).toBeLessThan(1e-9);
          expect(Math.abs(printed - value)).toBeLessThan(step);
          if (children.length === 0) continue;
          const below = children.reduce(
            (all, each) => all + (numbers.get(each.id)?.printed ?? NaN),
            0,
          );
          expect(below).toBe(printed);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('the order of dishes and portions changes neither the day nor how much is changed', () => {
    fc.assert(
      fc.property(day, fc.nat(), fc.constantFrom(1, 5), (root, seed, step) => {
        const other = shuffled(root, seed);
        expect(printedOf(other, step)('day')).toBe(printedOf(root, step)('day'));
        expect(change(other, step)).toBe(change(root, step));
      }),
      { numRuns: 300 },
    );
  });

  it('one spoken number, said as either neighbour of its value, stands and all else gives way', () => {
    fc.assert(
      fc.property(day, fc.nat(), fc.boolean(), (root, pick, up) => {
        const all = flat(root);
        const said = all[pick % all.length] ?? root;
        // Adding 0 makes the −0 that Math.ceil gives for a trace above nothing a 0.
        const amount = (up ? Math.ceil(said.value - 1e-9) : Math.floor(said.value + 1e-9)) + 0;
        const { addsUp, numbers, clashing } = tally(spoken(root, said.id, amount), 1);
        expect([addsUp, clashing]).toEqual([true, []]);
        expect(numbers.get(said.id)?.printed).toBe(amount);
        for (const { id, value, children } of all) {
          const printed = numbers.get(id)?.printed ?? NaN;
          expect(Math.abs(printed - value)).toBeLessThan(1);
          if (children.length === 0) continue;
          expect(
            children.reduce((sums, each) => sums + (numbers.get(each.id)?.printed ?? NaN), 0),
          ).toBe(printed);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('where everything is said as it is printed nothing moves', () => {
    fc.assert(
      fc.property(day, (root) => {
        const printed = printedOf(root, 1);
        const all = flat(root).reduce((tree, { id }) => spoken(tree, id, printed(id)), root);
        const again = tally(all, 1);
        expect(again.addsUp).toBe(true);
        for (const { id } of flat(root)) expect(again.numbers.get(id)?.printed).toBe(printed(id));
      }),
    );
  });

  it('numbers that are whole already stay as they are', () => {
    const wholes = fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(wholes, (values) => {
        const root = sum(
          'day',
          values.map((value, n) => leaf(`d${n}`, value * 100, 0.4)),
        );
        const printed = printedOf(root, 1);
        expect(values.map((_, n) => printed(`d${n}`))).toEqual(values);
        expect(change(root, 1)).toBe(0);
      }),
    );
  });

  it('numbers and step times ten print ten times as much', () => {
    fc.assert(
      fc.property(day, (root) => {
        const tenfold = (node: TallyNode): TallyNode => ({
          ...node,
          value: node.value * 10,
          low: node.low * 10,
          high: node.high * 10,
          children: node.children.map(tenfold),
        });
        // A tie in hundredths may be none any more once the binary number is ten times as large.
        fc.pre(flat(root).every(({ value }) => Math.abs((value % 1) - 0.5) > 1e-6));
        const [one, ten] = [printedOf(root, 1), printedOf(tenfold(root), 10)];
        for (const { id } of flat(root)) expect(ten(id)).toBe(10 * one(id));
      }),
      { numRuns: 200 },
    );
  });
});
