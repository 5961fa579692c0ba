import type { Nutrient } from '#lib/foods/nutrients';
import { NO_HIGH, NO_LOW, type Lists } from '#lib/figures/compiled/lists';
import type { Panel } from '#lib/figures/compiled/panel';
import { zeroRow } from '#lib/figures/compiled/zero-row';
import { SUM } from '#lib/figures/compiled/tables';
import type { Sums } from '#lib/figures/compiled/sums';
import type { Figure } from '#lib/figures/figure';
import { OUTWARD } from '#lib/units/bounds';

export type Figures = Partial<Readonly<Record<Nutrient, Figure>>>;

/** Figures by name, in the panel's order. */
export function figuresFrom(
  { nutrients }: Panel,
  figure: (nutrient: Nutrient, place: number) => Figure,
): Figures {
  const figures: Partial<Record<Nutrient, Figure>> = {};
  for (let place = 0; place < nutrients.length; place += 1) {
    const nutrient = nutrients[place];
    if (nutrient) figures[nutrient] = figure(nutrient, place);
  }
  return figures;
}

/** Numbers of the bounds of a nutrient: value, low, high, likely low, likely high. */
export const BOUNDS = 5;

/**
 * Takes the bounds of all nutrients of a sum, times an exact number above zero: one step outward, likely bounds
 * clipped to the hard ones and stretched to hold the value. By nutrient `BOUNDS` numbers; some may be below 0.
 * @param bounds where they are written
 */
export function takeBounds(
  { row, at: { variance, excess } }: Pick<Sums, 'row' | 'at'>,
  times: number,
  bounds = zeroRow((BOUNDS * variance) / SUM),
): Float64Array {
  for (let from = 0, place = 0, to = 0; from < variance; from += SUM, place += 1, to += BOUNDS) {
    const value = times * (row[from] ?? 0);
    const most = times * (row[from + 2] ?? 0);
    const slack = OUTWARD * (most + times * (row[excess + place] ?? 0));
    const low = Math.min(times * (row[from + 1] ?? 0) - slack, value);
    const high = Math.max(most + slack, value);
    const middle = times * (row[from + 3] ?? 0);
    const spread = 2 * times * Math.sqrt(row[variance + place] ?? 0);
    bounds[to] = value;
    bounds[to + 1] = low;
    bounds[to + 2] = high;
    bounds[to + 3] = Math.min(value, Math.max(low, middle - spread));
    bounds[to + 4] = Math.max(value, Math.min(high, middle + spread));
  }
  return bounds;
}

/** Bounds between a sum and its figures; as many as the longest panel has. */
let room = new Float64Array(0);

/**
 * Figures from the numbers of a sum, times an exact number above zero.
 * @param sources by nutrient, the ids that its figure names
 * @param asked by nutrient: 1 where `byRules` must be asked
 */
export function figuresInNumbers(
  { nutrients, blank }: Panel,
  sums: Pick<Sums, 'row' | 'at'>,
  times: number,
  { missing, unbounded, provisional }: Lists,
  sources: readonly (readonly string[])[],
  asked: Uint8Array | null,
  byRules: (nutrient: Nutrient, place: number) => Figure,
): Figures {
  if (room.length < BOUNDS * nutrients.length) room = new Float64Array(BOUNDS * nutrients.length);
  takeBounds(sums, times, room);
  const figures: Partial<Record<Nutrient, Figure>> = { ...blank };
  const later: number[] = [];
  for (let place = 0; place < nutrients.length; place += 1) {
    const nutrient = nutrients[place];
    const lacks = missing[place];
    const ids = sources[place];
    if (!nutrient || !lacks || !ids) continue;
    const open = unbounded[place] ?? 0;
    figures[nutrient] = new FigureFromRoom(nutrient, BOUNDS * place, open, lacks, provisional, ids);
    if (asked !== null && asked[place] === 1) later.push(place);
  }
  // Asked once all bounds are read: what the rules work out may need the room.
  for (const place of later) {
    const nutrient = nutrients[place];
    if (nutrient) figures[nutrient] = byRules(nutrient, place);
  }
  return figures;
}

/**
 * The figure of one nutrient from the room: its bounds, not below 0, and sides that are not bounded left open.
 * A class, since where an object literal stands the machine soon takes all that is made there for long-lived, and puts
 * it where clearing it away costs most; figures of dishes are replaced with each edit.
 */
class FigureFromRoom implements Figure {
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly likelyLow: number | null;
  readonly likelyHigh: number | null;

  constructor(
    readonly nutrient: Nutrient,
    at: number,
    unbounded: number,
    readonly missing: Figure['missing'],
    readonly provisional: Figure['provisional'],
    readonly sources: Figure['sources'],
  ) {
    const noLow = (unbounded & NO_LOW) !== 0;
    const noHigh = (unbounded & NO_HIGH) !== 0;
    this.value = Math.max(0, room[at] ?? 0);
    this.low = noLow ? null : Math.max(0, room[at + 1] ?? 0);
    this.high = noHigh ? null : Math.max(0, room[at + 2] ?? 0);
    this.likelyLow = noLow ? null : Math.max(0, room[at + 3] ?? 0);
    this.likelyHigh = noHigh ? null : Math.max(0, room[at + 4] ?? 0);
  }
}
