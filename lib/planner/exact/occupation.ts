import { lower, upper } from './atoms';

/**
 * A task as a resource sees it: two variables, its start and its end. Where the length is fixed the end is
 * the start's variable plus an offset, so that both cost one variable.
 */
export interface Occupation {
  readonly start: number;
  readonly end: number;
  /** The task ends at `end`'s value plus this. */
  readonly endOffset: number;
  /** The length it has at least. */
  readonly length: number;
  /** Units it takes, the same throughout. */
  readonly units: number;
}

/** The bounds whose rise changes when an occupation may or must be there. */
export function boundsOf(occupations: readonly Occupation[]): number[] {
  const all = occupations.flatMap(({ start, end }) => [
    lower(start),
    upper(start),
    lower(end),
    upper(end),
  ]);
  return [...new Set(all)];
}
