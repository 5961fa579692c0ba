import type { AmountContext } from '#lib/episode/context';
import { readingAmount, type ReadingAmount } from '#lib/episode/reading';
import type { Recipe, Weighing } from '#lib/episode/schema';
import { divideParts, NOTHING, scaleParts, type Parts } from '#lib/figures/parts';
import { boundsOf } from '#lib/units/bounds';
import type { Interval } from '#lib/units/interval';

export interface FinishedWeight extends ReadingAmount {
  /** Milligrams with the bounds of the reading and the scale. */
  readonly interval: Interval;
}

/** The latest reading of the finished dish, less its container; null where it could be nothing at all. */
export function finishedWeight(recipe: Recipe, context: AmountContext): FinishedWeight | null {
  const readings = recipe.weighings.filter((weighing) => weighing.kind === 'finished');
  const latest = readings.reduce<Weighing | null>(
    (best, each) => (best === null || each.at > best.at ? each : best),
    null,
  );
  if (!latest) return null;
  const amount = readingAmount(latest, context.kitchen);
  const { low, value, high } = boundsOf(amount.terms, amount.sources);
  return low > 0 ? { ...amount, interval: { low, value, high } } : null;
}

/**
 * The part of a dish that so many milligrams of the finished dish hold: divided by the reading and, where the
 * scale has one, by its accuracy.
 * @example shareByMass(whole, finished, 100_000) // per 100 g
 */
export function shareByMass(parts: Parts, finished: FinishedWeight, massMg: number): Parts {
  return finished.ids.reduce(
    (share, id) => {
      const interval = finished.sources.get(id);
      if (!interval) throw new Error(`reading without an interval: ${id}`);
      return divideParts(share, id, interval);
    },
    scaleParts(parts, massMg),
  );
}

/** A part by weight of a dish that was not weighed: open. */
export function withoutDivisor(recipe: Recipe): Parts {
  const missing = { lineId: recipe.id, text: recipe.title, reason: 'noDivisor' } as const;
  return { ...NOTHING, open: [missing] };
}
