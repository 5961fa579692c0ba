import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { figureStatus, type Figure } from '#lib/figures/figure';
import type { Nutrient } from '#lib/foods/nutrients';
import { trueKitchen, type TrueKitchen } from '../support/true-kitchen';
import { uniform } from '../support/uniform';

/** How often the truth lay where the figures say, over every figure of every file and many true kitchens of each. */
export interface Coverage {
  readonly figures: number;
  readonly truths: number;
  /** Share inside the hard bound. */
  readonly hard: number;
  /** Share inside the likely bound. */
  readonly likely: number;
  /** The same of the figure that the likely bound fits worst. */
  readonly worst: number;
  /** Share inside the bound that a comparison proposes instead; null without one. */
  readonly instead: number | null;
  /** How far into its hard bound the truth was seen, 1 being all of it, on the widest-ranging figure. */
  readonly reached: number;
}

/** A bound that somebody else might take, for one figure of a whole dish. */
export type Instead = (file: EpisodeFile, nutrient: Nutrient) => readonly [number, number];

interface Target {
  readonly figure: Figure;
  readonly truth: (kitchen: TrueKitchen) => number;
  readonly instead: readonly [number, number] | null;
}

/** Draws true kitchens of each file and counts. */
export function coverage(
  files: readonly EpisodeFile[],
  nutrients: readonly Nutrient[],
  kitchens: number,
  seed: number,
  instead?: Instead,
): Coverage {
  const random = uniform(seed);
  let [truths, hard, likely, other, figures] = [0, 0, 0, 0, 0];
  let worst = 1;
  let reached = 0;
  for (const file of files) {
    const targets = targetsOf(file, nutrients, instead);
    const inside = targets.map(() => 0);
    const seen = targets.map(() => ({ low: Infinity, high: -Infinity }));
    for (let run = 0; run < kitchens; run += 1) {
      const kitchen = trueKitchen(file, random);
      targets.forEach(({ figure, truth, instead: proposed }, index) => {
        const value = truth(kitchen);
        const within = (low: number | null, high: number | null) =>
          low !== null && high !== null && value >= low && value <= high;
        truths += 1;
        if (within(figure.low, figure.high)) hard += 1;
        if (within(figure.likelyLow, figure.likelyHigh)) {
          likely += 1;
          inside[index] = (inside[index] ?? 0) + 1;
        }
        if (proposed && within(...proposed)) other += 1;
        const range = seen[index];
        if (range) {
          range.low = Math.min(range.low, value);
          range.high = Math.max(range.high, value);
        }
      });
    }
    figures += targets.length;
    worst = Math.min(worst, ...inside.map((each) => each / kitchens));
    targets.forEach(({ figure }, index) => {
      const range = seen[index];
      const width = (figure.high ?? 0) - (figure.low ?? 0);
      if (range) reached = Math.max(reached, (range.high - range.low) / width);
    });
  }
  return {
    figures,
    truths,
    hard: hard / truths,
    likely: likely / truths,
    worst,
    instead: instead ? other / truths : null,
    reached,
  };
}

/** Every figure of a file that is known, beside the way to its truth. */
function targetsOf(
  file: EpisodeFile,
  nutrients: readonly Nutrient[],
  instead: Instead | undefined,
): Target[] {
  const all = episodeFigures(file, nutrients);
  return nutrients.flatMap((nutrient): Target[] => {
    const target = (figure: Figure | undefined, truth: Target['truth'], proposed = false) => {
      if (!figure || figureStatus(figure) !== 'known') throw new Error(`${nutrient} is not known`);
      return { figure, truth, instead: proposed && instead ? instead(file, nutrient) : null };
    };
    const dishes = all.dishes.flatMap(({ segmentId, whole, per100g, portions }) => [
      target(whole[nutrient], (kitchen) => kitchen.whole(segmentId, nutrient), true),
      ...(per100g && !instead
        ? [target(per100g[nutrient], (kitchen) => kitchen.per100g(segmentId, nutrient))]
        : []),
      ...(instead
        ? []
        : portions.map(({ portionId, figures }) =>
            target(figures[nutrient], (kitchen) => kitchen.portion(segmentId, portionId, nutrient)),
          )),
    ]);
    if (instead) return dishes;
    return [...dishes, target(all.day[nutrient], (kitchen) => kitchen.day(nutrient))];
  });
}
