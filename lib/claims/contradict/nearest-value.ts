import { groupedBy } from '#lib/claims/contradict/grouped-by';
import type { SaidValue } from '#lib/claims/contradict/said-values';

/** A value with how far it is from another one, in UTF-16 units, and which of all that were searched it is. */
export interface Found {
  readonly value: SaidValue;
  readonly gap: number;
  readonly order: number;
}

/** The value that stands nearest to another one in its text, of two alike the first; null where none is in reach. */
export type NearestTo = (to: SaidValue, reach: number) => Found | null;

/** From where to where a value stands, as far as its distance from others goes. */
type PlaceOf = (value: SaidValue) => { readonly start: number; readonly end: number };

interface Placed {
  readonly value: SaidValue;
  readonly order: number;
  readonly start: number;
  readonly end: number;
  /** The last end of those up to it. */
  readonly last: number;
}

/**
 * Prepares values to be searched for the nearest to a place without looking at all of them.
 * @example nearestIn(wholes)(half, 160)?.value // the whole that is said in the same breath
 */
export function nearestIn(
  values: readonly SaidValue[],
  placeOf: PlaceOf = ({ row }) => row.statement,
): NearestTo {
  const all = values.map((value, order) => {
    const { start, end } = placeOf(value);
    return { value, order, start, end };
  });
  const texts = groupedBy(all, ({ value }) => value.row.place.textId);
  const sorted = new Map(
    [...texts].map(([textId, own]) => {
      let last = -Infinity;
      const placed = [...own]
        .sort((a, b) => a.start - b.start)
        .map((each): Placed => ({ ...each, last: (last = Math.max(last, each.end)) }));
      return [textId, placed] as const;
    }),
  );
  return (to, reach) => nearest(sorted.get(to.row.place.textId) ?? [], placeOf(to), reach);
}

function nearest(
  all: readonly Placed[],
  { start, end }: ReturnType<PlaceOf>,
  reach: number,
): Found | null {
  let best: Found | null = null;
  const within = () => best?.gap ?? reach;
  const look = ({ value, order, ...at }: Placed) => {
    const gap = Math.max(start, at.start) - Math.min(end, at.end);
    if (gap > within()) return;
    if (!best || gap < best.gap || order < best.order) best = { value, gap, order };
  };
  const behind = firstBehind(all, start);
  for (let at = behind - 1; at >= 0; at -= 1) {
    const each = all[at];
    // None of those before it ends later than its `last`.
    if (!each || start - each.last > within()) break;
    look(each);
  }
  for (let at = behind; at < all.length; at += 1) {
    const each = all[at];
    if (!each || each.start - end > within()) break;
    look(each);
  }
  return best;
}

/** Where the first value stands that begins behind a place. */
function firstBehind(all: readonly Placed[], place: number): number {
  let low = 0;
  let high = all.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((all[middle]?.start ?? 0) <= place) low = middle + 1;
    else high = middle;
  }
  return low;
}
