import type { EpisodeFile } from '#lib/episode/schema';
import { namedScopes } from '#lib/figures/breakdown-scope';
import type { NumberScope } from '#lib/figures/published-numbers';

/**
 * The amount of a dish that counts to the day, as breakdowns name it: the whole dish where all of it is eaten.
 * @example eatenScope(file, 's1') // { kind: 'whole', segmentId: 's1' }
 */
export function eatenScope(file: EpisodeFile, segmentId: string): NumberScope {
  const eaten = namedScopes(file).find(
    ({ scope }) => scope.kind === 'eaten' && scope.segmentId === segmentId,
  );
  return eaten?.scope ?? { kind: 'whole', segmentId };
}
