import { filmedTogether, type DayFile } from '#lib/episode/also-filmed';
import type { FilmingDay } from '#lib/episode/day-schema';
import type { Appliance, Kitchen, Oven } from '#lib/episode/kitchen-schema';
import type { Segment } from '#lib/episode/schema';
import type { Step, StepLink } from '#lib/episode/step-schema';
import { daylightAt } from '#lib/shoot/daylight';

/** A step of the day with its segment and the segment's place in viewing order. */
export interface DayStep {
  readonly step: Step;
  readonly segment: Segment;
  readonly order: number;
}

/** The parts of a file that one filming day is about, looked up once; of all episodes that are filmed on it. */
export interface DayFacts {
  readonly day: FilmingDay;
  readonly ovens: readonly Oven[];
  readonly burners: number;
  readonly appliances: readonly Appliance[];
  /** Places on the counter, and seconds to move the camera; null where they are not counted. */
  readonly counterPlaces: number | null;
  readonly cameraChangeS: number | null;
  /** Seconds of a clean-down after raw animal food. */
  readonly cleanDownS: number;
  /**
   * Minutes between which what needs daylight stands, kept off sunrise and sunset by the day's margin; `until` before
   * `from` where there is no such light. Null where the kitchen's place is not known or the sun never sets.
   */
  readonly light: { readonly fromMin: number; readonly untilMin: number } | null;
  /** Each with the steps that it has on the day. */
  readonly segments: readonly Segment[];
  readonly steps: readonly DayStep[];
  /** What is done before the day, the evening before. */
  readonly evening: readonly DayStep[];
  readonly stepById: ReadonlyMap<string, DayStep>;
  /** Links between two steps that both belong to the day. */
  readonly links: readonly StepLink[];
  /** The first 'eat' step of each segment that has one, in viewing order. */
  readonly meals: readonly { readonly stepId: string; readonly segment: Segment }[];
}

/** Roles after which nothing of a segment gets dirty any more, once the last of them has ended. */
const SOILING: ReadonlySet<Step['role']> = new Set(['prep', 'cook', 'shoot', 'taste']);

/**
 * Looks up what the filming day is about. A segment listed twice is filmed once; segments and links
 * that lead to nothing are left out. Throws if the file has no filming day: ask for `file.day` first.
 */
export function dayFacts(file: DayFile): DayFacts {
  const { day, kitchen, episode } = filmedTogether(file);
  if (day === null) throw new Error('This episode has no filming day: there is nothing to plan');
  const byId = new Map(episode.segments.map((segment) => [segment.id, segment]));
  const partOf = new Map<string, Part>();
  for (const { segmentId, part } of day.segments) {
    // Cooked and filmed on one day is all of it.
    partOf.set(segmentId, (partOf.get(segmentId) ?? part) === part ? part : 'all');
  }
  const whole = [...partOf].flatMap(([segmentId, part]) => {
    const segment = byId.get(segmentId);
    if (segment === undefined) return [];
    return [{ ...segment, steps: segment.steps.filter(({ role }) => isPartOf(role, part)) }];
  });
  const segments = whole.map((segment) => ({
    ...segment,
    steps: segment.steps.filter(({ evening }) => !evening),
  }));
  const stepsOf = (all: readonly Segment[]): DayStep[] =>
    all.flatMap((segment, order) => segment.steps.map((step) => ({ step, segment, order })));
  const steps = stepsOf(segments);
  const stepById = new Map(steps.map((entry) => [entry.step.id, entry]));
  return {
    day,
    ovens: kitchen.ovens,
    burners: kitchen.burners,
    appliances: kitchen.appliances,
    counterPlaces: kitchen.counterPlaces,
    cameraChangeS: kitchen.cameraChangeS,
    cleanDownS: kitchen.cleanDownS,
    light: lightOf(kitchen, day),
    segments,
    steps,
    evening: stepsOf(whole).filter(({ step }) => step.evening),
    stepById,
    links: episode.links.filter(
      (link) => stepById.has(link.fromStepId) && stepById.has(link.toStepId),
    ),
    meals: segments.flatMap((segment) => {
      const eat = segment.steps.find(({ role }) => role === 'eat');
      return eat === undefined ? [] : [{ stepId: eat.id, segment }];
    }),
  };
}

type Part = FilmingDay['segments'][number]['part'];

/** Roles that belong to showing a dish, not to making it. */
const SHOWING: ReadonlySet<Step['role']> = new Set(['shoot', 'talk', 'taste', 'eat']);

function isPartOf(role: Step['role'], part: Part): boolean {
  return part === 'all' || SHOWING.has(role) === (part === 'film');
}

function lightOf(kitchen: Kitchen, day: FilmingDay): DayFacts['light'] {
  const sun = daylightAt(kitchen, day.date);
  if (sun === null || sun.kind === 'alwaysUp') return null;
  if (sun.kind === 'alwaysDown') return { fromMin: 0, untilMin: -1 };
  return { fromMin: sun.riseMin + day.lightMarginMin, untilMin: sun.setMin - day.lightMarginMin };
}

/** The steps after whose end a segment can be washed up. */
export function soilingSteps(segment: Segment): readonly Step[] {
  return segment.steps.filter((step) => SOILING.has(step.role));
}

/** The title of a step of the day; its id where the day does not have it. */
export function stepTitle(facts: DayFacts, stepId: string): string {
  return facts.stepById.get(stepId)?.step.title ?? stepId;
}
