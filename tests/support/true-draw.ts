/** Chance that draws each uncertain thing once, so that everything that rests on it sees the same truth. */
export interface Drawing {
  /** The truth of a thing, uniform between two ends when it is first asked for. */
  readonly draw: (what: string, low: number, high: number) => number;
  /** Work that several figures share, done once. */
  readonly once: (what: string, work: () => number) => number;
}

export function drawing(random: () => number): Drawing {
  const kept = new Map<string, number>();
  const once = (what: string, work: () => number): number => {
    const known = kept.get(what);
    if (known !== undefined) return known;
    const result = work();
    kept.set(what, result);
    return result;
  };
  return { once, draw: (what, low, high) => once(what, () => low + random() * (high - low)) };
}
