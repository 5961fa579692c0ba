import type { Food } from '#lib/foods/food';
import type { LineAmount } from '#lib/episode/line-amount';
import { foodParts } from '#lib/figures/line-parts';
import type { MissingPart } from '#lib/figures/figure';
import type { Panel } from '#lib/figures/compiled/panel';
import type { Parts } from '#lib/figures/parts';
import { constant } from '#lib/units/sum-of-products';

/** Numbers that a composition keeps of each nutrient: value, low, high, variance. */
export const CELL = 4;

/** Why a food does not state a nutrient, to be said of each ingredient made of it. */
export interface Lack {
  readonly above: readonly MissingPart['reason'][];
  readonly below: readonly MissingPart['reason'][];
  readonly open: readonly MissingPart['reason'][];
}

/**
 * What one basis (100 g, 100 ml, a serving) of a food holds of each nutrient of a panel, laid out in numbers:
 * sums of the food's own values, so that an amount multiplies all of them at once.
 */
export interface Composition {
  /** The food version that the values' errors belong to. */
  readonly versionId: string;
  /** By nutrient: value, low, high and the variance of the errors of its values. */
  readonly cells: Float64Array;
  /** By nutrient: the middle between low and high. */
  readonly middles: Float64Array;
  /** By nutrient: the variance again, and the square of the middle. */
  readonly squares: Float64Array;
  /** By nutrient: ids of the food's values in it, sorted. */
  readonly ids: readonly (readonly string[])[];
  /** By nutrient: 1 where it holds any, or may. */
  readonly present: Uint8Array;
  /** The place of the only nutrient that it is of; null for a food. */
  readonly only: number | null;
  /** Places of the nutrients that the food does not state, or not all of; each with its place in `lacks`. */
  readonly lacking: readonly (readonly [nutrient: number, lack: number])[];
  readonly lacks: readonly Lack[];
  /** By nutrient: 1 where its values do not come to a sum that is never negative: then terms must be asked;
   * null for none. */
  readonly byTerms: Uint8Array | null;
  /** Where the sum of magnitudes is more than the upper bound, since a value is taken away: by how much. */
  readonly excess: readonly { readonly place: number; readonly amount: number }[];
}

const ONCE = [constant(1)];
/** One of whatever the food is stated for. */
const ONE_BASIS: LineAmount = {
  massMg: [constant(100_000)],
  volumeMl: [constant(100)],
  servings: ONCE,
  batches: null,
  edible: true,
  sources: new Map(),
};

const kept = new WeakMap<Food, WeakMap<Panel, Composition>>();

/** The composition of a food, compiled once for each panel; foods are never changed, only replaced. */
export function compositionOf(food: Food, panel: Panel): Composition {
  const known = kept.get(food);
  const composition = known?.get(panel);
  if (composition) return composition;
  const compiled = compile(food, panel);
  if (known) known.set(panel, compiled);
  else kept.set(food, new WeakMap([[panel, compiled]]));
  return compiled;
}

function compile(food: Food, { region, nutrients }: Panel): Composition {
  const cells = new Float64Array(CELL * nutrients.length);
  const middles = new Float64Array(nutrients.length);
  const squares = new Float64Array(2 * nutrients.length);
  const byTerms = new Uint8Array(nutrients.length);
  const lacking: [number, number][] = [];
  const lacks: Lack[] = [];
  const excess: { place: number; amount: number }[] = [];
  const ids = nutrients.map((nutrient, place) => {
    const missing = (reason: MissingPart['reason']) => ({ lineId: '', text: '', reason });
    const parts = foodParts(food, ONE_BASIS, nutrient, region, missing);
    if (lacksAny(parts)) lacking.push([place, lackPlace(lacks, parts)]);
    const cell = cellOf(parts);
    if (!cell) byTerms[place] = 1;
    else {
      cells.set([cell.value, cell.low, cell.high, cell.variance], CELL * place);
      const middle = (cell.low + cell.high) / 2;
      middles[place] = middle;
      squares.set([cell.variance, middle ** 2], 2 * place);
      if (cell.reach > cell.high) excess.push({ place, amount: cell.reach - cell.high });
    }
    return parts.terms.flatMap(({ up }) => up).sort();
  });
  return {
    versionId: food.version.id,
    present: Uint8Array.from(ids, (each) => (each.length > 0 ? 1 : 0)),
    only: null,
    cells,
    middles,
    squares,
    ids,
    lacking,
    lacks,
    byTerms: byTerms.includes(1) ? byTerms : null,
    excess,
  };
}

const ones = new WeakMap<Panel, (Composition | undefined)[]>();

/** What is one of a single nutrient, exactly, and nothing else: amounts of it are that nutrient itself. */
export function oneOf(place: number, panel: Panel): Composition {
  const all = ones.get(panel) ?? [];
  ones.set(panel, all);
  return (all[place] ??= exactlyOne(place, panel.nutrients.length));
}

function exactlyOne(place: number, length: number): Composition {
  const single = (size: number, at: readonly number[]) => {
    const numbers = new Float64Array(size * length);
    for (const each of at) numbers[size * place + each] = 1;
    return numbers;
  };
  return {
    versionId: `only:${place}`,
    cells: single(CELL, [0, 1, 2]),
    middles: single(1, [0]),
    squares: single(2, [1]),
    ids: Array.from({ length }, () => []),
    present: Uint8Array.from({ length }, (_, each) => (each === place ? 1 : 0)),
    only: place,
    lacking: [],
    lacks: [],
    byTerms: null,
    excess: [],
  };
}

/** A sum of single values in numbers; null where it is none, or may be negative. */
function cellOf({ terms, sources }: Parts) {
  const cell = { value: 0, low: 0, high: 0, variance: 0, reach: 0 };
  if (new Set(terms.map(({ up }) => up[0])).size < terms.length) return null;
  for (const { coefficient, up, down } of terms) {
    const [id] = up;
    const interval = up.length === 1 && id !== undefined ? sources.get(id) : undefined;
    if (!interval || down.length > 0) return null;
    const { low, value, high } = interval;
    cell.value += coefficient * value;
    cell.low += coefficient * (coefficient > 0 ? low : high);
    cell.high += coefficient * (coefficient > 0 ? high : low);
    cell.variance += (coefficient * ((high - low) / 2)) ** 2 / 3;
    cell.reach += Math.abs(coefficient) * Math.max(high, value);
  }
  return cell.low >= 0 ? cell : null;
}

/** Whether anything is missing from parts. */
export function lacksAny({ above, below, open }: Pick<Parts, 'above' | 'below' | 'open'>): boolean {
  return above.length + below.length + open.length > 0;
}

function lackPlace(lacks: Lack[], { above, below, open }: Parts): number {
  const reasons = (parts: readonly MissingPart[]) => parts.map(({ reason }) => reason);
  const lack = { above: reasons(above), below: reasons(below), open: reasons(open) };
  const same = (a: Lack, b: Lack) =>
    a.above.join() === b.above.join() &&
    a.below.join() === b.below.join() &&
    a.open.join() === b.open.join();
  const place = lacks.findIndex((each) => same(each, lack));
  return place >= 0 ? place : lacks.push(lack) - 1;
}
