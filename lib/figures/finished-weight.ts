import type { FinishedWeight } from '#lib/episode/finished-weight';
import type { Recipe } from '#lib/episode/recipe-schema';
import { divideParts, NOTHING, scaleParts, type Parts } from '#lib/figures/parts';

/**
 * The part of a dish that so many milligrams of the finished dish hold: divided by the reading and, where the
 * scale has one, by its accuracy.
 * @example shareByMass(whole, finished, 100_000) // per 100 g
 */
export function shareByMass(parts: Parts, finished: FinishedWeight, massMg: number): Parts {
  return finished.ids.reduce(
    (share, id) => divideParts(share, id, finished.sources),
    scaleParts(parts, massMg),
  );
}

/** A part by weight of a dish that was not weighed: open. */
export function withoutDivisor(recipe: Recipe): Parts {
  const missing = { lineId: recipe.id, text: recipe.title, reason: 'noDivisor' } as const;
  return { ...NOTHING, open: [missing] };
}
