import type { EpisodeFile, FilmingDay, Oven, Segment, Step, StepLink } from '#lib/episode/schema';

/** A step of the day with its segment and the segment's place in viewing order. */
export interface DayStep {
  readonly step: Step;
  readonly segment: Segment;
  readonly order: number;
}

/** The parts of a file that one filming day is about, looked up once. */
export interface DayFacts {
  readonly day: FilmingDay;
  readonly ovens: readonly Oven[];
  readonly burners: number;
  readonly segments: readonly Segment[];
  readonly steps: readonly DayStep[];
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
export function dayFacts(file: EpisodeFile): DayFacts {
  const { day, kitchen, episode } = file;
  if (day === null) throw new Error('This episode has no filming day: there is nothing to plan');
  const byId = new Map(episode.segments.map((segment) => [segment.id, segment]));
  const segments = [...new Set(day.segments.map((entry) => entry.segmentId))].flatMap(
    (segmentId) => byId.get(segmentId) ?? [],
  );
  const steps = segments.flatMap((segment, order) =>
    segment.steps.map((step) => ({ step, segment, order })),
  );
  const stepById = new Map(steps.map((entry) => [entry.step.id, entry]));
  return {
    day,
    ovens: kitchen.ovens,
    burners: kitchen.burners,
    segments,
    steps,
    stepById,
    links: episode.links.filter(
      (link) => stepById.has(link.fromStepId) && stepById.has(link.toStepId),
    ),
    meals: segments.flatMap((segment) => {
      const eat = segment.steps.find((step) => step.role === 'eat');
      return eat === undefined ? [] : [{ stepId: eat.id, segment }];
    }),
  };
}

/** The steps after whose end a segment can be washed up. */
export function soilingSteps(segment: Segment): readonly Step[] {
  return segment.steps.filter((step) => SOILING.has(step.role));
}

/** The title of a step of the day; its id where the day does not have it. */
export function stepTitle(facts: DayFacts, stepId: string): string {
  return facts.stepById.get(stepId)?.step.title ?? stepId;
}
