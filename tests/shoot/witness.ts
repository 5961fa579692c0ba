import type { Kitchen, Oven } from '#lib/episode/kitchen-schema';
import type { CheckedEntry } from './checker-data';
import type { DraftSegment, DraftStep } from './random-segment';

/** What has been placed so far on a day that is laid out one segment after another. */
export interface Laid {
  readonly kitchen: Kitchen;
  readonly dayStart: number;
  readonly entries: CheckedEntry[];
}

const LATEST = 4000;

/** Minutes an oven takes from one temperature to another. */
function changeMin(oven: Oven, from: number, to: number): number {
  if (from === to) return 0;
  const measured = oven.changes.find((c) => c.fromMilliC === from && c.toMilliC === to);
  const rate = to > from ? oven.heatSPerC : oven.coolSPerC;
  return Math.ceil((measured?.seconds ?? (Math.abs(to - from) * rate) / 1000) / 60);
}

function shares(a: CheckedEntry, b: CheckedEntry): boolean {
  return Math.max(a.startMin, b.startMin) < Math.min(a.endMin, b.endMin);
}

/** Whether a step may stand in an oven beside what is in it, and the changes before and after have their time. */
function ovenTakes(laid: Laid, oven: Oven, entry: CheckedEntry, milliC: number): boolean {
  const uses = laid.entries.filter((e) => e.ovenId === oven.id && e.kind === 'step');
  const beside = uses.filter((u) => shares(u, entry));
  if (beside.some((u) => u.milliC !== milliC)) return false;
  if (beside.reduce((sum, u) => sum + u.racks, entry.racks) > oven.racks) return false;
  const others = uses.filter((u) => u.milliC !== milliC);
  const earlier = uses.filter((u) => u.endMin <= entry.startMin);
  if (
    earlier.length === 0 &&
    entry.startMin - laid.dayStart < changeMin(oven, oven.coldMilliC, milliC)
  ) {
    return false;
  }
  return others.every((u) =>
    u.endMin <= entry.startMin
      ? entry.startMin - u.endMin >= changeMin(oven, u.milliC ?? milliC, milliC)
      : u.startMin - entry.endMin >= changeMin(oven, milliC, u.milliC ?? milliC),
  );
}

/** The entry of a step that starts at a minute, in an oven that takes it; null where the minute is not free. */
function entryAt(
  laid: Laid,
  draft: DraftStep,
  segmentId: string,
  startMin: number,
): CheckedEntry | null {
  const { step } = draft;
  const entry: CheckedEntry = {
    id: `do-${step.id}`,
    kind: 'step',
    stepId: step.id,
    segmentId,
    title: step.title,
    startMin,
    endMin: startMin + Math.ceil(step.usualS / 60),
    hands: step.hands,
    onCamera: step.onCamera,
    ovenId: null,
    milliC: step.oven?.milliC ?? null,
    racks: step.racks,
    burners: step.burners,
    why: 'in its turn',
  };
  const beside = laid.entries.filter((e) => shares(e, entry));
  if (step.hands && beside.some((e) => e.hands)) return null;
  if (step.onCamera && beside.some((e) => e.onCamera)) return null;
  const burners = beside.reduce((sum, e) => sum + e.burners, step.burners);
  if (step.burners > 0 && burners > laid.kitchen.burners) return null;
  if (step.oven === null) return entry;
  const { ovenId, milliC } = step.oven;
  const oven = laid.kitchen.ovens.find(
    (o) => (ovenId === null || o.id === ovenId) && ovenTakes(laid, o, entry, milliC),
  );
  return oven ? { ...entry, ovenId: oven.id } : null;
}

/** Steps with those that are tied to them, as runs that are placed as one. */
function runsOf(drafts: readonly DraftStep[]): DraftStep[][] {
  const runs: DraftStep[][] = [];
  for (const draft of drafts) {
    const last = runs[runs.length - 1];
    if (draft.tie && last) last.push(draft);
    else runs.push([draft]);
  }
  return runs;
}

