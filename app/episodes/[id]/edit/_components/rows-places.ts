import { defaultRangeExtractor, type Range } from '@tanstack/react-virtual';

/** What is drawn before the window was measured, and on the server, in pixels. */
const FIRST = { width: 600, height: 640 };

/** Rows that are drawn before and behind those that are seen. */
const AROUND = 8;

export interface ListedRows {
  readonly count: number;
  readonly keyOf: (index: number) => string;
  /** How high a row is before it was drawn, in pixels. */
  readonly estimate: number;
  /** A row that stays drawn wherever the list is, as one in which something is typed. */
  readonly keep?: number;
}

/** What a list asks of the library, wherever it scrolls. */
export function rowsOptions({ count, keyOf, estimate, keep = -1 }: ListedRows) {
  return {
    count,
    getItemKey: keyOf,
    estimateSize: () => estimate,
    initialRect: FIRST,
    overscan: AROUND,
    useFlushSync: false,
    rangeExtractor: (range: Range) => withKept(range, keep),
  };
}

/** The rows to draw, with one that stays drawn, in their order. */
export function withKept(range: Range, keep: number): number[] {
  const seen = defaultRangeExtractor(range);
  return keep < 0 || keep >= range.count || seen.includes(keep)
    ? seen
    : [...seen, keep].sort((a, b) => a - b);
}

/** How a list stands in what scrolls, in pixels: what has been measured so far. */
export interface Measured {
  readonly measurementsCache: readonly { readonly size: number }[];
  readonly scrollRect: { readonly height: number } | null;
}

/**
 * Where a row is brought to: one that is taller than its room is read from its beginning.
 * @param covered how much of the room something else covers, in pixels
 * @example alignOf({ measurementsCache: [{ size: 700 }], scrollRect: { height: 640 } }, 0, 'center') // 'start'
 */
export function alignOf<A extends string>(
  { measurementsCache, scrollRect }: Measured,
  index: number,
  align: A,
  covered = 0,
): A | 'start' {
  const size = measurementsCache[index]?.size ?? 0;
  const room = (scrollRect?.height ?? size) - covered;
  return size > room ? 'start' : align;
}

/**
 * Whether what is seen must be moved when a row turns out to have another size: the row begins before it, and it is a
 * part of the list. Where the page stands behind the list, the browser itself keeps what is seen in its place.
 * @param offset where what is seen begins, in pixels
 * @param end where the list ends
 */
export function movesWhatIsSeen(start: number, offset: number, end: number): boolean {
  return start < offset && offset < end;
}
