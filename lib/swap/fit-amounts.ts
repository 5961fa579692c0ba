import { optimise } from '#lib/optimise/optimise';
import type { Program, Row, Variable } from '#lib/optimise/program';
import { settled } from '#lib/units/print';

/** An amount that may be changed, in any unit. */
export interface FitAmount {
  readonly start: number;
  readonly low: number;
  readonly high: number;
  /** Amounts are whole multiples of this, or stay as they are; null for any amount. */
  readonly step: number | null;
  /** What a change is measured by: the start itself; something else where that is 0. */
  readonly against: number;
}

/** A sum over the amounts that must lie between two limits: `base + Σ per × (amount − start)`. */
export interface FitLimit {
  /** The sum with every amount as it is. */
  readonly base: number;
  /** By amount: what one more of it adds. */
  readonly per: readonly number[];
  /** By amount: what it adds to be another amount at all, as where it is weighed anew; 0 where left out. */
  readonly anew?: readonly number[];
  readonly from: number | null;
  readonly to: number | null;
  /** What a miss is measured by. */
  readonly size: number;
}

export interface FitOptions {
  /** Seconds for each search. */
  readonly seconds?: number;
}

/**
 * Amounts that meet all limits. `fits`: with the least change there is, proven; `clash`: the limits of `clashing` cannot
 * be met together, none of them can be left out of that, and no smaller set clashes where `smallest`; `nearest` misses the least.
 * `stopped`: not decided in the time; no fewer than `atLeast` of change will do.
 */
export type FittedAmounts =
  | { readonly status: 'fits'; readonly amounts: readonly number[]; readonly change: number }
  | {
      readonly status: 'clash';
      readonly clashing: readonly number[];
      readonly smallest: boolean;
      readonly nearest: readonly number[] | null;
    }
  | { readonly status: 'stopped'; readonly atLeast: number | null };

/** Of changes that are alike small the one later in the list: an earlier one counts up to this share more. */
const PLACE = 1e-4;
/** A miss counts so many times a change when the nearest miss is looked for. */
const MISS = 1e4;
/** The solver's tolerance, with room: where it was used up, limits are drawn in by this and solved again. */
const TOLERANCE = 1e-6;
/** So many subsets of limits are looked at for the smallest that clashes; beyond, one that cannot be made smaller. */
const MOST_SUBSETS = 300;

/**
 * The least change of amounts that meets limits: the sum of relative changes, of like ones that of later amounts, in
 * practical steps, by HiGHS as a mixed-integer program.
 *
 * Laws: amounts that meet all limits stay as they are; a wider limit never needs more change.
 * @example one amount of 100 in steps of 10, twice which must be at least 230: 120, change 0.2
 */
export async function fitAmounts(
  amounts: readonly FitAmount[],
  limits: readonly FitLimit[],
  options: FitOptions = {},
): Promise<FittedAmounts> {
  for (const margin of [0, TOLERANCE]) {
    const solved = await solve(amounts, limits, { margin, options });
    if (solved.status === 'stopped') {
      const loose = amounts.map((amount) => ({ ...amount, step: null }));
      const bound = await solve(loose, limits, { margin: 0, options });
      return { status: 'stopped', atLeast: 'change' in bound ? bound.change : null };
    }
    if (solved.status === 'infeasible') break;
    if (limits.every((limit) => meets(limit, amounts, solved.amounts))) {
      return { status: 'fits', amounts: solved.amounts, change: changeOf(amounts, solved.amounts) };
    }
  }
  const { clashing, smallest } = await smallestClash(amounts, limits, options);
  const nearest = await solve(amounts, limits, { margin: 0, options, elastic: true });
  return {
    status: 'clash',
    clashing,
    smallest,
    nearest: 'amounts' in nearest ? nearest.amounts : null,
  };
}

