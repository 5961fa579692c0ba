import type { PictureBar } from '#lib/figures/breakdown-picture';

/**
 * Where the marks of a bar of parts are drawn, in units of a sixteenth of a rem. As in `geometry.ts` nothing here
 * is a number that anybody reads.
 */

/** How a part is filled, so that neighbours differ in black and white too. */
export const TEXTURES = ['solid', 'grain', 'plain', 'upright', 'bricks'] as const;
export type Texture = (typeof TEXTURES)[number] | 'rest';

export interface BarPiece {
  readonly key: string;
  readonly top: number;
  readonly bottom: number;
  readonly texture: Texture;
}

/** A line from what it names to the middle of its words. */
export interface BarLabel {
  readonly key: string;
  readonly from: number;
  readonly to: number;
}

export interface BarLimit {
  readonly key: string;
  readonly y: number;
  /** Which side of the mark satisfies it. */
  readonly allows: 'above' | 'below' | 'near';
}

export interface PartsBarDrawing {
  readonly width: number;
  readonly height: number;
  /** Left and right edge of the bar. */
  readonly left: number;
  readonly right: number;
  readonly pieces: readonly BarPiece[];
  /** What is not known of the bar: above its parts, or all of it; null where it lacks nothing. */
  readonly open: { readonly top: number; readonly bottom: number } | null;
  /** The range beside the bar, as on a scale; null where it has none. */
  readonly range: BarRange | null;
  readonly limits: readonly BarLimit[];
  /** From the top. */
  readonly labels: readonly BarLabel[];
}

export interface BarRange {
  readonly value: number;
  readonly likely: { readonly top: number; readonly bottom: number };
  readonly hard: { readonly top: number; readonly bottom: number; readonly cut: boolean };
}

const WIDTH = 58;
const LEFT = 16;
const RIGHT = 40;
/** Room for the ends of marks. */
const INSET = 6;
const LEAST_HEIGHT = 192;
/** What goes on beyond the bar where it is only 'at least'. */
const STUB = 18;

/** Two lines of fine words. */
export const LABEL_HEIGHT = 40;
/** The key of the label that says what a bar lacks. */
export const LACKS = 'lacks';

/**
 * A bar of parts, the first at the top, with its range and the limits it is held against. The bar stands on its
 * lower end and is as high as its part of the reach.
 * Laws: pieces follow each other without gap, in heights as their values; labels keep their order and never
 * touch; everything lies inside the drawing.
 */
export function partsBar(bar: PictureBar): PartsBarDrawing {
  const { figure, parts, targets } = bar;
  const known = figure.low !== null && figure.high !== null;
  const lacking = bar.lacks !== '' && !known;
  const count = parts.length + targets.length + (lacking ? 1 : 0);
  const height = Math.max(LEAST_HEIGHT, count * LABEL_HEIGHT);
  const top = INSET + (lacking ? STUB : 0);
  const bottom = height - INSET;
  const reach = Math.max(bar.reach, figure.likelyHigh ?? 0, shownHigh(figure));
  const y = (value: number) => (reach > 0 ? bottom - ((bottom - top) * value) / reach : bottom);
  const pieces = piecesOf(bar, y);
  const first = pieces[0]?.top ?? bottom;
  const open = lacking ? openPart(parts.length > 0, first, top, bottom) : null;
  const limits = targets.map(({ id, relation, amount }): BarLimit => {
    const allows = relation === 'atLeast' ? 'above' : relation === 'atMost' ? 'below' : 'near';
    return { key: id, y: y(amount), allows };
  });
  const wanted = [
    ...(open ? [{ key: LACKS, from: (open.top + open.bottom) / 2 }] : []),
    ...limits.map((limit) => ({ key: limit.key, from: limit.y })),
    ...pieces.map((piece) => ({ key: piece.key, from: (piece.top + piece.bottom) / 2 })),
  ].sort((a, b) => a.from - b.from);
  const places = spreadLabels(
    wanted.map(({ from }) => from),
    LABEL_HEIGHT,
    height,
  );
  return {
    width: WIDTH,
    height,
    left: LEFT,
    right: RIGHT,
    pieces,
    open,
    range: known && parts.length > 0 ? rangeOf(bar, y) : null,
    limits,
    labels: wanted.map((label, at) => ({ ...label, to: places[at] ?? label.from })),
  };
}

