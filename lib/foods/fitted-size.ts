/**
 * The size of a picture that is made to fit, in whole pixels: never larger than it is, its sides as they stand to each
 * other. `fittedSize({ width: 4000, height: 3000 }, 1600)` → 1600 × 1200.
 * @param longest pixels of the longer side at most
 */
export function fittedSize(
  { width, height }: { readonly width: number; readonly height: number },
  longest: number,
): { readonly width: number; readonly height: number } {
  const by = Math.min(1, longest / Math.max(width, height));
  const fit = (side: number) => Math.max(1, Math.round(side * by));
  return { width: fit(width), height: fit(height) };
}
