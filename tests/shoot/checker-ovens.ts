import { nameOf, overlap, type Carried, type CheckedEntry, type Facts } from './checker-data';
import type { CheckedOven } from './checker-data';

/**
 * Minutes from one temperature to another: the measured time of that pair if there is one, else the
 * difference in degrees by the oven's rate up or down, in whole minutes rounded up.
 */
function changeMinutes(oven: CheckedOven, from: number, to: number): number {
  if (from === to) return 0;
  const measured = oven.changes.find((c) => c.fromMilliC === from && c.toMilliC === to);
  if (measured) return Math.ceil(measured.seconds / 60);
  const rate = to > from ? oven.heatSPerC : oven.coolSPerC;
  return Math.ceil((Math.abs(to - from) * rate) / 60_000);
}

const degrees = (milliC: number): string => `${milliC / 1000} °C`;

/** Racks in use at the same time, looked at whenever a use begins. */
function rackFaults(oven: CheckedOven, uses: readonly Carried[]): string[] {
  return uses.flatMap(({ entry }) => {
    const racks = uses
      .filter((u) => u.entry.startMin <= entry.startMin && entry.startMin < u.entry.endMin)
      .reduce((sum, u) => sum + u.step.racks, 0);
    return racks > oven.racks
      ? [`racks: ${racks} in use in ${oven.name} at ${entry.startMin}, it has ${oven.racks}`]
      : [];
  });
}

/** Uses that share time must share the temperature. */
function temperatureFaults(oven: CheckedOven, uses: readonly Carried[]): string[] {
  return uses.flatMap((a, i) =>
    uses
      .slice(i + 1)
      .filter((b) => overlap(a.entry, b.entry) && a.step.oven?.milliC !== b.step.oven?.milliC)
      .map(
        (b) =>
          `temperature: ${nameOf(a.entry)} and ${nameOf(b.entry)} need ${oven.name} at two temperatures at once`,
      ),
  );
}

/** Each change of temperature has its time between two uses and its own entry in that gap. */
function changeFaults(
  oven: CheckedOven,
  uses: readonly Carried[],
  changes: readonly CheckedEntry[],
  dayStart: number,
): string[] {
  const faults: string[] = [];
  let milliC = oven.coldMilliC;
  let freeFrom = dayStart;
  for (const { step, entry } of uses) {
    const wanted = step.oven?.milliC ?? milliC;
    const need = changeMinutes(oven, milliC, wanted);
    const gap = entry.startMin - freeFrom;
    const text = `${oven.name} from ${degrees(milliC)} to ${degrees(wanted)} before ${nameOf(entry)}`;
    if (wanted !== milliC && gap < need) {
      faults.push(`changeover: ${text} has ${gap} min and needs ${need}`);
    }
    const kind = wanted > milliC ? 'preheat' : 'coolDown';
    const from = freeFrom;
    const fits = (e: CheckedEntry) =>
      e.kind === kind &&
      e.startMin >= from &&
      e.endMin <= entry.startMin &&
      e.endMin - e.startMin >= need &&
      (e.milliC === null || e.milliC === wanted);
    if (need > 0 && !changes.some(fits)) {
      faults.push(`${kind}: ${text} has no ${kind} entry of ${need} min in the gap`);
    }
    freeFrom = wanted === milliC ? Math.max(freeFrom, entry.endMin) : entry.endMin;
    milliC = wanted;
  }
  return faults;
}

/** A change of temperature runs by itself, in an oven there is, and never while something is in it. */
function changeEntryFaults(entry: CheckedEntry, ovens: ReadonlyMap<string, Carried[]>): string[] {
  const uses = entry.ovenId === null ? undefined : ovens.get(entry.ovenId);
  if (!uses) return [`oven: ${nameOf(entry)} is in no oven of this kitchen`];
  const faults = uses
    .filter((u) => overlap(u.entry, entry))
    .map((u) => `${entry.kind}: ${nameOf(entry)} runs while ${nameOf(u.entry)} is in the oven`);
  if (entry.hands) faults.push(`${entry.kind}: ${nameOf(entry)} takes hands and should not`);
  return faults;
}

/** Every rule about ovens. */
export function ovenFaults({ file, day, plan, carried }: Facts): string[] {
  const faults: string[] = [];
  const usesOf = new Map<string, Carried[]>(file.kitchen.ovens.map((o) => [o.id, []]));
  for (const use of carried.values()) {
    const { step, entry } = use;
    if (step.oven === null) {
      if (entry.ovenId !== null) faults.push(`oven: ${nameOf(entry)} takes an oven without need`);
      continue;
    }
    const uses = entry.ovenId === null ? undefined : usesOf.get(entry.ovenId);
    if (!uses) faults.push(`oven: ${nameOf(entry)} is in no oven of this kitchen`);
    else uses.push(use);
    if (step.oven.ovenId !== null && step.oven.ovenId !== entry.ovenId) {
      faults.push(`oven: ${nameOf(entry)} is not in the oven it names`);
    }
    const oven = file.kitchen.ovens.find(({ id }) => id === entry.ovenId);
    if (oven?.mostMilliC != null && step.oven.milliC > oven.mostMilliC) {
      faults.push(`temperature: ${nameOf(entry)} asks for more than ${oven.name} gets`);
    }
    if (entry.milliC !== step.oven.milliC) {
      faults.push(`temperature: ${nameOf(entry)} does not state ${degrees(step.oven.milliC)}`);
    }
  }
  const changes = plan.entries.filter((e) => e.kind === 'preheat' || e.kind === 'coolDown');
  for (const oven of file.kitchen.ovens) {
    const uses = (usesOf.get(oven.id) ?? []).sort(
      (a, b) => a.entry.startMin - b.entry.startMin || a.entry.endMin - b.entry.endMin,
    );
    const own = changes.filter((e) => e.ovenId === oven.id);
    faults.push(...rackFaults(oven, uses), ...temperatureFaults(oven, uses));
    faults.push(...changeFaults(oven, uses, own, day.startMin));
  }
  return [...faults, ...changes.flatMap((e) => changeEntryFaults(e, usesOf))];
}