/** A wide range is cut rather than that it makes the bar small. */
const CUT_ABOVE = 1.25;

function shownHigh({ value, high }: PictureBar['figure']): number {
  return Math.min(high ?? 0, value * CUT_ABOVE);
}

function piecesOf({ parts }: PictureBar, y: (value: number) => number): readonly BarPiece[] {
  let above = 0;
  for (const { value } of parts) above += value;
  return parts.map(({ key, value, rest }, at): BarPiece => {
    const top = y(above);
    above -= value;
    // The last one ends on the ground, whatever floating point made of the sum.
    const bottom = at === parts.length - 1 ? y(0) : y(above);
    return {
      key,
      top,
      bottom,
      texture: rest ? 'rest' : (TEXTURES[at % TEXTURES.length] ?? 'plain'),
    };
  });
}

function openPart(some: boolean, first: number, top: number, bottom: number) {
  return some ? { top: first - STUB, bottom: first } : { top, bottom };
}

function rangeOf({ figure }: PictureBar, y: (value: number) => number): BarRange {
  const { low, likelyLow, value, likelyHigh, high } = figure;
  const end = y(high ?? value);
  return {
    value: y(value),
    likely: { top: y(likelyHigh ?? value), bottom: y(likelyLow ?? value) },
    hard: { top: Math.max(INSET, end), bottom: y(low ?? value), cut: end < INSET },
  };
}

/**
 * The middles of labels, each as near as it may be to where it wants to stand, in the same order, no two closer
 * than a label is high, none outside. The sum of the squared distances moved is the least possible.
 * @param wanted middles in ascending order; they must fit: as many times `size` as there are at most `height`
 * @example spreadLabels([10, 12], 20, 100) // [10, 30]
 */
export function spreadLabels(
  wanted: readonly number[],
  size: number,
  height: number,
): readonly number[] {
  // Without the labels between, the middles only have to keep their order: pooled neighbours share their mean.
  const pools: { sum: number; count: number }[] = [];
  wanted.forEach((middle, at) => {
    let pool = { sum: middle - at * size, count: 1 };
    for (let last = pools.at(-1); last && mean(last) > mean(pool); last = pools.at(-1)) {
      pools.pop();
      pool = { sum: last.sum + pool.sum, count: last.count + pool.count };
    }
    pools.push(pool);
  });
  const least = size / 2;
  const most = height - size / 2 - (wanted.length - 1) * size;
  return pools
    .flatMap((pool) => Array.from({ length: pool.count }, () => mean(pool)))
    .map((middle, at) => Math.max(least, Math.min(most, middle)) + at * size);
}

const mean = ({ sum, count }: { readonly sum: number; readonly count: number }) => sum / count;

/** The lines that fill a part with its texture, `step` apart: heights between its edges. */
export function textureLines(piece: Pick<BarPiece, 'top' | 'bottom'>, step: number): number[] {
  // Counted from the ground of all bars, so that lines stand alike wherever a part begins.
  const first = Math.ceil((piece.top + step / 2) / step);
  const last = Math.floor((piece.bottom - step / 4) / step);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, at) => (first + at) * step);
}

/** A box within a drawing. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * The hatch of what is open within a box: lines that rise to the right at 45 degrees, as the page's own hatch.
 * Each is inside the box, end to end.
 */
export function hatchLines(
  { left, right, top, bottom }: Box,
  step: number,
): readonly {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}[] {
  const lines = [];
  for (let sum = left + top + step; sum < right + bottom; sum += step) {
    const x1 = Math.max(left, sum - bottom);
    const x2 = Math.min(right, sum - top);
    lines.push({ x1, y1: sum - x1, x2, y2: sum - x2 });
  }
  return lines;
}
