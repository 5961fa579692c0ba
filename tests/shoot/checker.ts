import {
  downMinutes,
  minuteAt,
  nameOf,
  overlappingPairs,
  upMinutes,
  type Carried,
  type CheckedEntry,
  type CheckedEpisode,
  type CheckedFile,
  type CheckedPlan,
  type CheckedStep,
  type Facts,
} from './checker-data';
import { ovenFaults } from './checker-ovens';
import { keptFaults } from './checker-kept';
import { lotFaults, mealFaults, washUpFaults } from './checker-segments';

/** The hands, the kitchen and the day are one, however many episodes are filmed. */
const episodesOf = (file: CheckedFile): CheckedEpisode[] => [file.episode, ...(file.also ?? [])];

/** Every step filmed that day has one entry; which steps have exactly one, and what is wrong with the rest. */
function carriedSteps(file: CheckedFile, plan: CheckedPlan, segmentIds: readonly string[]) {
  const faults: string[] = [];
  const carried = new Map<string, Carried>();
  const segments = segmentIds.flatMap((id) =>
    episodesOf(file).flatMap((episode) => episode.segments.filter((s) => s.id === id)),
  );
  const partOf = new Map(file.day?.segments.map(({ segmentId, part }) => [segmentId, part]));
  for (const segment of segments) {
    for (const step of segment.steps) {
      if (step.evening || !inPart(step, partOf.get(segment.id))) continue;
      const entries = plan.entries.filter((e) => e.kind === 'step' && e.stepId === step.id);
      const [entry] = entries;
      if (entry && entries.length === 1) carried.set(step.id, { step, segment, entry });
      else faults.push(`steps: "${step.title}" (${step.id}) has ${entries.length} entries`);
    }
  }
  const known = new Set(
    segments.flatMap((s) =>
      s.steps
        .filter((step) => !step.evening && inPart(step, partOf.get(s.id)))
        .map((step) => step.id),
    ),
  );
  for (const entry of plan.entries) {
    if (entry.kind === 'step' && !known.has(entry.stepId ?? '')) {
      faults.push(`steps: ${nameOf(entry)} carries out a step that is not filmed that day`);
    }
  }
  return { faults, carried, segments };
}

/** Showing and eating is filming a dish, all else is cooking it. */
function inPart({ role }: CheckedStep, part = 'all'): boolean {
  return part === 'all' || ['shoot', 'talk', 'taste', 'eat'].includes(role) === (part === 'film');
}

/** An entry's length is the step's usual length, or lies in the range that the plan may choose from. */
function lengthFits(step: CheckedStep, minutes: number): boolean {
  const least = step.usualS > 0 ? 1 : 0;
  if (minutes < least) return false;
  if (minutes === upMinutes(step.usualS)) return true;
  if (step.choose === null) return false;
  return minutes >= upMinutes(step.choose.minS) && minutes <= upMinutes(step.choose.maxS);
}

/** What a step's entry says of itself is what the step says. */
function stepFaults({ carried }: Facts): string[] {
  return [...carried.values()].flatMap(({ step, segment, entry }) => {
    const faults: string[] = [];
    const minutes = entry.endMin - entry.startMin;
    if (!lengthFits(step, minutes)) {
      faults.push(`length: ${nameOf(entry)} takes ${minutes} min, ${step.usualS} s are usual`);
    }
    const same =
      entry.segmentId === segment.id &&
      entry.hands === step.hands &&
      entry.onCamera === step.onCamera &&
      entry.burners === step.burners &&
      entry.racks === step.racks;
    if (!same) faults.push(`steps: ${nameOf(entry)} does not state what its step needs`);
    return faults;
  });
}

/** Whole minutes, nothing before the day's start, no step before its pin. */
function startFaults({ day, plan, carried }: Facts): string[] {
  const faults: string[] = [];
  for (const entry of plan.entries) {
    if (!Number.isInteger(entry.startMin) || !Number.isInteger(entry.endMin)) {
      faults.push(`minutes: ${nameOf(entry)} is not in whole minutes`);
    }
    if (entry.endMin < entry.startMin)
      faults.push(`minutes: ${nameOf(entry)} ends before it starts`);
    if (entry.kind !== 'appointment' && entry.startMin < day.startMin) {
      faults.push(`start: ${nameOf(entry)} starts before the day at ${day.startMin}`);
    }
  }
  for (const pin of day.pins) {
    const entry = carried.get(pin.stepId)?.entry;
    if (entry && pin.notAfterMin !== null && entry.startMin > pin.notAfterMin) {
      faults.push(`pin: ${nameOf(entry)} starts after its pin at ${pin.notAfterMin}`);
    }
    if (entry && pin.notBeforeMin !== null && entry.startMin < pin.notBeforeMin) {
      faults.push(`pin: ${nameOf(entry)} starts before its pin at ${pin.notBeforeMin}`);
    }
  }
  return faults;
}

/** Least lags round up to minutes, greatest lags round down; links to steps of another day do not bind. */
function linkFaults({ file, carried }: Facts): string[] {
  const links = episodesOf(file).flatMap((episode) => episode.links);
  return links.flatMap((link) => {
    const from = carried.get(link.fromStepId)?.entry;
    const to = carried.get(link.toStepId)?.entry;
    if (!from || !to) return [];
    const lag = minuteAt(to, link.toAnchor) - minuteAt(from, link.fromAnchor);
    const text = `"${link.reason}" (${link.id}) from ${link.fromAnchor} of ${nameOf(from)} to ${link.toAnchor} of ${nameOf(to)} is ${lag} min`;
    const faults: string[] = [];
    if (link.minLagS !== null && lag < upMinutes(link.minLagS)) {
      faults.push(`least lag: ${text}, at least ${upMinutes(link.minLagS)} asked`);
    }
    if (link.maxLagS !== null && lag > downMinutes(link.maxLagS)) {
      faults.push(`greatest lag: ${text}, at most ${downMinutes(link.maxLagS)} allowed`);
    }
    return faults;
  });
}

