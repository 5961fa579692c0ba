/** The standard normal's quantile at 97.5 %: an interval of 95 %. */
const Z = 1.959_963_984_540_054;

/**
 * Where the probability lies that a thing happens, which happened `hits` times in `trials`: the 95 % score
 * interval (E. B. Wilson, Journal of the American Statistical Association 22, 1927). All of it where nothing
 * was tried.
 *
 * @example wilson(97, 100) // { low: 0.915…, high: 0.989… }
 */
export function wilson(
  hits: number,
  trials: number,
): { readonly low: number; readonly high: number } {
  if (trials === 0) return { low: 0, high: 1 };
  const share = hits / trials;
  const square = (Z * Z) / trials;
  const middle = (share + square / 2) / (1 + square);
  const half =
    (Z / (1 + square)) * Math.sqrt((share * (1 - share)) / trials + square / (4 * trials));
  return { low: Math.max(0, middle - half), high: Math.min(1, middle + half) };
}
