/** Numbers that are uniform in 0 to 1 by the mulberry32 step (a well-known public-domain generator), from a seed. */
export function uniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** A whole number from low to high, both included. */
export function whole(random: () => number, low: number, high: number): number {
  return low + Math.floor(random() * (high - low + 1));
}

/** One of a list that is not empty. */
export function oneOf<T>(random: () => number, items: readonly T[]): T {
  const item = items[whole(random, 0, items.length - 1)];
  if (item === undefined) throw new Error('cannot pick from an empty list');
  return item;
}
