import type { EpisodeFile } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';

/** When a step ran on a simulated day, in minutes of the day. */
export interface Ran {
  readonly start: number;
  readonly end: number;
}

/** Room for what adding up minutes in binary leaves over. */
const EQUAL = 1e-6;

/*
 * Whether a simulated day keeps the order of its plan and waits for what it must, written from the file and the
 * design alone; shares nothing with the simulation.
 */

/** What a simulated day does that it must not; `planned` and `ran` by step id. */
export function orderFaults(
  file: EpisodeFile,
  planned: ReadonlyMap<string, Ran>,
  ran: ReadonlyMap<string, Ran>,
  ovenOf: ReadonlyMap<string, string>,
): string[] {
  const { day } = file;
  if (day === null) return ['no day'];
  const faults: string[] = [];
  const all = file.episode.segments.flatMap(({ steps }) => steps).filter(({ id }) => ran.has(id));
  const whenRan = (id: string): Ran => ran.get(id) ?? { start: NaN, end: NaN };
  const whenPlanned = (id: string): Ran => planned.get(id) ?? { start: NaN, end: NaN };

  for (const { id } of all) {
    const { start, end } = whenRan(id);
    if (!(start >= day.startMin - EQUAL) || !(end >= start))
      faults.push(`${id} runs ${start} to ${end}`);
    for (const pin of day.pins) {
      if (pin.stepId === id && start < (pin.notBeforeMin ?? 0) - EQUAL)
        faults.push(`${id} is before its pin`);
    }
  }
  for (const link of file.episode.links) {
    if (!ran.has(link.fromStepId) || !ran.has(link.toStepId) || link.minLagS === null) continue;
    // A tie to the end of a step that began before it is counted, not waited for.
    if (link.toAnchor === 'end') continue;
    const gap = whenRan(link.toStepId).start - whenRan(link.fromStepId)[link.fromAnchor];
    if (gap < Math.ceil(link.minLagS / 60) - EQUAL) faults.push(`${link.id} has ${gap}`);
  }
  const oneAtATime = (what: string, takes: (step: Step) => boolean): void => {
    const users = all
      .filter((step) => takes(step) && whenPlanned(step.id).end > whenPlanned(step.id).start)
      .sort((a, b) => whenPlanned(a.id).start - whenPlanned(b.id).start);
    users.forEach((step, index) => {
      const next = users[index + 1];
      if (next !== undefined && whenRan(next.id).start < whenRan(step.id).end - EQUAL) {
        faults.push(`${what}: ${next.id} begins before ${step.id} is over`);
      }
    });
  };
  oneAtATime('hands', ({ hands }) => hands);
  oneAtATime('camera', ({ onCamera }) => onCamera);
  atMost('burners', file.kitchen.burners, (step) => step.burners);
  for (const oven of file.kitchen.ovens) {
    atMost(oven.id, oven.racks, (step) => (ovenOf.get(step.id) === oven.id ? step.racks : 0));
    temperatures(oven.id);
  }
  for (const call of day.appointments.filter(({ hands }) => hands)) {
    for (const step of all.filter(({ hands }) => hands)) {
      const { start, end } = whenRan(step.id);
      if (start > call.startMin - EQUAL && start < call.endMin - EQUAL && end > start)
        faults.push(`${step.id} begins during ${call.id}`);
    }
  }
  return faults;

  function atMost(what: string, units: number, takes: (step: Step) => number): void {
    for (const { id } of all.filter((step) => takes(step) > 0)) {
      const when = whenRan(id).start + EQUAL;
      const taken = all
        .filter((other) => whenRan(other.id).start <= when && when < whenRan(other.id).end - EQUAL)
        .reduce((sum, other) => sum + takes(other), 0);
      if (taken > units) faults.push(`${what}: ${taken} of ${units} when ${id} begins`);
    }
  }

  /** Two uses at different temperatures stay in order, with the change in between. */
  function temperatures(ovenId: string): void {
    const oven = file.kitchen.ovens.find(({ id }) => id === ovenId);
    const uses = all.filter((step) => step.oven !== null && ovenOf.get(step.id) === ovenId);
    for (const a of uses) {
      for (const b of uses) {
        if (oven === undefined || a.oven?.milliC === b.oven?.milliC) continue;
        if (whenPlanned(a.id).start > whenPlanned(b.id).start || a === b) continue;
        if (whenPlanned(a.id).end > whenPlanned(b.id).start) continue;
        if (uses.some((c) => isBetween(a.id, c.id, b.id))) continue;
        const [from, to] = [a.oven?.milliC ?? 0, b.oven?.milliC ?? 0];
        const known = oven.changes.find((one) => one.fromMilliC === from && one.toMilliC === to);
        const rate = to > from ? oven.heatSPerC : oven.coolSPerC;
        const seconds = known?.seconds ?? (Math.abs(to - from) / 1000) * rate;
        const gap = whenRan(b.id).start - whenRan(a.id).end;
        if (gap < Math.ceil(seconds / 60) - EQUAL)
          faults.push(`${ovenId}: ${a.id}, ${b.id}: ${gap}`);
      }
    }
  }

  function isBetween(a: string, c: string, b: string): boolean {
    return (
      c !== a &&
      c !== b &&
      whenPlanned(c).start >= whenPlanned(a).end &&
      whenPlanned(c).end <= whenPlanned(b).start
    );
  }
}
