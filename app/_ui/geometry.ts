import type { Figure } from '#lib/figures/figure';
import { onWhisker } from '#lib/figures/whisker-reach';

/**
 * Where marks are drawn. Nothing here is a number that anybody reads: positions, in units of a drawing
 * or in percent of a box, from values that were worked out elsewhere.
 */

/** A whisker's drawing, in units of its view box. */
export interface WhiskerDrawing {
  readonly width: number;
  readonly height: number;
  /** The mark at the value; null where the figure is open. */
  readonly tick: number | null;
  /** The hard bound: a hairline. `cut` ends go on beyond the drawing, `free` ends have no bound at all. */
  readonly hard: WhiskerSpan | null;
  /** The likely bound: a thick bar inside the hairline. */
  readonly likely: WhiskerSpan | null;
  /** Graduations of the scale behind it. */
  readonly graduations: readonly number[];
}

export interface WhiskerSpan {
  readonly from: number;
  readonly to: number;
  readonly fromEnd: 'bound' | 'cut' | 'free';
  readonly toEnd: 'bound' | 'cut' | 'free';
}

/** An hour's height on the day by the clock; five minutes hold a line of small text. */
export const REM_PER_MIN = 15 / 60;
/** What is moved by hand stands on five minutes. */
const HAND_STEP_MIN = 5;

/** Minutes, in steps of five, that so many pixels down the day by the clock stand for. */
export function minutesDragged(pixels: number, remPixels: number): number {
  return Math.round(pixels / remPixels / REM_PER_MIN / HAND_STEP_MIN) * HAND_STEP_MIN;
}

/** Whether a press that moved so far is a drag: not every press that trembles is one. */
export function isDrag(pixels: number): boolean {
  return Math.abs(pixels) >= 6;
}

/** The minute that something moved by hand comes to; no earlier than midnight. */
export function movedTo(startMin: number, byMin: number): number {
  return Math.max(0, startMin + byMin);
}

/** Pixels down the day by the clock that so many minutes take. */
export function pixelsOf(minutes: number, remPixels: number): number {
  return minutes * REM_PER_MIN * remPixels;
}

const WHISKER = { width: 160, height: 16, inset: 6 } as const;

/** The common scale of whiskers (`onWhisker`) is graduated every 5 %. */
const GRADUATIONS = 8;

/**
 * The whisker of a figure on the common scale. The value stands in the middle; a figure of 0 has no
 * scale of its own and is drawn as cut at any bound above it.
 * `whisker({ value: 100, low: 90, high: 120, … })`: tick at 80, hairline from 43 to 154.
 */
export function whisker(
  figure: Pick<Figure, 'value' | 'low' | 'high' | 'likelyLow' | 'likelyHigh'>,
): WhiskerDrawing {
  const { width, height, inset } = WHISKER;
  const start = inset;
  const end = width - inset;
  const middle = width / 2;
  const graduations = Array.from(
    { length: GRADUATIONS + 1 },
    (_, i) => start + ((end - start) * i) / GRADUATIONS,
  );
  const frame = { width, height, graduations };
  if (figure.low === null && figure.high === null) {
    return { ...frame, tick: null, hard: null, likely: null };
  }
  const span = (low: number | null, high: number | null): WhiskerSpan => {
    const { from, to } = onWhisker(figure.value, low, high);
    const x = (at: number) => middle + at * (middle - start);
    return { from: x(from.at), fromEnd: from.end, to: x(to.at), toEnd: to.end };
  };
  const known = figure.likelyLow !== null && figure.likelyHigh !== null;
  return {
    ...frame,
    tick: middle,
    hard: span(figure.low, figure.high),
    likely: known ? span(figure.likelyLow, figure.likelyHigh) : null,
  };
}

/** A rule of stages: a tick for each, and where the one that is reached stands. */
export interface StageMarks {
  readonly width: number;
  readonly height: number;
  readonly ticks: readonly number[];
  readonly at: number;
}

