import type { Parts } from '#lib/figures/parts';
import { variancePieces } from '#lib/units/bounds';

/** What of an ingredient is uncertain; each is mended in its own way. */
export const CAUSES = [
  'scale',
  'quantity',
  'measure',
  'serving',
  'refuse',
  'yield',
  'leftBehind',
  'either',
  'bounded',
  'value',
] as const;
export type Cause = (typeof CAUSES)[number];

const CAUSE_OF: Readonly<Record<string, Cause>> = {
  weighing: 'scale',
  scale: 'scale',
  amount: 'scale',
  quantity: 'quantity',
  measure: 'measure',
  serving: 'serving',
  refuse: 'refuse',
  yield: 'yield',
  left: 'leftBehind',
  either: 'either',
  bounded: 'bounded',
  food: 'value',
};

/** A row's part of the uncertainty of a figure. */
export interface RowUncertainty {
  /** Part of the likely variance, 0 to 1. */
  readonly share: number;
  /** The same by what causes it; sums to `share`. */
  readonly causes: ReadonlyMap<Cause, number>;
  /** Places of the other rows that share an error with this one. */
  readonly sharedWith: readonly number[];
}

export interface Uncertainty {
  readonly rows: readonly RowUncertainty[];
  /** The part of what divides all rows: the weight of the finished dish. */
  readonly divisor: number;
}

/**
 * Which row the likely width of a sum comes from: each piece of its variance (rectangular errors, first
 * derivatives and the product term; JCGM 100:2008, 5.1 and its note, from memory) belongs to the row whose
 * source it is; one that rows share is split in the ratio of their slopes. The shares, with the divisor's own,
 * sum to 1. A row that shares nothing, made exact, leaves the likely variance smaller by its share.
 * Null where nothing is uncertain.
 *
 * @param divisors ids that belong to no row
 */
export function uncertaintyOf(
  rows: readonly Parts[],
  total: Parts,
  divisors: ReadonlySet<string>,
): Uncertainty | null {
  const pieces = variancePieces(total.terms, total.sources);
  const variance = pieces.reduce((sum, piece) => sum + piece.variance, 0);
  if (!(variance > 0)) return null;
  const slopes = rows.map(slopesOf);
  const causes = rows.map(() => new Map<Cause, number>());
  const shared = rows.map(() => new Set<number>());
  let divisor = 0;
  for (const piece of pieces) {
    const share = piece.variance / variance;
    const own = piece.ids.filter((id) => !divisors.has(id));
    if (own.length === 0) {
      divisor += share;
      continue;
    }
    const key = keyOf(piece.ids);
    const weights = slopes.map((of) => Math.abs(of.get(key) ?? 0));
    const sum = weights.reduce((all, weight) => all + weight, 0);
    if (share === 0 || sum === 0) continue;
    const holders = weights.flatMap((weight, index) => (weight > 0 ? [index] : []));
    for (const index of holders) {
      const cause = causeOf(own);
      const part = (share * (weights[index] ?? 0)) / sum;
      causes[index]?.set(cause, (causes[index].get(cause) ?? 0) + part);
      for (const other of holders) if (other !== index) shared[index]?.add(other);
    }
  }
  return {
    divisor,
    rows: causes.map((of, index) => ({
      share: [...of.values()].reduce((sum, part) => sum + part, 0),
      causes: of,
      sharedWith: [...(shared[index] ?? [])].sort((a, b) => a - b),
    })),
  };
}

function slopesOf({ terms, sources }: Parts): ReadonlyMap<string, number> {
  return new Map(
    variancePieces(terms, sources).map(({ ids, slope }): [string, number] => [keyOf(ids), slope]),
  );
}

function keyOf(ids: readonly string[]): string {
  return [...ids].sort().join('|');
}

/** Of two sources that are multiplied, the amount is the one to mend. */
function causeOf(ids: readonly string[]): Cause {
  const causes = ids.map((id) => CAUSE_OF[id.split(':')[0] ?? ''] ?? 'value');
  return causes.find((cause) => cause !== 'value') ?? 'value';
}