/** A run from a minute on, each tied step at the end of the one before; null where it does not fit. */
function runAt(
  laid: Laid,
  run: readonly DraftStep[],
  segmentId: string,
  startMin: number,
): CheckedEntry[] | null {
  const placed: CheckedEntry[] = [];
  for (const draft of run) {
    const at = placed[placed.length - 1]?.endMin ?? startMin;
    const sofar = { ...laid, entries: [...laid.entries, ...placed] };
    const met = draft.needs.every((need) => {
      const from = sofar.entries.find((e) => e.stepId === need.stepId);
      if (!from) return false;
      return at >= (need.anchor === 'start' ? from.startMin : from.endMin) + need.minMin;
    });
    const entry = met ? entryAt(sofar, draft, segmentId, at) : null;
    if (!entry) return null;
    placed.push(entry);
  }
  return placed;
}

/** Lays a segment's steps out, each as early as it fits from a minute on; false where one does not fit. */
export function laySegment(
  laid: Laid,
  { segment, drafts }: DraftSegment,
  fromMin: number,
): boolean {
  for (const run of runsOf(drafts)) {
    let placed: CheckedEntry[] | null = null;
    for (let at = fromMin; placed === null; at += 1) {
      if (at > LATEST) return false;
      placed = runAt(laid, run, segment.id, at);
    }
    laid.entries.push(...placed);
  }
  return true;
}

/** The least that an entry which is no step carries. */
export function plainEntry(
  kind: CheckedEntry['kind'],
  id: string,
  title: string,
  startMin: number,
  endMin: number,
): CheckedEntry {
  return {
    id,
    kind,
    stepId: null,
    segmentId: null,
    title,
    startMin,
    endMin,
    hands: false,
    onCamera: false,
    ovenId: null,
    milliC: null,
    racks: 0,
    burners: 0,
    why: 'the day needs it',
  };
}

/** Lays out a segment's washing-up at the first free minutes after its last step of preparing or showing. */
export function layWashUp(laid: Laid, { segment }: DraftSegment): void {
  if (segment.washUpS === 0) return;
  const dirty = new Set(
    segment.steps
      .filter(
        (s) => s.role === 'prep' || s.role === 'cook' || s.role === 'shoot' || s.role === 'taste',
      )
      .map((s) => s.id),
  );
  let at = laid.entries
    .filter((e) => e.stepId !== null && dirty.has(e.stepId))
    .reduce((last, e) => Math.max(last, e.endMin), laid.dayStart);
  const minutes = Math.ceil(segment.washUpS / 60);
  for (;;) {
    const entry = {
      ...plainEntry('washUp', `wash-${segment.id}`, `Wash up ${segment.title}`, at, at + minutes),
      segmentId: segment.id,
      hands: true,
    };
    if (!laid.entries.some((e) => e.hands && shares(e, entry))) {
      laid.entries.push(entry);
      return;
    }
    at += 1;
  }
}

/** The heating and cooling that the placed oven steps ask for, each ending where the next use begins. */
export function ovenChanges(laid: Laid): CheckedEntry[] {
  return laid.kitchen.ovens.flatMap((oven) => {
    const uses = laid.entries
      .filter((e) => e.ovenId === oven.id && e.kind === 'step')
      .sort((a, b) => a.startMin - b.startMin);
    let milliC = oven.coldMilliC;
    return uses.flatMap((use) => {
      const wanted = use.milliC ?? milliC;
      const minutes = changeMin(oven, milliC, wanted);
      const kind = wanted > milliC ? ('preheat' as const) : ('coolDown' as const);
      milliC = wanted;
      if (minutes === 0) return [];
      const id = `${kind}-${use.id}`;
      const entry = plainEntry(kind, id, oven.name, use.startMin - minutes, use.startMin);
      return [{ ...entry, ovenId: oven.id, milliC: wanted }];
    });
  });
}
