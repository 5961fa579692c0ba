import { ALL } from '#lib/figures/compiled/squares';
import type { Sums } from '#lib/figures/compiled/sums';
import { AMOUNT, JOINT, SOURCE, type Tables } from '#lib/figures/compiled/tables';

/**
 * What the variance of one nutrient comes from, laid out for one walk: all that a source moves of it, whether by foods
 * or by amounts alone, meets in one coefficient.
 */
export interface Meeting {
  /** The place of the nutrient. */
  readonly place: number;
  /** Foods with an error in it, and the variance of that. */
  readonly foods: Int32Array;
  readonly errors: Float64Array;
  readonly joints: Coefficients;
  readonly pairs: Coefficients;
}

/** Coefficients of sources, or of pairs of them. */
interface Coefficients {
  /** Of each in turn: its source, or the two of the pair; how many joints, or pairs, meet in it, and their places. */
  readonly route: Int32Array;
  /** How much of the nutrient the foods of these hold, in the middle; in the same order. */
  readonly middles: Float64Array;
}

/** Lays out what meets in the nutrient in a place; of what it holds nothing of, nothing is laid out. */
export function meetingIn(
  place: number,
  { compositions, joints, pairs }: Pick<Tables, 'compositions' | 'joints' | 'pairs'>,
): Meeting {
  const variances = compositions.map(({ squares }) => squares[2 * place] ?? 0);
  const foods = variances.flatMap((error, of) => (error > 0 ? [of] : []));
  const middles = compositions.map((each) => each.middles[place] ?? 0);
  return {
    place,
    foods: Int32Array.from(foods),
    errors: Float64Array.from(foods, (of) => variances[of] ?? 0),
    joints: coefficientsOf(joints, middles),
    pairs: coefficientsOf(pairs, middles),
  };
}

function coefficientsOf(table: Int32Array, middles: readonly number[]): Coefficients {
  const byKind = new Map<number, number[]>();
  for (let from = 0; from < table.length; from += JOINT) {
    const kind = table[from + 4] ?? 0;
    const known = byKind.get(kind) ?? [];
    byKind.set(kind, known);
    if (middles[table[from] ?? 0] !== 0) known.push(from);
  }
  const route: number[] = [];
  const held: number[] = [];
  for (const all of byKind.values()) {
    const [first] = all;
    if (first === undefined) continue;
    route.push(table[first + 1] ?? 0, table[first + 2] ?? 0, all.length);
    for (const from of all) {
      route.push(from / JOINT);
      held.push(middles[table[from] ?? 0] ?? 0);
    }
  }
  return { route: Int32Array.from(route), middles: Float64Array.from(held) };
}

/** The variance of a nutrient from the start. */
export function varianceOf({ foods, errors, joints, pairs }: Meeting, { row, at }: Sums): number {
  let variance = 0;
  for (let each = 0; each < foods.length; each += 1) {
    variance += (row[at.amounts + AMOUNT * (foods[each] ?? 0) + ALL] ?? 0) * (errors[each] ?? 0);
  }
  let met = 0;
  for (let step = 0; step < joints.route.length;) {
    const error = row[at.sources + SOURCE * (joints.route[step] ?? 0)] ?? 0;
    const end = step + 3 + (joints.route[step + 2] ?? 0);
    let slope = 0;
    for (step += 3; step < end; step += 1, met += 1) {
      slope += (row[at.joints + (joints.route[step] ?? 0)] ?? 0) * (joints.middles[met] ?? 0);
    }
    variance += slope * slope * error;
  }
  met = 0;
  for (let step = 0; step < pairs.route.length;) {
    const first = row[at.sources + SOURCE * (pairs.route[step] ?? 0)] ?? 0;
    const second = row[at.sources + SOURCE * (pairs.route[step + 1] ?? 0)] ?? 0;
    const end = step + 3 + (pairs.route[step + 2] ?? 0);
    let slope = 0;
    for (step += 3; step < end; step += 1, met += 1) {
      slope += (row[at.pairs + (pairs.route[step] ?? 0)] ?? 0) * (pairs.middles[met] ?? 0);
    }
    variance += slope * slope * first * second;
  }
  return variance;
}
