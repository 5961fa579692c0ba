/** Milliseconds that a piece of work takes. */
export async function timed<T>(work: () => T | Promise<T>): Promise<{ ms: number; value: T }> {
  const start = performance.now();
  const value = await work();
  return { ms: performance.now() - start, value };
}

/** The value below which a share of the samples lies: `quantile(samples, 0.95)`. */
export function quantile(samples: readonly number[], share: number): number {
  const sorted = [...samples].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}

/** Milliseconds with three digits or so. */
export function ms(value: number): string {
  return value >= 100 ? value.toFixed(0) : value.toPrecision(3);
}
