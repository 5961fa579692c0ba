import { parseBindings } from '#lib/episode/binding';
import type { Episode } from '#lib/episode/schema';
import type { Nutrient } from '#lib/foods/nutrients';
import type { Region } from '#lib/figures/line-parts';

/** What a dish shows, in the order of the region's panel: 21 CFR 101.9(c) or Reg. (EU) 1169/2011 Annex XV. */
export const SHOWN_NUTRIENTS: Readonly<Record<Region, readonly Nutrient[]>> = {
  US: [
    'energyKcal',
    'fat',
    'saturated',
    'cholesterol',
    'sodium',
    'carbohydrate',
    'fibre',
    'sugars',
    'protein',
  ],
  EU: [
    'energyKj',
    'energyKcal',
    'fat',
    'saturated',
    'carbohydrate',
    'sugars',
    'fibre',
    'protein',
    'salt',
  ],
};

/** The few that a person says and writes first: energy and the macros. */
export const HEADLINE_NUTRIENTS = [
  'energyKcal',
  'protein',
  'fat',
  'carbohydrate',
] as const satisfies readonly Nutrient[];

/**
 * What is counted for an episode: its region's panel, and after it whatever else a target or a sentence to say asks
 * for, each once.
 * @example countedNutrients(episode) // a US panel, and 'netCarbohydrate' where a target names it
 */
export function countedNutrients({
  region,
  targets,
  segments,
}: Pick<Episode, 'region' | 'targets' | 'segments'>): readonly Nutrient[] {
  const said = segments.flatMap(({ talkingPoints }) =>
    talkingPoints
      .flatMap(({ text }) => parseBindings(text))
      .flatMap((part) => (part.kind === 'number' ? [part.nutrient] : [])),
  );
  const aimed = targets.map(({ nutrient }) => nutrient);
  return [...new Set([...SHOWN_NUTRIENTS[region], ...aimed, ...said])];
}
