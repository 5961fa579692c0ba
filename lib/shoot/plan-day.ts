import type { DayFile } from '#lib/episode/also-filmed';
import type { Episode } from '#lib/episode/schema';
import { brokenInWords, brokenWrap } from '#lib/shoot/broken-words';
import { cameraMoves } from '#lib/shoot/camera-entries';
import { cleanedSegments } from '#lib/shoot/contact-rules';
import { dayFacts, type DayFacts } from '#lib/shoot/day-facts';
import { clockText, degreesText } from '#lib/shoot/day-words';
import { floorMin } from '#lib/shoot/minutes';
import { reaches } from '#lib/shoot/oven-choice';
import { ovenEntries } from '#lib/shoot/oven-entries';
import type { BrokenRule, LotClock, PlanEntry, ShootPlan } from '#lib/shoot/plan';
import { plainEntry } from '#lib/shoot/plain-entry';
import { reasonFor } from '#lib/shoot/reasons';
import { ruleInWords } from '#lib/shoot/rule-words';
import { solveDay, type SolvedDay, type SolveOptions } from '#lib/shoot/solve-day';
import { cleanIdOf, taskIdOf, washIdOf } from '#lib/shoot/problem-parts';

/**
 * The shooting order of the file's filming day, in whole minutes after local midnight: the best of its kind as
 * far as a fixed effort finds and proves it (`solveDay`), which can take seconds.
 *
 * Law: equal file and seed give an equal plan; `feasible` keeps every must-rule of the day; `stuck`
 * names the broken ones in words and still places every step. Throws if the file has no filming day.
 */
export function planDay(file: DayFile, options: SolveOptions): ShootPlan {
  return dayPlan(file, solveDay(dayFacts(file), options));
}

/** The day in words, as it was solved: titles, reasons, heating, clocks of perishable food, broken rules. */
export function dayPlan(file: DayFile, solved: SolvedDay): ShootPlan {
  const facts = dayFacts(file);
  const { choice, originMin } = solved;
  const startOf = new Map(solved.placed.map((placed) => [placed.id, placed]));
  const minutes = (id: string): { startMin: number; endMin: number } => {
    const placed = startOf.get(id);
    if (placed === undefined) throw new Error(`The planner left out "${id}"`);
    return { startMin: placed.start + originMin, endMin: placed.end + originMin };
  };
  const own = [
    ...facts.steps.map(({ step, segment }): PlanEntry => ({
      id: taskIdOf(step.id),
      kind: 'step',
      stepId: step.id,
      segmentId: segment.id,
      title: step.title,
      ...minutes(taskIdOf(step.id)),
      hands: step.hands,
      onCamera: step.onCamera,
      ovenId: choice.get(step.id) ?? null,
      milliC: step.oven?.milliC ?? null,
      racks: step.racks,
      burners: step.burners,
      why: '',
    })),
    ...facts.segments
      .filter((segment) => segment.washUpS > 0)
      .map((segment): PlanEntry => ({
        ...plainEntry(washIdOf(segment.id), 'washUp', `Wash up ${segment.title}`),
        segmentId: segment.id,
        ...minutes(washIdOf(segment.id)),
        hands: true,
      })),
    ...cleanedSegments(facts).map((segment): PlanEntry => ({
      ...plainEntry(cleanIdOf(segment.id), 'washUp', `Clean down after ${segment.title}`),
      segmentId: segment.id,
      ...minutes(cleanIdOf(segment.id)),
      hands: true,
    })),
  ];
  const given = [
    ...ovenEntries(facts, own, file.episode.region),
    ...facts.day.appointments.map((appointment): PlanEntry => ({
      ...plainEntry(`appointment:${appointment.id}`, 'appointment', appointment.title),
      startMin: appointment.startMin,
      endMin: appointment.endMin,
      hands: appointment.hands,
      why: `fixed at ${clockText(appointment.startMin)}`,
    })),
  ];
  const moves = cameraMoves(facts, [...own, ...given]);
  const all = [...own, ...given, ...moves.entries];
  const entries = all
    .map((entry) => (entry.why === '' ? { ...entry, why: reasonFor(entry, all, facts) } : entry))
    .sort(inOrder);
  const lots = lotClocks(facts, entries);
  const broken = uniqueRules([
    ...solved.broken.map((id) => brokenInWords(id, entries, lots, facts)),
    ...brokenAround(facts, entries, file.episode.region),
    ...moves.broken,
  ]);
  return {
    dayId: facts.day.id,
    date: facts.day.date,
    kind: facts.day.kind,
    startMin: facts.day.startMin,
    wrapMin: Math.max(facts.day.startMin, ...entries.map((entry) => entry.endMin)),
    status: broken.length === 0 ? 'feasible' : 'stuck',
    entries,
    lots,
    broken,
    proof: solved.proof,
    clash: solved.proof.clash.map((id) => ruleInWords(id, facts)),
  };
}

