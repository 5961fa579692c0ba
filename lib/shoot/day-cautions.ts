import type { DayFile } from '#lib/episode/also-filmed';
import type { Segment } from '#lib/episode/schema';
import type { Caution } from '#lib/safety/caution';
import { rawFoodClass } from '#lib/safety/food-class';
import {
  COOLING_STAGES,
  insideTemperatureCaution,
  LEFTOVERS,
  TWO_HOURS,
} from '#lib/safety/general-cautions';
import { SAFE_TEMPERATURES, safeTemperature, type FoodClass } from '#lib/safety/safe-temperatures';

/** A step that reaches an inside temperature, and what the published chart says of it. */
export interface InsideTemperature {
  readonly stepId: string;
  readonly milliC: number;
  readonly restS: number;
  /** The step asks for less heat or rest than the chart does for a raw food of its segment; else null. */
  readonly below: Caution | null;
}

/** The kinds of raw food in a segment's ingredients that the chart has a row for. */
export function rawClasses(file: Pick<DayFile, 'foods'>, segment: Segment): ReadonlySet<FoodClass> {
  const foods = new Map(file.foods.map((food) => [food.id, food]));
  return new Set(
    (segment.recipe?.lines ?? []).flatMap((line) => {
      const food = foods.get(line.foodId ?? '');
      const found = food === undefined ? null : rawFoodClass(food, line.state);
      return found === null ? [] : [found];
    }),
  );
}

/** Inside temperatures of a segment's steps, each against the strictest row that fits its raw foods. */
export function insideTemperatures(
  file: Pick<DayFile, 'foods'>,
  segment: Segment,
): InsideTemperature[] {
  const strictest = [...rawClasses(file, segment)]
    .map(safeTemperature)
    .sort((a, b) => b.milliC - a.milliC || b.restS - a.restS)[0];
  return segment.steps.flatMap((step) => {
    if (step.coreMilliC === null) return [];
    const low =
      strictest !== undefined &&
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
 * The cautions that a filming day calls for: the inside temperatures of the raw foods in its dishes,
 * the two-hour rule, cooling and leftovers where anything is cooked. In the order of the chart.
 */
export function dayCautions(file: Pick<DayFile, 'foods'>, segments: readonly Segment[]): Caution[] {
  const raw = new Set(segments.flatMap((segment) => [...rawClasses(file, segment)]));
  const dishes = segments.some((segment) => segment.kind === 'recipe');
  return [
    ...SAFE_TEMPERATURES.filter((row) => raw.has(row.foodClass)).map(insideTemperatureCaution),
    ...(dishes ? [TWO_HOURS, COOLING_STAGES, LEFTOVERS] : []),
  ];
}
