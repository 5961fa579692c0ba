import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NONE, TimeNet } from '#lib/planner/time-net';

const SIZE = 6;
const arcs = fc.array(
  fc.record({ u: fc.nat(SIZE - 1), v: fc.nat(SIZE - 1), gap: fc.integer({ min: -9, max: 9 }) }),
  { maxLength: 18 },
);

/** Longest paths by relaxing every arc over and over; null where a loop gains. */
function longestPaths(kept: readonly { u: number; v: number; gap: number }[]): number[] | null {
  const low = new Array<number>(SIZE * SIZE).fill(-Infinity);
  for (let i = 0; i < SIZE; i += 1) low[i * SIZE + i] = 0;
  for (let round = 0; round <= SIZE; round += 1) {
    let changed = false;
    for (let i = 0; i < SIZE; i += 1) {
      for (const { u, v, gap } of kept) {
        const through = (low[i * SIZE + u] ?? -Infinity) + gap;
        if (through <= (low[i * SIZE + v] ?? -Infinity)) continue;
        low[i * SIZE + v] = through;
        changed = true;
      }
    }
    if (!changed) return low;
  }
  return null;
}

describe('a net of points in time', () => {
  it('equals the longest paths of the bounds it took, and refuses exactly those that contradict', () => {
    fc.assert(
      fc.property(arcs, (given) => {
        const net = new TimeNet(SIZE);
        const kept: { u: number; v: number; gap: number }[] = [];
        for (const arc of given) {
          const before = net.low.slice();
          const possible = longestPaths([...kept, arc]) !== null;
          expect(net.add(arc.u, arc.v, arc.gap)).toBe(possible);
          if (possible) kept.push(arc);
          else expect(net.low).toEqual(before);
        }
        const expected = longestPaths(kept)?.map((low) => (low === -Infinity ? NONE : low));
        expect([...net.low]).toEqual(expected);
      }),
    );
  });

  it('a copy goes its own way, also when written over another', () => {
    const net = new TimeNet(3);
    net.add(0, 1, 5);
    const twin = net.copy(new TimeNet(3));
    expect(twin.low).toEqual(net.low);
    twin.add(1, 2, 4);
    expect(net.low[2]).toBe(NONE);
    expect(twin.low[2]).toBe(9);
  });
});
