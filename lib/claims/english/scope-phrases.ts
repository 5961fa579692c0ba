import type { Role } from '../language';
import type { Scope } from '../statement';

type Link = 'subject' | 'behind' | 'free' | 'counted' | 'ahead';
/** Phrases that say of what a number is, all with one link. */
export const scope = (phrases: readonly string[], of: Scope, link: Link): [string, Role][] =>
  phrases.map((phrase) => [phrase, { cat: 'scope', scope: of, link }]);
