/**
 * A source of numbers in [0, 1) that is the same for the same seed: the small 32-bit generator
 * "mulberry32" (public domain, T. Ettinger 2017; from memory, checked only for spread in the tests).
 *
 * @example const next = seededRandom(1); next() !== next()
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