/** One pair of hands, one camera, so many burners. Steps count by what they need, not by what they state. */
function resourceFaults({ file, plan, carried }: Facts): string[] {
  const needs = (e: CheckedEntry) => (e.stepId === null ? undefined : carried.get(e.stepId)?.step);
  const hands = plan.entries.filter((e) => needs(e)?.hands ?? e.hands);
  const filmed = plan.entries.filter((e) => needs(e)?.onCamera ?? e.onCamera);
  const burnersOf = (e: CheckedEntry) => needs(e)?.burners ?? e.burners;
  const burners = plan.entries.flatMap(({ startMin }) => {
    const sum = plan.entries
      .filter((e) => e.startMin <= startMin && startMin < e.endMin)
      .reduce((total, e) => total + burnersOf(e), 0);
    return sum > file.kitchen.burners
      ? [`burners: ${sum} in use at ${startMin}, the kitchen has ${file.kitchen.burners}`]
      : [];
  });
  return [
    ...overlappingPairs(hands).map(([a, b]) => `hands: ${nameOf(a)} and ${nameOf(b)} overlap`),
    ...overlappingPairs(filmed).map(([a, b]) => `camera: ${nameOf(a)} and ${nameOf(b)} overlap`),
    ...new Set(burners),
  ];
}

/** Each appointment stands once at exactly its time. */
function appointmentFaults({ day, plan }: Facts): string[] {
  const entries = plan.entries.filter((e) => e.kind === 'appointment');
  const free = new Set(entries);
  const faults = day.appointments.flatMap((a) => {
    const entry = [...free].find(
      (e) =>
        e.startMin === a.startMin &&
        e.endMin === a.endMin &&
        e.hands === a.hands &&
        e.title.includes(a.title),
    );
    if (!entry)
      return [`appointment: "${a.title}" ${a.startMin}–${a.endMin} has no entry at its time`];
    free.delete(entry);
    return [];
  });
  return [...faults, ...[...free].map((e) => `appointment: ${nameOf(e)} is none of that day's`)];
}

/** Start, then hands first, then id. */
function inOrder(a: CheckedEntry, b: CheckedEntry): boolean {
  if (a.startMin !== b.startMin) return a.startMin < b.startMin;
  if (a.hands !== b.hands) return a.hands;
  return a.id < b.id;
}

/** The plan as a whole: whose day it is, wrap, order, ids, reasons, status. */
function wholeFaults({ day, plan }: Facts): string[] {
  const faults: string[] = [];
  const { entries } = plan;
  const last = Math.max(day.startMin, ...entries.map((e) => e.endMin));
  if (plan.wrapMin !== last)
    faults.push(`wrap: the plan says ${plan.wrapMin}, the last entry ends ${last}`);
  if (day.wrapByMin !== null && plan.wrapMin > day.wrapByMin) {
    faults.push(`wrap: ${plan.wrapMin} is later than ${day.wrapByMin}, the latest allowed`);
  }
  entries.forEach((entry, i) => {
    const before = entries[i - 1];
    if (before && before.id !== entry.id && !inOrder(before, entry)) {
      faults.push(`order: ${nameOf(entry)} stands after ${nameOf(before)}`);
    }
    if (entry.why.trim() === '') faults.push(`why: ${nameOf(entry)} gives no reason`);
  });
  const seen = new Set<string>();
  for (const { id } of entries) {
    if (seen.has(id)) faults.push(`ids: ${id} is used twice`);
    seen.add(id);
  }
  const same =
    plan.dayId === day.id &&
    plan.date === day.date &&
    plan.kind === day.kind &&
    plan.startMin === day.startMin;
  if (!same) faults.push('day: the plan is of another day, date, kind or start');
  if ((plan.status === 'feasible') !== (plan.broken.length === 0)) {
    faults.push(`status: ${plan.status} with ${plan.broken.length} broken rules`);
  }
  return faults;
}

/**
 * The faults of a shooting order against its episode file, in words; empty if every rule is kept.
 *
 * It reads plain data alone and shares no code with whatever made the order. Each fault begins with the
 * rule's name and a colon. Times are minutes of the filming day. Example: an order whose oven is not heated
 * in time gives "changeover: Oven from 20 °C to 200 °C before … has 5 min and needs 12".
 */
export function checkPlan(file: CheckedFile, plan: CheckedPlan): string[] {
  const { day } = file;
  if (day === null) return ['day: the file has no filming day'];
  const segmentIds = [...new Set(day.segments.map((s) => s.segmentId))];
  const { faults, carried, segments } = carriedSteps(file, plan, segmentIds);
  const facts: Facts = { file, day, plan, segments, carried };
  return [
    ...faults,
    ...stepFaults(facts),
    ...startFaults(facts),
    ...linkFaults(facts),
    ...resourceFaults(facts),
    ...ovenFaults(facts),
    ...lotFaults(facts),
    ...washUpFaults(facts),
    ...mealFaults(facts),
    ...appointmentFaults(facts),
    ...keptFaults(facts),
    ...wholeFaults(facts),
  ];
}