/** Start, then hands first, then id. */
function inOrder(a: PlanEntry, b: PlanEntry): number {
  return a.startMin - b.startMin || Number(b.hands) - Number(a.hands) || (a.id < b.id ? -1 : 1);
}

/** Minutes that each perishable lot stands unchilled; what is thrown away has no clock. */
function lotClocks(facts: DayFacts, entries: readonly PlanEntry[]): LotClock[] {
  const byStep = new Map(entries.map((entry) => [entry.stepId ?? '', entry]));
  return facts.segments.flatMap((segment) =>
    segment.perishables
      .filter((lot) => !lot.thrownAway)
      .map((lot) => ({
        perishableId: lot.id,
        segmentId: segment.id,
        name: lot.name,
        minutes: lot.spans.reduce((sum, span) => {
          const from = byStep.get(span.fromStepId);
          const to = byStep.get(span.toStepId);
          if (from === undefined || to === undefined) return sum;
          const out = span.fromAnchor === 'start' ? from.startMin : from.endMin;
          const back = span.toAnchor === 'start' ? to.startMin : to.endMin;
          return sum + Math.max(0, back - out);
        }, 0),
        limitMin: floorMin(lot.limitS),
      })),
  );
}

/** Rules that lie outside the planner's problem: appointments against each other, ovens that are missing. */
function brokenAround(
  facts: DayFacts,
  entries: readonly PlanEntry[],
  region: Episode['region'],
): BrokenRule[] {
  const broken: BrokenRule[] = [];
  const calls = entries.filter((entry) => entry.kind === 'appointment' && entry.hands);
  for (const [index, call] of calls.entries()) {
    const next = calls.slice(index + 1).find((other) => other.startMin < call.endMin);
    if (next === undefined) continue;
    broken.push({
      rule: 'appointments',
      message: `${call.title} and ${next.title} overlap, and both take your hands.`,
      stepIds: [],
    });
  }
  for (const entry of entries) {
    if (entry.kind !== 'step' || entry.milliC === null) continue;
    const message =
      entry.ovenId === null
        ? `${entry.title} needs an oven that this kitchen does not have.`
        : tooHot(entry.title, entry.ovenId, entry.milliC, facts, region);
    if (message === null) continue;
    broken.push({ rule: 'oven', message, stepIds: entry.stepId === null ? [] : [entry.stepId] });
  }
  const limit = facts.day.wrapByMin;
  if (limit !== null && entries.some((entry) => entry.endMin > limit)) {
    broken.push(brokenWrap(entries, facts));
  }
  return broken;
}

/** What a step asks of an oven that does not get so hot, with those that do; null where its oven does. */
function tooHot(
  title: string,
  ovenId: string,
  milliC: number,
  facts: DayFacts,
  region: Episode['region'],
): string | null {
  const oven = facts.ovens.find(({ id }) => id === ovenId);
  if (oven === undefined || reaches(oven, milliC)) return null;
  const degrees = (of: number) => degreesText(of, region);
  const hotter = facts.ovens.filter((other) => reaches(other, milliC)).map(({ name }) => name);
  const others = facts.ovens.filter(({ mostMilliC }) => mostMilliC !== null && mostMilliC < milliC);
  const most = others.map((other) => `${other.name} ${degrees(other.mostMilliC ?? 0)}`).join(', ');
  return hotter.length > 0
    ? `${title} asks for ${degrees(milliC)}, and ${oven.name} gets no hotter than ${degrees(oven.mostMilliC ?? 0)}: choose ${hotter.join(' or ')}.`
    : `${title} asks for ${degrees(milliC)}, and no oven of this kitchen gets so hot (${most}).`;
}

function uniqueRules(rules: readonly BrokenRule[]): BrokenRule[] {
  return rules.filter(
    (rule, index) => rules.findIndex((other) => other.message === rule.message) === index,
  );
}
