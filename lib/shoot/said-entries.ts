/** What a line that was said is about. `soFar`: the dishes up to and with this one. */
export type SaidScope =
  | { readonly kind: 'day' }
  | { readonly kind: 'whole' | 'half' | 'soFar'; readonly segmentId: string }
  | { readonly kind: 'portion'; readonly segmentId: string; readonly portionId: string };

/** The nutrients that a line says. */
export const SAID_NUTRIENTS = ['energyKcal', 'protein'] as const;

/** A number as it was said. */
export interface SaidAmount {
  readonly nutrient: (typeof SAID_NUTRIENTS)[number];
  /** The number in the words, in the nutrient's unit: 640 of 'about 640'. */
  readonly amount: number;
  /** `exact`: said as it stands, in whole units. */
  readonly hedge: 'exact' | 'about' | 'atLeast' | 'atMost';
  /** What was computed then, unrounded; null where it had no upper bound. */
  readonly value: number | null;
}

/** A line that was said: locked there and then. */
export interface Said {
  readonly scope: SaidScope;
  /** Word for word. */
  readonly text: string;
  readonly numbers: readonly SaidAmount[];
}

/** One text for each scope. `scopeKey({ kind: 'whole', segmentId: 's1' })` → `'whole s1'` */
export function scopeKey(scope: SaidScope): string {
  if (scope.kind === 'day') return 'day';
  return scope.kind === 'portion'
    ? `portion ${scope.portionId}`
    : `${scope.kind} ${scope.segmentId}`;
}