/** The sum of relative changes. */
export function changeOf(amounts: readonly FitAmount[], chosen: readonly number[]): number {
  return amounts.reduce(
    (sum, { start, against }, at) => sum + Math.abs((chosen[at] ?? start) - start) / against,
    0,
  );
}

/** A limit's sum at chosen amounts. */
export function sumAt(
  { base, per, anew }: FitLimit,
  amounts: readonly FitAmount[],
  chosen: readonly number[],
): number {
  return amounts.reduce((sum, { start }, at) => {
    const amount = chosen[at] ?? start;
    if (amount === start) return sum;
    return sum + (per[at] ?? 0) * (amount - start) + (anew?.[at] ?? 0);
  }, base);
}

/** Whether chosen amounts keep a limit, to twelve digits. */
export function meets(
  limit: FitLimit,
  amounts: readonly FitAmount[],
  chosen: readonly number[],
): boolean {
  const sum = settled(sumAt(limit, amounts, chosen));
  return sum >= settled(limit.from ?? -Infinity) && sum <= settled(limit.to ?? Infinity);
}

interface Asked {
  readonly margin: number;
  readonly options: FitOptions;
  /** Limits may be missed, at a price. */
  readonly elastic?: boolean;
  /** Amounts that meet the limits are enough, whatever their change. */
  readonly anyWill?: boolean;
}

type Solved =
  | { readonly status: 'fits'; readonly amounts: readonly number[]; readonly change: number }
  | { readonly status: 'infeasible' }
  | { readonly status: 'stopped' };

async function solve(
  amounts: readonly FitAmount[],
  limits: readonly FitLimit[],
  { margin, options, elastic = false, anyWill = false }: Asked,
): Promise<Solved> {
  const { program, columns } = programOf(amounts, limits, { margin, elastic, anyWill });
  const solved = await optimise(program, options);
  if (solved.status === 'infeasible') return { status: 'infeasible' };
  if (solved.status !== 'optimal') return { status: 'stopped' };
  const chosen = amounts.map(({ start, step }, at) => {
    const column = columns[at];
    if (!column) return start;
    const { many, kept } = column;
    if (kept !== null && (solved.variables[kept] ?? 0) > 0.5) return start;
    const count = solved.variables[many] ?? 0;
    return step === null ? settled(count) : settled(Math.round(count) * step);
  });
  return { status: 'fits', amounts: chosen, change: changeOf(amounts, chosen) };
}

/** Where an amount stands in the program: how many steps, and whether it is kept as it is; null where it cannot change. */
interface Column {
  readonly many: number;
  readonly kept: number | null;
}