/** `stageMarks(6, 0)`: six ticks from end to end, the first of them reached. */
export function stageMarks(count: number, reached: number): StageMarks {
  const { width, height, inset } = WHISKER;
  const step = (width - 2 * inset) / (count - 1);
  const ticks = Array.from({ length: count }, (_, i) => inset + step * i);
  return { width, height, ticks, at: ticks[reached] ?? inset };
}

/** Whether a verdict's balance stands level, a little off, tipped, or lacks a pan. */
export type BalanceState = 'agrees' | 'edge' | 'off' | 'unknown';

/** A verdict's balance: the beam's ends and the two pans that hang from them. */
export interface BalanceDrawing {
  readonly width: number;
  readonly height: number;
  readonly left: { readonly x: number; readonly y: number };
  readonly right: { readonly x: number; readonly y: number };
  /** The pan of the breakdown is missing where nothing can be said. */
  readonly rightPan: boolean;
}

const TILT: Readonly<Record<BalanceState, number>> = { agrees: 0, edge: 2, off: 6.5, unknown: 0 };

/**
 * The balance of a verdict. The left pan holds what was said, the right one the breakdown; the heavier
 * hangs lower. `balance('agrees', 'said')` is level: both ends at the same height.
 */
export function balance(state: BalanceState, heavier: 'said' | 'breakdown'): BalanceDrawing {
  const drop = TILT[state] * (heavier === 'said' ? 1 : -1);
  return {
    width: 48,
    height: 30,
    left: { x: 8, y: 9 + drop },
    right: { x: 40, y: 9 - drop },
    rightPan: state !== 'unknown',
  };
}

/** A block of time to be placed in a column of the day. */
export interface TimeBlock {
  readonly id: string;
  readonly startMin: number;
  readonly endMin: number;
}

/** A block's place: from the top and height in rem, and its lane among blocks at the same time. */
export interface PlacedBlock {
  readonly topRem: number;
  readonly heightRem: number;
  readonly lane: number;
  readonly lanes: number;
  /** Lower than a line of usual text. */
  readonly tight: boolean;
  /** High enough to be hit. */
  readonly target: boolean;
  /** How many whole lines of small text it holds; no half line is drawn. */
  readonly textLines: number;
}

/** A line of small text with its frame, in rem. */
const LINE_REM = 1.25;

/** A line of small text within a block, and the block's frame around its lines, in rem. */
const TEXT_LINE_REM = 1.1;
const FRAME_REM = 0.3;

/** What can be hit is at least 24 px high (WCAG 2.2, success criterion 2.5.8), and its frame. */
const TARGET_REM = 1.625;

/**
 * Places blocks down a column by the clock, `remPerMin` to the minute. Blocks that overlap in time share
 * the width: each takes the first free lane, and all that touch the same stretch have as many lanes.
 * A block too short to be hit grows into the free time after it.
 * Laws: no two overlapping blocks share a lane; order of start keeps order from the top; no block reaches
 * over the start of a later one.
 */
export function placeBlocks(
  blocks: readonly TimeBlock[],
  fromMin: number,
  remPerMin: number,
): ReadonlyMap<string, PlacedBlock> {
  const placed = new Map<string, PlacedBlock>();
  const inOrder = [...blocks].sort(
    (a, b) => a.startMin - b.startMin || b.endMin - a.endMin || (a.id < b.id ? -1 : 1),
  );
  let stretch: { block: TimeBlock; lane: number }[] = [];
  const close = () => {
    const lanes = Math.max(0, ...stretch.map((s) => s.lane)) + 1;
    for (const { block, lane } of stretch) {
      const exact = (block.endMin - block.startMin) * remPerMin;
      const next = inOrder.find((each) => each.startMin >= block.endMin && each !== block);
      const room = next ? (next.startMin - block.startMin) * remPerMin : TARGET_REM;
      const heightRem = Math.max(exact, Math.min(TARGET_REM, room));
      placed.set(block.id, {
        topRem: (block.startMin - fromMin) * remPerMin,
        heightRem,
        lane,
        lanes,
        tight: heightRem < LINE_REM,
        target: heightRem >= TARGET_REM,
        textLines: Math.max(1, Math.floor((heightRem - FRAME_REM) / TEXT_LINE_REM)),
      });
    }
    stretch = [];
  };
  for (const block of inOrder) {
    if (stretch.every((s) => s.block.endMin <= block.startMin)) close();
    const busy = new Set(stretch.filter((s) => s.block.endMin > block.startMin).map((s) => s.lane));
    let lane = 0;
    while (busy.has(lane)) lane += 1;
    stretch.push({ block, lane });
  }
  close();
  return placed;
}

