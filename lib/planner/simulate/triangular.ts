/** A length that is not known before it is over: the shortest, the most likely, the longest. */
export interface Spread {
  readonly low: number;
  readonly mode: number;
  readonly high: number;
}

/**
 * The value below which a share of a triangular distribution lies (its inverse CDF): with the CDF
 * (x − low)² / ((high − low)(mode − low)) up to the mode and 1 − (high − x)² / ((high − low)(high − mode))
 * above it (Evans, Hastings, Peacock, Statistical Distributions; from memory).
 *
 * @param share from 0 to 1
 * @example triangularAt({ low: 0, mode: 1, high: 2 }, 0.5) // 1
 */
export function triangularAt({ low, mode, high }: Spread, share: number): number {
  const width = high - low;
  if (width <= 0) return mode;
  const below = (mode - low) / width;
  return share < below
    ? low + Math.sqrt(share * width * (mode - low))
    : high - Math.sqrt((1 - share) * width * (high - mode));
}

/** The share of a triangular distribution that lies at or below a value: `triangularBelow({ low: 0, mode: 1, high: 2 }, 1)` → 0.5. */
export function triangularBelow({ low, mode, high }: Spread, value: number): number {
  if (value >= high) return 1;
  if (value < low) return 0;
  if (value < mode) return (value - low) ** 2 / ((high - low) * (mode - low));
  return 1 - (high - value) ** 2 / ((high - low) * (high - mode));
}
