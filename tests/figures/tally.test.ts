import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tally, type TallyNode } from '#lib/figures/tally';

function leaf(id: string, value: number, half = 0.4, fixed: number | null = null): TallyNode {
  return { id, value, low: Math.max(0, value - half), high: value + half, fixed, children: [] };
}

function parent(id: string, children: TallyNode[], fixed: number | null = null): TallyNode {
  const sum = (of: (node: TallyNode) => number) =>
    children.reduce((total, node) => total + of(node), 0);
  return {
    id,
    value: sum((n) => n.value),
    low: sum((n) => n.low),
    high: sum((n) => n.high),
    fixed,
    children,
  };
}

const leaves = fc.array(fc.double({ min: 0, max: 900, noNaN: true }), {
  minLength: 1,
  maxLength: 5,
});
const tree = fc.array(leaves, { minLength: 1, maxLength: 4 }).map((segments) =>
  parent(
    'day',
    segments.map((values, s) =>
      values.length === 1
        ? leaf(`s${s}`, values[0] ?? 0)
        : parent(
            `s${s}`,
            values.map((value, p) => leaf(`s${s}p${p}`, value)),
          ),
    ),
  ),
);

function flatten(node: TallyNode): TallyNode[] {
  return [node, ...node.children.flatMap(flatten)];
}

describe('tally', () => {
  it('adds up, with each number one of its two neighbours', () => {
    fc.assert(
      fc.property(tree, fc.constantFrom(1, 5, 0.1), (root, step) => {
        const { addsUp, numbers } = tally(root, step);
        expect(addsUp).toBe(true);
        for (const node of flatten(root)) {
          const printed = numbers.get(node.id)?.printed ?? NaN;
          expect(Math.abs(printed - node.value)).toBeLessThan(step + 1e-6);
          if (node.children.length > 0) {
            const sum = node.children.reduce((s, c) => s + (numbers.get(c.id)?.printed ?? NaN), 0);
            expect(printed).toBeCloseTo(sum, 6);
          }
        }
      }),
    );
  });

  it('changes least: no other way to print adds up with less change', () => {
    const flat = fc.array(fc.double({ min: 0, max: 50, noNaN: true }), {
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(flat, (values) => {
        const root = parent(
          'day',
          values.map((value, index) => leaf(`s${index}`, value, 1)),
        );
        const { numbers } = tally(root, 1);
        const cost = (printed: number[]) =>
          printed.reduce((sum, p, index) => sum + Math.abs(p - (values[index] ?? 0)), 0);
        const day = numbers.get('day')?.printed ?? NaN;
        const ours = cost(values.map((_, index) => numbers.get(`s${index}`)?.printed ?? NaN));
        // Every way to round each number down or up, by counting in binary.
        for (let way = 0; way < 2 ** values.length; way += 1) {
          const printed = values.map((v, index) =>
            way & (2 ** index) ? Math.ceil(v) : Math.floor(v),
          );
          const sum = printed.reduce((total, p) => total + p, 0);
          if (sum === day) expect(ours).toBeLessThanOrEqual(cost(printed) + 1e-9);
          const within = sum === Math.floor(root.value) || sum === Math.ceil(root.value);
          if (within) {
            expect(Math.abs(day - root.value)).toBeLessThanOrEqual(
              Math.abs(sum - root.value) + 1e-9,
            );
          }
        }
      }),
    );
  });

  it('lets the later number give way where two could', () => {
    const root = parent('day', [leaf('a', 1.4), leaf('b', 1.4)]);
    const { numbers } = tally(root, 1);
    expect([...numbers].map(([id, { printed }]) => [id, printed])).toEqual([
      ['day', 3],
      ['a', 1],
      ['b', 2],
    ]);
  });

  it('keeps a spoken number and lets the others give way', () => {
    const root = parent('day', [leaf('a', 1.4, 0.9, 2), leaf('b', 1.4, 0.9)]);
    const { addsUp, numbers } = tally(root, 1);
    expect(addsUp).toBe(true);
    expect(numbers.get('a')?.printed).toBe(2);
    expect(numbers.get('day')?.printed).toBe((numbers.get('b')?.printed ?? 0) + 2);
  });

  it('says where spoken numbers cannot add up', () => {
    const root = parent('day', [leaf('a', 1.4, 0.5, 9), leaf('b', 1.4)], 3);
    expect(tally(root, 1).addsUp).toBe(false);
  });

  it('says which number adds up only because of rounding', () => {
    // 0.4 and 0.4 make 0.8, printed 1: one of the two must be printed 1, outside its tight bound.
    const root = parent('day', [leaf('a', 0.4, 0.01), leaf('b', 0.4, 0.01)]);
    const { numbers } = tally(root, 1);
    expect(numbers.get('day')).toEqual({ printed: 1, onlyByRounding: false });
    expect([numbers.get('a')?.onlyByRounding, numbers.get('b')?.onlyByRounding]).toEqual([
      false,
      true,
    ]);
  });
});
