import type { Role } from '../language';
import type { Scope } from '../statement';
import { plural } from './parts';
import { scope } from './scope-phrases';
import { all, framed } from './words';

/** What may be said of each part: 'per bowl', 'one of the bowls', 'the bowl' with a verb. */
export const ofPart = (nouns: readonly string[], of: Scope): [string, Role][] => [
  ...scope(
    framed(
      'per {}, / {}, each {}, every {}, each one of the {}, for each {}, a single {}, one single {}, in each {}, in every {}, in every single {}, every single {}',
      nouns,
    ),
    of,
    'free',
  ),
  ...scope(
    framed(
      'one {}, this {}, for one {}, in one {}, the whole {}, each of the {}, 1 {}, 1 whole {}, full {}, a full {}, the full {}, one full {}',
      nouns,
    ),
    of,
    'free',
  ),
  ...scope(
    framed(
      'each of the {}, each of these {}, each of those {}, every one of the {}, every one of these {}, one of the {}, one of these {}',
      nouns.map(plural),
    ),
    of,
    'free',
  ),
  ...scope(
    framed(
      'a {}, an {}, in a {}, for a {}, in the {}, in this {}, for this {}, for the {}, to a {}, to the {}, that {}, by the {}, on a {}, on the {}, on one {}, on this {}, in that {}, on each {}, on my {}, in my {}, on your {}, in your {}, of my {}, on that {}',
      nouns,
    ),
    of,
    'behind',
  ),
  ...scope(framed('the {}, a {}, your {}, my {}', nouns), of, 'subject'),
];

/** Before all pieces of it. */
export const ALL_THE: [string, Role][] = all<Role>(
  'all, all the, all of the, all of these, all these, all my, all of them, the whole lot of, every one of the',
  { cat: 'allThe' },
);

/** How all of it is said; also with its verb in one: 'the whole pie's'. */
export const wholeOf = (nouns: readonly string[]): string[] =>
  framed(
    'the whole {}, a whole {}, whole {}, this whole {}, this entire {}, that whole {}, that entire {}, my whole {}, your whole {}, for the whole {}, the entire {}, entire {}, the full {}, all of the {}, the complete {}, the whole {} of it, an entire {}, full {}',
    nouns,
  ).flatMap((phrase) => [phrase, `${phrase}'s`]);

/** How half of it is said. */
export const halfOf = (nouns: readonly string[]): string[] =>
  framed(
    'half the {}, half of the {}, half of this {}, half this {}, ½ {}, ½ the {}, half a {}, half of a {}, half your {}, half that {}, half of that {}, half {}, 1/2 {}, 1/2 the {}',
    nouns,
  );
