import type { Product } from '#lib/figures/compiled/summand';
import { CELL } from '#lib/figures/compiled/composition';

/** Entries of a sum that hold one nutrient, laid out for one walk. */
export interface Holding {
  /** Of each: its place among the entries, where its numbers begin, how many sources its factor has, and their places. */
  readonly route: Int32Array;
  /** Of each: the least and the most that it holds of the nutrient, with its sign. */
  readonly ends: Float64Array;
  /** Foods whose sum of magnitudes is more than their upper bound in it, each with by how much. */
  readonly excess: readonly { readonly food: number; readonly amount: number }[];
  /** How many sources the sum has. */
  readonly sources: number;
}

/**
 * Lays out the entries that hold the nutrient in a place.
 * @param route and `excess` as in the arrangement of these entries
 */
export function holdingIn(
  place: number,
  entries: readonly Product[],
  route: Int32Array,
  excess: readonly number[],
  sources: number,
): Holding {
  const held: number[] = [];
  const ends: number[] = [];
  let step = 0;
  let at = 0;
  entries.forEach(({ of, sign, numbers }, index) => {
    const count = route[step + 3] ?? 0;
    const places = Array.from({ length: count }, (_, each) => route[step + 5 + 2 * each] ?? 0);
    step += 4 + 2 * count;
    step += 1 + (route[step] ?? 0);
    const from = at;
    at += numbers.length;
    if (of.present[place] === 0) return;
    held.push(index, from, count, ...places);
    for (const end of [1, 2]) ends.push(sign * (of.cells[CELL * place + end] ?? 0));
  });
  const more: { food: number; amount: number }[] = [];
  for (let each = 0; each < excess.length; each += 3) {
    const [food = 0, nutrient, amount = 0] = excess.slice(each, each + 3);
    if (nutrient === place) more.push({ food, amount });
  }
  return {
    route: Int32Array.from(held),
    ends: Float64Array.from(ends),
    excess: more,
    sources,
  };
}