/** The full hours from the first at or before `fromMin` to the first at or after `toMin`, in minutes. */
export function fullHours(fromMin: number, toMin: number): readonly number[] {
  const first = Math.floor(fromMin / 60);
  const last = Math.ceil(toMin / 60);
  return Array.from({ length: last - first + 1 }, (_, i) => (first + i) * 60);
}

/** The lengths of bars in percent of the longest; all 0 where none has a length. */
export function barPercents(values: readonly number[]): readonly number[] {
  const longest = Math.max(0, ...values);
  return values.map((value) => (longest > 0 ? Math.max(0, (100 * value) / longest) : 0));
}

/** A place on a strip, from its left end in percent of its width. */
export interface StripSpan {
  readonly left: number;
  readonly width: number;
}

/** A mark on a strip: its middle in percent of the width, and the lane below the sticks it stands in. */
export interface StripMark {
  readonly left: number;
  /** On a wide page and on a phone; null where all lanes are taken there, so that it cannot be pressed apart. */
  readonly wide: number | null;
  readonly narrow: number | null;
}

/** Marks of 24 px (WCAG 2.2, success criterion 2.5.8) that stand beside each other on a wide page and on a phone. */
const STRIP = { wide: { across: 38, lanes: 8 }, narrow: { across: 11, lanes: 16 } } as const;

/** A stretch of time on a strip that ends at `endMs`. `stripSpan(0, 30_000, 60_000)` → left 0, width 50 */
export function stripSpan(fromMs: number, toMs: number, endMs: number): StripSpan {
  const left = Math.min(100, (100 * fromMs) / endMs);
  return { left, width: Math.max(0, Math.min(100, (100 * toMs) / endMs) - left) };
}

/**
 * Where the marks of statements stand: each at its time, in the first lane in which it covers no other.
 * Laws: two marks of a lane are at least a mark apart; each stands within the strip.
 */
export function stripMarks(times: readonly number[], endMs: number): readonly StripMark[] {
  const order = times.map((_, at) => at).sort((a, b) => (times[a] ?? 0) - (times[b] ?? 0) || a - b);
  const lefts = times.map((time) => (100 * Math.max(0, time)) / endMs);
  const wide = inLanes(order, lefts, STRIP.wide);
  const narrow = inLanes(order, lefts, STRIP.narrow);
  return lefts.map((left, at) => ({
    left: Math.min(100, left),
    wide: wide[at] ?? null,
    narrow: narrow[at] ?? null,
  }));
}

function inLanes(
  order: readonly number[],
  lefts: readonly number[],
  { across, lanes }: { readonly across: number; readonly lanes: number },
): readonly (number | null)[] {
  const apart = 100 / across;
  const last: number[] = [];
  const found: (number | null)[] = lefts.map(() => null);
  for (const at of order) {
    const left = lefts[at] ?? 0;
    const free = Array.from({ length: lanes }, (_, lane) => lane).find(
      (lane) => left - (last[lane] ?? -100) >= apart,
    );
    if (free === undefined) continue;
    last[free] = left;
    found[at] = free;
  }
  return found;
}

/** How many lanes marks take; 0 where none has one. */
export function lanesOf(lanes: readonly (number | null)[]): number {
  return lanes.reduce<number>((most, lane) => Math.max(most, lane === null ? 0 : lane + 1), 0);
}
