import type { StatefulResource } from '#lib/planner/problem';

/** A gap that no day is long enough for: the order is forbidden. */
export const NEVER = 2 ** 28;

/** Whole changeover times through any states on the way; missing pairs are `NEVER`. */
export function closure(resource: StatefulResource): Map<string, Map<string, number>> {
  const states = [
    ...new Set([
      resource.initial,
      ...Object.keys(resource.changeover),
      ...Object.values(resource.changeover).flatMap((row) => Object.keys(row)),
    ]),
  ];
  const times = new Map(
    states.map((from) => [
      from,
      new Map(states.map((to) => [to, direct(resource, from, to)] as const)),
    ]),
  );
  for (const via of states) {
    for (const from of states) {
      for (const to of states) {
        const through = gapBetween(times, from, via) + gapBetween(times, via, to);
        if (through < gapBetween(times, from, to)) times.get(from)?.set(to, through);
      }
    }
  }
  return times;
}

/** The stated changeover time; 0 to the same state, `NEVER` where the pair is absent. */
export function direct(resource: StatefulResource, from: string, to: string): number {
  return from === to ? 0 : (resource.changeover[from]?.[to] ?? NEVER);
}

/** The whole changeover time in a table that `closure` made; 0 to the same state. */
export function gapBetween(
  times: Map<string, Map<string, number>>,
  from: string,
  to: string,
): number {
  return from === to ? 0 : (times.get(from)?.get(to) ?? NEVER);
}
