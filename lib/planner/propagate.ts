import { lowerBound, PAIR_COLUMNS, type Compiled } from '#lib/planner/compiled';
import type { TimeNet } from '#lib/planner/time-net';

/** Two items that cannot stand in either order (−1 where no single pair is to blame). */
export class Contradiction {
  constructor(
    readonly first: number,
    readonly second: number,
  ) {}
}

/**
 * Fixes every order of which only one way is left and tightens spans to what their limit leaves,
 * until nothing changes. Of the pairs in `open` it returns those that can still go either way, or the
 * contradiction it met; `net` is changed in place.
 */
export function propagate(
  compiled: Compiled,
  net: TimeNet,
  open: readonly number[],
): readonly number[] | Contradiction {
  const table = compiled.pairTable;
  const { low, size } = net;
  let left = open;
  for (let changed = true; changed;) {
    changed = false;
    const kept: number[] = [];
    for (const index of left) {
      const row = index * PAIR_COLUMNS;
      const atAB = table[row] as number;
      const needAB = table[row + 2] as number;
      if ((low[atAB] as number) >= needAB) continue;
      const atBA = table[row + 3] as number;
      const needBA = table[row + 5] as number;
      if ((low[atBA] as number) >= needBA) continue;
      const canAB = (low[table[row + 1] as number] as number) <= -needAB;
      const canBA = (low[table[row + 4] as number] as number) <= -needBA;
      if (canAB && canBA) {
        kept.push(index);
        continue;
      }
      changed = true;
      const fixed = canAB
        ? net.add(Math.floor(atAB / size), atAB % size, needAB)
        : canBA && net.add(Math.floor(atBA / size), atBA % size, needBA);
      if (!fixed) {
        return new Contradiction(compiled.pairs[index]?.a ?? -1, compiled.pairs[index]?.b ?? -1);
      }
    }
    left = kept;
    const tightened = tightenSpans(compiled, net);
    if (tightened === null) return new Contradiction(-1, -1);
    changed = changed || tightened;
  }
  return left;
}

/** Whether a span was tightened; null if a limit cannot be kept. */
function tightenSpans(compiled: Compiled, net: TimeNet): boolean | null {
  let changed = false;
  for (const limit of compiled.spans) {
    const least = limit.spans.map((span) => Math.max(0, lowerBound(net, span.from, span.to)));
    const spare = limit.limit - least.reduce((sum, span) => sum + span, 0);
    if (spare < 0) return null;
    for (const [index, span] of limit.spans.entries()) {
      const most = (least[index] as number) + spare;
      if (-lowerBound(net, span.to, span.from) <= most) continue;
      changed = true;
      const { from, to } = span;
      if (!net.add(to.node, from.node, to.offset - most - from.offset)) return null;
    }
  }
  return changed;
}
