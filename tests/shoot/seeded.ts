/** A small seeded source of chance: equal seeds give equal days on every machine. */
export interface Chance {
  /** A whole number from low to high, both included. */
  int(low: number, high: number): number;
  /** True in so many of a hundred cases. */
  percent(share: number): boolean;
  /** One of a list that is not empty. */
  pick<T>(items: readonly T[]): T;
  /** The list in another order. */
  shuffle<T>(items: readonly T[]): T[];
}

/** Chance from a seed by the mulberry32 step (32-bit arithmetic; a well-known public-domain generator). */
export function seeded(seed: number): Chance {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  const int = (low: number, high: number) => low + Math.floor(next() * (high - low + 1));
  return {
    int,
    percent: (share) => next() * 100 < share,
    pick: (items) => {
      const item = items[int(0, items.length - 1)];
      if (item === undefined) throw new Error('cannot pick from an empty list');
      return item;
    },
    shuffle: (items) =>
      items
        .map((item) => ({ item, key: next() }))
        .sort((a, b) => a.key - b.key)
        .map(({ item }) => item),
  };
}
