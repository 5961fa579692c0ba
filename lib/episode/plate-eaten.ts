import type { MassRange } from '#lib/episode/fields';

/**
 * What was eaten off a plate that was weighed before and after: each reading is ± half of what one step of the scale
 * shows, so their difference is ± a whole one. Null where more is on the plate after than before.
 * @param resolutionMg what one step of the scale shows, in milligrams
 * @example plateEaten(812_000, 460_000, 1000) // 351 to 353 g, 352 in the middle
 */
export function plateEaten(
  beforeMg: number,
  afterMg: number,
  resolutionMg: number,
): MassRange | null {
  const valueMg = beforeMg - afterMg;
  if (valueMg <= 0) return null;
  return {
    lowMg: Math.max(0, valueMg - resolutionMg),
    valueMg,
    highMg: valueMg + resolutionMg,
  };
}

/**
 * Grams that were typed without a range: ± half of what one step of the scale shows. With a range they stand.
 * @example typedGrams({ lowMg: 350_000, valueMg: 350_000, highMg: 350_000 }, 1000) // 349.5 to 350.5 g
 */
export function typedGrams(mass: MassRange, resolutionMg: number): MassRange {
  if (mass.lowMg !== mass.highMg) return mass;
  const half = Math.ceil(resolutionMg / 2);
  const { valueMg } = mass;
  return { lowMg: Math.max(0, valueMg - half), valueMg, highMg: valueMg + half };
}
