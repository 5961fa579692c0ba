import { parsePrinted } from '#lib/units/printed';

/** A scale shows no more than a tonne. */
const MOST_MG = 1_000_000_000;

/**
 * Milligrams of what a scale shows: one number of grams with at most three decimals; null for anything else. A
 * comma before exactly three digits may divide thousands or decimals and is read as neither.
 * @example readScaleGrams('252.5') // 252_500
 */
export function readScaleGrams(text: string): number | null {
  const plain = text.trim().replace(/ ?g$/, '');
  const printed = parsePrinted(plain);
  if (!printed || printed.mantissa < 0 || printed.scale > 3) return null;
  const mg = printed.mantissa * 10 ** (3 - printed.scale);
  return mg <= MOST_MG ? mg : null;
}

/** Grams as a scale shows them: nothing is rounded. `scaleGramsText(252_500)` → `'252.5'`. */
export function scaleGramsText(mg: number): string {
  return String(mg / 1000);
}
