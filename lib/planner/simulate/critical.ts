import type { TaskId } from '#lib/planner/problem';
import type { OrderGraph, Times } from '#lib/planner/simulate/pass';

/** What the ends of the days hung on. */
export interface CriticalTally {
  /** By task: in how many runs a minute more of it, or a later start, would have been a later end. */
  readonly counts: ReadonlyMap<TaskId, number>;
  /** The chain that the end hung on most often, from its beginning, and in how many runs. */
  readonly chain: readonly TaskId[];
  readonly chainRuns: number;
}

/**
 * Counts, run by run, the chain of tasks from the beginning to the end of the day, each of which waited for the
 * one before. Where two were waited for alike, the first rule counts.
 */
export function criticalCounter(graph: OrderGraph): {
  readonly seen: (times: Times) => void;
  readonly tally: () => CriticalTally;
} {
  const bundleOf: number[] = [];
  graph.bundles.forEach((bundle, at) => bundle.forEach(({ task }) => (bundleOf[task] = at)));
  const counts = new Map<TaskId, number>();
  const chains = new Map<string, { readonly chain: readonly number[]; runs: number }>();
  const seen = ({ end, cause }: Times): void => {
    let at: number | null = null;
    for (let task = 0; task < end.length; task += 1) {
      if (at === null || (end[task] ?? 0) > (end[at] ?? 0)) at = task;
    }
    const chain: number[] = [];
    while (at !== null) {
      chain.push(at);
      const bundle: number = bundleOf[at] ?? 0;
      const arc = graph.arcs[bundle]?.[cause[bundle] ?? -1];
      if (arc !== undefined && arc.to !== at) chain.push(arc.to);
      at = arc?.from ?? null;
    }
    for (const task of chain) {
      const id = graph.ids[task] ?? '';
      counts.set(id, (counts.get(id) ?? 0) + 1);
    }
    const key = chain.join();
    const known = chains.get(key);
    if (known === undefined) chains.set(key, { chain, runs: 1 });
    else known.runs += 1;
  };
  const tally = (): CriticalTally => {
    let most: { readonly chain: readonly number[]; runs: number } = { chain: [], runs: 0 };
    for (const one of chains.values()) if (one.runs > most.runs) most = one;
    const chain = most.chain.map((task) => graph.ids[task] ?? '').reverse();
    return { counts, chain, chainRuns: most.runs };
  };
  return { seen, tally };
}
