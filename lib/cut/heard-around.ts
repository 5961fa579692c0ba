/** How much is heard around a place, in milliseconds. */
const HEARD_MS = 5000;

/**
 * The five seconds of a recording around some words, in seconds from its beginning; longer where the words are.
 * @example heardAround(190_000, 192_000) // { fromS: 188.5, toS: 193.5 }
 */
export function heardAround(
  startMs: number,
  endMs: number,
): { readonly fromS: number; readonly toS: number } {
  const length = Math.max(HEARD_MS, endMs - startMs);
  const fromMs = Math.max(0, (startMs + endMs - length) / 2);
  return { fromS: fromMs / 1000, toS: (fromMs + length) / 1000 };
}
