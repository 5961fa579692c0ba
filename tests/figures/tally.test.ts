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

  it('names the fewest spoken numbers that cannot add up, prints them as said and tallies the rest', () => {
    const root = parent('day', [leaf('a', 1.4, 0.5, 9), leaf('b', 1.4)], 3);
    const { addsUp, numbers, clashing } = tally(root, 1);
    expect([addsUp, clashing]).toEqual([false, ['a']]);
    expect([...numbers].map(([id, { printed }]) => [id, printed])).toEqual([
      ['day', 3],
      ['a', 9],
      ['b', 2],
    ]);
  });

  it('names a spoken number in other steps than the ones that are printed', () => {
    const root = parent('day', [leaf('a', 641.4, 9, 642), leaf('b', 301, 9)]);
    expect(tally(root, 1).clashing).toEqual([]);
    expect(tally(root, 10)).toMatchObject({ addsUp: false, clashing: ['a'] });
    expect(tally(root, 10).numbers.get('a')?.printed).toBe(642);
  });

  it('does not let a spoken number outside its bound loosen the bounds of the others', () => {
    // b = 0.4 ± 0.01 may only be printed 0; the spoken a = 3 is far from 1.9 ± 0.01.
    const spoken = parent('s', [leaf('a', 2.9, 0.01, 2), leaf('c', 5.2, 0.01)]);
    const { numbers } = tally(parent('day', [spoken, leaf('b', 0.4, 0.01)]), 1);
    expect(numbers.get('a')).toEqual({ printed: 2, onlyByRounding: true });
    expect(numbers.get('b')).toEqual({ printed: 0, onlyByRounding: false });
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

  it('is what largest remainders give on one level where no bound binds', () => {
    // Hare's and Hamilton's method of largest remainders: round all down, then raise those with the largest
    // remainders until the total is met (common practice, no source beyond its name).
    const values = fc.array(fc.integer({ min: 0, max: 90_000 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(values, (hundredths) => {
        const children = hundredths.map((each, index) => leaf(`s${index}`, each / 100, 1));
        const root = parent('day', children);
        const { numbers } = tally(root, 1);
        const day = Math.floor(hundredths.reduce((sum, each) => sum + each, 0) / 100 + 0.5);
        const order = hundredths.map((each, index) => ({ index, rest: each % 100 }));
        const short = day - hundredths.reduce((sum, each) => sum + Math.floor(each / 100), 0);
        // Which one gives way among equal remainders is a rule of ours: compared as sums of remainders.
        const raised = order.sort((a, b) => b.rest - a.rest).slice(0, Math.max(0, short));
        const ours = order.filter(
          ({ index }) =>
            (numbers.get(`s${index}`)?.printed ?? 0) > Math.floor((hundredths[index] ?? 0) / 100),
        );
        const half = hundredths.reduce((sum, each) => sum + each, 0) % 100 === 50;
        if (half) return;
        expect(numbers.get('day')?.printed).toBe(day);
        const sum = (of: typeof order) => of.map(({ rest }) => rest).sort((a, b) => b - a);
        expect(sum(ours)).toEqual(sum(raised));
      }),
      { numRuns: 500 },
    );
  });
});

describe('beside exhaustive search', () => {
  interface Spec {
    readonly hundredths: readonly (readonly number[])[];
    readonly half: number;
    readonly spoken: number;
    readonly off: number;
  }
  const spec: fc.Arbitrary<Spec> = fc.record({
    hundredths: fc.array(
      fc.array(fc.integer({ min: 0, max: 600 }), { minLength: 1, maxLength: 3 }),
      {
        minLength: 1,
        maxLength: 3,
      },
    ),
    half: fc.constantFrom(0.01, 0.05, 0.3, 2),
    // Which number is spoken (none where it is past the last) and by how much it was said otherwise.
    spoken: fc.integer({ min: 0, max: 16 }),
    off: fc.constantFrom(-1, 0, 0, 1),
  });

  function build({ hundredths, half, spoken, off }: Spec): TallyNode {
    let place = 0;
    const fixed = (value: number) => {
      place += 1;
      return place === spoken ? Math.max(0, Math.round(value) + off) : null;
    };
    const segments = hundredths.map((values, s) => {
      const parts = values.map((each, p) =>
        leaf(`s${s}p${p}`, each / 100, half, fixed(each / 100)),
      );
      const [only] = parts;
      if (parts.length === 1 && only) return only;
      const whole = parent(`s${s}`, parts);
      return { ...whole, fixed: fixed(whole.value) };
    });
    return parent('day', segments);
  }

  /** Every way to print the tree so that it adds up, by trying all; nothing is shared with the tally. */
  function ways(node: TallyNode, inBounds: boolean): Map<string, number>[] {
    const own = (printed: number) => {
      if (node.fixed !== null) return printed === node.fixed;
      const [low, high] = [Math.floor(node.value + 1e-9), Math.ceil(node.value - 1e-9)];
      if (printed !== low && printed !== high) return false;
      const meets = printed + 0.5 >= node.low - 1e-9 && printed - 0.5 <= node.high + 1e-9;
      return !inBounds || meets;
    };
    if (node.children.length === 0) {
      const near = [Math.floor(node.value + 1e-9), Math.ceil(node.value - 1e-9), node.fixed];
      return [...new Set(near)].flatMap((each) =>
        each !== null && own(each) ? [new Map([[node.id, each]])] : [],
      );
    }
    let all: Map<string, number>[] = [new Map()];
    for (const child of node.children) {
      const below = ways(child, inBounds);
      all = all.flatMap((left) => below.map((right) => new Map([...left, ...right])));
    }
    return all.flatMap((way) => {
      const sum = node.children.reduce((total, { id }) => total + (way.get(id) ?? NaN), 0);
      return own(sum) ? [new Map([...way, [node.id, sum]])] : [];
    });
  }

  function costs(root: TallyNode, way: ReadonlyMap<string, number>): number[] {
    const misses = flatten(root).map((node) => Math.abs((way.get(node.id) ?? NaN) - node.value));
    return [misses[0] ?? 0, misses.reduce((sum, each) => sum + each, 0), ...misses].map(
      (each) => Math.round(each * 1e6) / 1e6,
    );
  }

  it('finds the same numbers, with and without bounds, with and without a spoken number', () => {
    const seen = { strict: 0, loose: 0, clash: 0 };
    fc.assert(
      fc.property(spec, (given) => {
        const root = build(given);
        const strict = ways(root, true);
        const all = strict.length > 0 ? strict : ways(root, false);
        const { addsUp, numbers, clashing } = tally(root, 1);
        expect(addsUp).toBe(all.length > 0);
        expect(clashing.length).toBe(all.length > 0 ? 0 : 1);
        if (all.length === 0) {
          seen.clash += 1;
          return;
        }
        seen[strict.length > 0 ? 'strict' : 'loose'] += 1;
        const [best] = all
          .map((way) => ({ way, cost: costs(root, way) }))
          .sort((a, b) => {
            const at = a.cost.findIndex((each, index) => each !== b.cost[index]);
            return at < 0 ? 0 : (a.cost[at] ?? 0) - (b.cost[at] ?? 0);
          });
        const ours = new Map([...numbers].map(([id, { printed }]) => [id, printed]));
        expect(Object.fromEntries(ours)).toEqual(Object.fromEntries(best?.way ?? []));
        expect(tally(root, 1)).toEqual(tally(build(given), 1));
      }),
      { numRuns: 1000 },
    );
    // All three cases were really tried.
    expect(Math.min(seen.strict, seen.loose, seen.clash)).toBeGreaterThan(5);
  });
});