function programOf(
  amounts: readonly FitAmount[],
  limits: readonly FitLimit[],
  { margin, elastic, anyWill }: Required<Omit<Asked, 'options'>>,
): { readonly program: Program; readonly columns: readonly (Column | null)[] } {
  const variables: Variable[] = [];
  const rows: Row[] = [];
  const add = (variable: Variable) => variables.push(variable) - 1;
  const binary = { cost: 0, low: 0, high: 1, whole: true };
  const columns = amounts.map((amount, at): Column | null => {
    const { start, low, high, against } = amount;
    if (low === start && high === start) return null;
    const step = amount.step ?? 1;
    const whole = amount.step !== null;
    const least = whole ? Math.ceil(settled(low / step)) : low;
    const most = whole ? Math.floor(settled(high / step)) : high;
    const keepable = start >= low && start <= high;
    const onGrid = !whole || Number.isInteger(settled(start / step));
    const anew = limits.some((limit) => (limit.anew?.[at] ?? 0) !== 0);
    const keeps = keepable && (!onGrid || anew || least > most);
    if (least > most && !keeps) {
      throw new RangeError(`amount ${at} has no step between ${low} and ${high}`);
    }
    const many = add({
      cost: 0,
      low: keeps ? Math.min(0, least) : least,
      high: Math.max(0, most),
      whole,
    });
    const kept = keeps ? add(binary) : null;
    if (!anyWill) {
      const place = 1 + (PLACE * (amounts.length - at)) / amounts.length;
      const off = add({ cost: place, low: 0, high: null, whole: false });
      const by = step / against;
      const from = start / against;
      const keep = (times: number) => (kept === null ? [] : [{ variable: kept, times }]);
      // off ≥ ±(amount − start) / against, where an amount that is kept counts as its start.
      rows.push({
        terms: [{ variable: off, times: 1 }, { variable: many, times: -by }, ...keep(-from)],
        low: -from,
        high: null,
      });
      rows.push({
        terms: [{ variable: off, times: 1 }, { variable: many, times: by }, ...keep(from)],
        low: from,
        high: null,
      });
    }
    if (kept !== null) {
      // No steps where it is kept, and between the bounds where it is not.
      const top = Math.max(0, most);
      rows.push({
        terms: [
          { variable: many, times: 1 },
          { variable: kept, times: top },
        ],
        low: null,
        high: top,
      });
      rows.push({
        terms: [
          { variable: many, times: 1 },
          { variable: kept, times: least },
        ],
        low: least,
        high: null,
      });
      if (least > most) rows.push({ terms: [{ variable: kept, times: 1 }], low: 1, high: null });
    }
    return { many, kept };
  });
  for (const limit of limits) {
    const { base, per, anew, from, to, size } = limit;
    let fixed = base;
    const terms: { variable: number; times: number }[] = [];
    amounts.forEach(({ start, step }, at) => {
      const column = columns[at];
      if (!column) return;
      const each = per[at] ?? 0;
      const moved = (anew?.[at] ?? 0) - each * start;
      fixed += moved;
      terms.push({ variable: column.many, times: (each * (step ?? 1)) / size });
      if (column.kept !== null) terms.push({ variable: column.kept, times: -moved / size });
    });
    if (elastic) {
      const slack = { cost: MISS, low: 0, high: null, whole: false };
      if (from !== null) terms.push({ variable: add(slack), times: 1 });
      if (to !== null) terms.push({ variable: add(slack), times: -1 });
    }
    rows.push({
      terms: terms.filter(({ times }) => times !== 0),
      low: from === null ? null : (from - fixed) / size + margin,
      high: to === null ? null : (to - fixed) / size - margin,
    });
  }
  return { program: { goal: 'least', variables, rows }, columns };
}

/** The smallest set of limits that cannot be met together, the first in their order of several. */
async function smallestClash(
  amounts: readonly FitAmount[],
  limits: readonly FitLimit[],
  options: FitOptions,
): Promise<{ readonly clashing: readonly number[]; readonly smallest: boolean }> {
  const loose = amounts.map((amount) => ({ ...amount, step: null }));
  const clashes = async (set: readonly number[]) => {
    const only = set.flatMap((at) => limits[at] ?? []);
    const asked = { margin: 0, options, anyWill: true };
    // Without steps it is soon said, and what clashes then clashes in steps.
    if ((await solve(loose, only, asked)).status === 'infeasible') return true;
    return (await solve(amounts, only, asked)).status === 'infeasible';
  };
  const all = limits.map((_, at) => at);
  let looked = 0;
  for (let size = 1; size < all.length; size += 1) {
    const sets = subsets(all, size);
    looked += sets.length;
    if (looked > MOST_SUBSETS) break;
    for (const set of sets) if (await clashes(set)) return { clashing: set, smallest: true };
    if (size === all.length - 1) return { clashing: all, smallest: true };
  }
  if (all.length <= 1) return { clashing: all, smallest: true };
  let left = all;
  for (const each of all) {
    const without = left.filter((other) => other !== each);
    if (await clashes(without)) left = without;
  }
  return { clashing: left, smallest: false };
}

function subsets(of: readonly number[], size: number): readonly (readonly number[])[] {
  if (size === 0) return [[]];
  return of.flatMap((first, at) =>
    subsets(of.slice(at + 1), size - 1).map((rest) => [first, ...rest]),
  );
}
