import type { PlanEntry } from '#lib/shoot/plan';

/** An entry that is no step and takes nothing, to be given its times and what it does take. */
export function plainEntry(id: string, kind: PlanEntry['kind'], title: string): PlanEntry {
  return {
    id,
    kind,
    stepId: null,
    segmentId: null,
    title,
    startMin: 0,
    endMin: 0,
    hands: false,
    onCamera: false,
    ovenId: null,
    milliC: null,
    racks: 0,
    burners: 0,
    why: '',
  };
}
