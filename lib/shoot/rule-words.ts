import type { StepLink } from '#lib/episode/step-schema';
import { HORIZON } from '#lib/planner/broken-rules';
import { stepTitle, type DayFacts } from '#lib/shoot/day-facts';
import { keptRule } from '#lib/shoot/kept-rules';
import { clockText, minutesText } from '#lib/shoot/day-words';
import { ceilMin, floorMin, lengthRange } from '#lib/shoot/minutes';
import { windowWords } from '#lib/shoot/step-window';

/**
 * A rule of the day by its id in the problem, in words that say what it asks, not that it is broken.
 *
 * @example ruleInWords('lot:crumb', facts) // 'The crumb stands unchilled for at most 2 h.'
 */
export function ruleInWords(id: string, facts: DayFacts): string {
  const cut = id.indexOf(':');
  const kind = cut < 0 ? id : id.slice(0, cut);
  const own = id.slice(cut + 1);
  const segmentOf = (segmentId: string): string =>
    facts.segments.find((segment) => segment.id === segmentId)?.title ?? segmentId;
  switch (kind) {
    case 'link':
      return link(own, facts);
    case 'lot': {
      const lot = facts.segments
        .flatMap(({ perishables }) => perishables)
        .find((perishable) => perishable.id === own);
      const most = minutesText(floorMin(lot?.limitS ?? 0));
      return `${lot?.name ?? own} stands unchilled for at most ${most}.`;
    }
    case 'step':
      return step(own, facts);
    case 'wash': {
      const [segmentId = own, stepId] = own.split(':');
      return stepId === undefined
        ? `${segmentOf(segmentId)} is washed up.`
        : `${segmentOf(segmentId)} is washed up after ${stepTitle(facts, stepId)}.`;
    }
    case 'order':
      return `${stepTitle(facts, own)} comes in viewing order: not after the next meal.`;
    case 'gap':
      return `The next meal begins at least ${minutesText(facts.day.mealGapMin)} after ${stepTitle(facts, own)} begins.`;
    case 'meal':
    case 'meals':
      return `Meals begin at least ${minutesText(facts.day.mealGapMin)} apart.`;
    case 'use':
      return `${stepTitle(facts, own.split(':')[0] ?? own)} takes one of the ovens.`;
    case HORIZON:
      return facts.day.wrapByMin === null
        ? 'The day ends within ten days.'
        : `The day is done, washed up, by ${clockText(facts.day.wrapByMin)}.`;
    default:
      return keptRule(kind, own, facts)?.words ?? resource(kind, own, facts);
  }
}

function link(id: string, facts: DayFacts): string {
  const found = facts.links.find((each) => each.id === id);
  if (found === undefined) return `A tie between two steps (${id}).`;
  return `The ${found.toAnchor} of ${stepTitle(facts, found.toStepId)} comes ${tieAsks(found)} the ${found.fromAnchor} of ${stepTitle(facts, found.fromStepId)}${reasonOf(found)}.`;
}

/** What a tie asks of the time from one step to the other: "at least 5 min and at most 1 h after", or "after". */
export function tieAsks({ minLagS, maxLagS }: StepLink): string {
  const least = !minLagS ? null : `at least ${minutesText(ceilMin(minLagS))}`;
  const most = maxLagS === null ? null : `at most ${minutesText(floorMin(maxLagS))}`;
  const asked = [least, most].filter((part) => part !== null).join(' and ');
  return asked === '' ? 'after' : `${asked} after`;
}

/** Why a tie is there, in brackets; empty where nothing was said. */
export const reasonOf = ({ reason }: StepLink): string => (reason === '' ? '' : ` (${reason})`);

function step(id: string, facts: DayFacts): string {
  const found = facts.stepById.get(id)?.step;
  if (found === undefined) return `A step (${id}) has its time.`;
  const { min, max } = lengthRange(found);
  const length = min === max ? minutesText(min) : `${minutesText(min)} to ${minutesText(max)}`;
  return `${found.title} takes ${length}: ${windowWords(found, facts)}.`;
}

function resource(kind: string, own: string, facts: DayFacts): string {
  const oven = facts.ovens.find((each) => each.id === own);
  switch (kind) {
    case 'hands':
      return 'There is one pair of hands.';
    case 'camera':
      return 'There is one camera.';
    case 'burners':
      return `There are ${facts.burners} burners.`;
    case 'racks':
      return `${oven?.name ?? 'The oven'} has ${oven?.racks ?? 0} racks.`;
    case 'oven':
      return `${oven?.name ?? 'The oven'} holds one temperature at a time and takes its time to change it.`;
    default:
      return `A rule (${kind}).`;
  }
}
