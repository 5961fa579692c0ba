import type { SaidScope } from '#lib/episode/said-line';

/** One text for each scope. `scopeKey({ kind: 'whole', segmentId: 's1' })` → `'whole s1'` */
export function scopeKey(scope: SaidScope): string {
  if (scope.kind === 'day') return 'day';
  return scope.kind === 'portion'
    ? `portion ${scope.portionId}`
    : `${scope.kind} ${scope.segmentId}`;
}
