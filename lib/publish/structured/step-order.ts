import type { Step, StepLink } from '#lib/episode/step-schema';

/** What ties say of the steps of a dish. */
export interface WaysOn {
  /** Whether a step begins only once another has ended, by ties from one to the next. */
  readonly isBehind: (stepId: string, otherId: string) => boolean;
  /**
   * Seconds from the first beginning to when all of them are done and rested and the last can begin, by ties alone; steps
   * that are not counted take none.
   */
  readonly longestWay: (counted: ReadonlySet<string>) => number;
  /** Seconds that a step rests or that a tie asks to wait after it, at most. */
  readonly waitAfter: (stepId: string) => number;
}

/**
 * Reads ties between steps of one dish, by their usual lengths. Ties to steps of other dishes say nothing of this one.
 * A step that names a rest is followed by at least that rest.
 * @example waysOn(steps, links).isBehind('bake', 'stir') // true where a tie says so
 */
export function waysOn(steps: readonly Step[], links: readonly StepLink[]): WaysOn {
  const byId = new Map(steps.map((step) => [step.id, step]));
  const own = links.filter(
    ({ fromStepId, toStepId, minLagS }) =>
      minLagS !== null && byId.has(fromStepId) && byId.has(toStepId),
  );
  const behind = new Map(steps.map(({ id }) => [id, closure(id, own)]));
  return {
    isBehind: (stepId, otherId) => behind.get(otherId)?.has(stepId) ?? false,
    longestWay: (counted) => longestWay(byId, own, counted),
    waitAfter: (stepId) =>
      Math.max(
        byId.get(stepId)?.restS ?? 0,
        ...own.filter(({ fromStepId }) => fromStepId === stepId).map(({ minLagS }) => minLagS ?? 0),
      ),
  };
}

/** All that begins only after the end of a step. */
function closure(stepId: string, links: readonly StepLink[]): ReadonlySet<string> {
  const found = new Set<string>();
  const goOn = (id: string) => {
    for (const { fromStepId, toStepId, fromAnchor, toAnchor } of links) {
      if (fromStepId !== id || found.has(toStepId)) continue;
      if (fromAnchor !== 'end' || toAnchor !== 'start') continue;
      found.add(toStepId);
      goOn(toStepId);
    }
  };
  goOn(stepId);
  return found;
}

function longestWay(
  steps: ReadonlyMap<string, Step>,
  links: readonly StepLink[],
  counted: ReadonlySet<string>,
): number {
  const length = (id: string) => (counted.has(id) ? (steps.get(id)?.usualS ?? 0) : 0);
  const begins = new Map([...steps.keys()].map((id) => [id, 0]));
  // As often as there are steps: longer ways only go in rings, which no plan can keep.
  for (let round = 0; round < steps.size; round += 1) {
    for (const { fromStepId, toStepId, fromAnchor, toAnchor, minLagS } of links) {
      const from = (begins.get(fromStepId) ?? 0) + (fromAnchor === 'end' ? length(fromStepId) : 0);
      const at = from + (minLagS ?? 0) - (toAnchor === 'end' ? length(toStepId) : 0);
      begins.set(toStepId, Math.max(begins.get(toStepId) ?? 0, at));
    }
  }
  const ends = [...counted].map(
    (id) => (begins.get(id) ?? 0) + length(id) + (steps.get(id)?.restS ?? 0),
  );
  return Math.max(0, ...begins.values(), ...ends);
}
