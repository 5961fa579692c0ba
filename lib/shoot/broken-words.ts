import { HORIZON } from '#lib/planner/broken-rules';
import type { Anchor } from '#lib/planner/problem';
import { stepTitle, type DayFacts } from '#lib/shoot/day-facts';
import { clockText, minutesText } from '#lib/shoot/day-words';
import type { BrokenRule, LotClock, PlanEntry } from '#lib/shoot/plan';
import { keptRule } from '#lib/shoot/kept-rules';
import { reasonOf, tieAsks } from '#lib/shoot/rule-words';
import { windowWords } from '#lib/shoot/step-window';

/** A broken rule of the planner, by its id in the problem, in the words of the day. */
export function brokenInWords(
  id: string,
  entries: readonly PlanEntry[],
  lots: readonly LotClock[],
  facts: DayFacts,
): BrokenRule {
  const own = id.slice(id.indexOf(':') + 1);
  const kind = id.includes(':') ? id.slice(0, id.indexOf(':')) : id;
  switch (kind) {
    case 'link':
      return brokenLink(own, entries, facts);
    case 'lot': {
      const lot = lots.find((clock) => clock.perishableId === own);
      const perishable = facts.segments
        .flatMap((segment) => segment.perishables)
        .find((p) => p.id === own);
      return {
        rule: 'perishable',
        message: `${lot?.name ?? own} stands unchilled for ${minutesText(lot?.minutes ?? 0)}; at most ${minutesText(lot?.limitMin ?? 0)} is allowed. Chill it in between, or throw it away.`,
        stepIds: [...new Set((perishable?.spans ?? []).flatMap((s) => [s.fromStepId, s.toStepId]))],
      };
    }
    case 'step':
      return {
        rule: 'start',
        message: outsideWindow(own, facts),
        stepIds: [own],
      };
    case 'wash':
      return {
        rule: 'washing-up',
        message: 'A washing-up starts before its segment is done.',
        stepIds: [],
      };
    case 'order':
    case 'gap':
    case 'meal':
    case 'meals':
      return {
        rule: 'meals',
        message: `The meals cannot stand in viewing order and ${minutesText(facts.day.mealGapMin)} apart.`,
        stepIds: facts.meals.map((meal) => meal.stepId),
      };
    case HORIZON:
      return brokenWrap(entries, facts);
    default: {
      const kept = keptRule(kind, own, facts);
      if (kept === null) return brokenResource(kind, own, entries, facts);
      return {
        rule: kept.rule,
        message: `Not kept: ${kept.words}`,
        stepIds: kept.stepIds,
      };
    }
  }
}

function outsideWindow(stepId: string, facts: DayFacts): string {
  const found = facts.stepById.get(stepId)?.step;
  const asked = found === undefined ? 'its time' : windowWords(found, facts);
  return `${stepTitle(facts, stepId)} cannot stand where it is asked to: ${asked}.`;
}

/** The wrap time that was asked for and the one that the plan reaches. */
export function brokenWrap(entries: readonly PlanEntry[], facts: DayFacts): BrokenRule {
  const limit = facts.day.wrapByMin ?? 0;
  const late = entries.filter((entry) => entry.endMin > limit);
  const wrapMin = Math.max(facts.day.startMin, ...entries.map((entry) => entry.endMin));
  return {
    rule: 'wrap',
    message: `The day wraps at ${clockText(wrapMin)}; it should be done by ${clockText(limit)}.`,
    stepIds: late.flatMap((entry) => (entry.stepId === null ? [] : [entry.stepId])),
  };
}

function brokenLink(id: string, entries: readonly PlanEntry[], facts: DayFacts): BrokenRule {
  const link = facts.links.find((candidate) => candidate.id === id);
  const from = entries.find((entry) => entry.stepId === link?.fromStepId);
  const to = entries.find((entry) => entry.stepId === link?.toStepId);
  if (link === undefined || from === undefined || to === undefined) {
    return { rule: 'link', message: `A link (${id}) cannot be kept.`, stepIds: [] };
  }
  const at = (entry: PlanEntry, anchor: Anchor): number =>
    anchor === 'start' ? entry.startMin : entry.endMin;
  const gap = at(to, link.toAnchor) - at(from, link.fromAnchor);
  const found = gap < 0 ? `${minutesText(-gap)} before it` : `${minutesText(gap)} after it`;
  return {
    rule: 'link',
    message: `The ${link.toAnchor} of ${to.title} should come ${tieAsks(link)} the ${link.fromAnchor} of ${from.title}${reasonOf(link)}; here it comes ${found}.`,
    stepIds: [link.fromStepId, link.toStepId],
  };
}

function brokenResource(
  kind: string,
  own: string,
  entries: readonly PlanEntry[],
  facts: DayFacts,
): BrokenRule {
  const oven = facts.ovens.find((candidate) => candidate.id === own);
  const uses = (entry: PlanEntry): boolean => {
    if (kind === 'hands') return entry.hands;
    if (kind === 'camera') return entry.onCamera;
    if (kind === 'burners') return entry.burners > 0;
    return entry.stepId !== null && entry.ovenId === own;
  };
  const users = entries.filter(uses);
  const units = kind === 'burners' ? facts.burners : kind === 'racks' ? (oven?.racks ?? 0) : 1;
  const takes = (entry: PlanEntry): number =>
    kind === 'burners' ? entry.burners : kind === 'racks' ? entry.racks : 1;
  const clashing = users.filter(
    (a) =>
      takes(a) > units ||
      kind === 'oven' ||
      users.some((b) => b.id !== a.id && a.startMin < b.endMin && b.startMin < a.endMin),
  );
  const words: Readonly<Record<string, string>> = {
    hands: 'More than one thing needs your hands at the same time',
    camera: 'More than one thing needs the camera at the same time',
    burners: `More burners are needed at once than the kitchen has (${facts.burners})`,
    racks: `More racks are needed at once than ${oven?.name ?? 'the oven'} has (${units})`,
    oven: `${oven?.name ?? 'The oven'} cannot be at the temperatures that these steps need in time`,
  };
  const titles = clashing.map((entry) => entry.title).slice(0, 6);
  return {
    rule: kind,
    message: `${words[kind] ?? `A rule (${kind}) cannot be kept`}: ${titles.join('; ')}.`,
    stepIds: clashing.flatMap((entry) => (entry.stepId === null ? [] : [entry.stepId])),
  };
}
