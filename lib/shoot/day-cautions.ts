import type { Segment } from '#lib/episode/schema';
import type { Caution } from '#lib/safety/caution';
import {
  COOLING_STAGES,
  insideTemperatureCaution,
  LEFTOVERS,
  TWO_HOURS,
} from '#lib/safety/general-cautions';
import {
  SAFE_TEMPERATURES,
  safeTemperature,
  type SafeTemperature,
} from '#lib/safety/safe-temperatures';
import { mayGoInRaw, type FoodsAndRecipes } from '#lib/shoot/may-go-in-raw';

/** A step that reaches an inside temperature, and what the published chart says of it. */
export interface InsideTemperature {
  readonly stepId: string;
  readonly milliC: number;
  readonly restS: number;
  /** The step asks for less heat or rest than the chart does for a raw food of its segment; else null. */
  readonly below: Caution | null;
}

/** The strictest row of the chart for what may go into a segment raw; null where it has none. */
export function strictestRow(file: FoodsAndRecipes, segment: Segment): SafeTemperature | null {
  const [first] = mayGoInRaw(file, segment);
  return first ? safeTemperature(first.foodClass) : null;
}

/** Inside temperatures of a segment's steps, each against the strictest row that fits its raw foods. */
export function insideTemperatures(file: FoodsAndRecipes, segment: Segment): InsideTemperature[] {
  const strictest = strictestRow(file, segment);
  return segment.steps.flatMap((step) => {
    if (step.coreMilliC === null) return [];
    const low =
      strictest !== null &&
      (step.coreMilliC < strictest.milliC ||
        (step.coreMilliC === strictest.milliC && step.restS < strictest.restS));
    return [
      {
        stepId: step.id,
        milliC: step.coreMilliC,
        restS: step.restS,
        below: low ? insideTemperatureCaution(strictest) : null,
      },
    ];
  });
}

/**
 * The cautions that a filming day calls for: the inside temperatures of what may go into its dishes raw,
 * the two-hour rule, cooling and leftovers where anything is cooked. In the order of the chart.
 */
export function dayCautions(file: FoodsAndRecipes, segments: readonly Segment[]): Caution[] {
  const raw = new Set(
    segments.flatMap((segment) => mayGoInRaw(file, segment).map(({ foodClass }) => foodClass)),
  );
  const dishes = segments.some((segment) => segment.kind === 'recipe');
  return [
    ...SAFE_TEMPERATURES.filter((row) => raw.has(row.foodClass)).map(insideTemperatureCaution),
    ...(dishes ? [TWO_HOURS, COOLING_STAGES, LEFTOVERS] : []),
  ];
}
