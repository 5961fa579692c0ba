import type { Role } from '../language';
import type { Hedge } from '../statement';
import { all } from './words';

const BEFORE: readonly (readonly [Hedge, string])[] = [
  [
    'about',
    "about, around, roughly, approximately, approx, approx., ca, ca., circa, ~, ≈, ∼, somewhere around, somewhere near, somewhere in the region of, in the region of, call it, maybe, like, i think, i wanna say, i want to say, let us say, let's say, call that, in the neighborhood of, in the ballpark of, ballpark, more or less, close to, probably, give or take, say, around about, round about, some",
  ],
  [
    'justOver',
    'just over, a touch over, a little over, a little more than, just above, a hair over, slightly over, a bit over, a shade over, a smidge over, slightly more than, a bit more than, just a touch over, just a hair over, just past, a tad over, barely over, a tick over',
  ],
  [
    'atLeast',
    'at least, over, more than, upwards of, a minimum of, minimum, minimum of, >, ≥, > =, no less than, not less than, no fewer than, north of, above, well over, way over, min., a good bit over, easily over',
  ],
  ['under', 'under, less than, fewer than, below, <, well under, way under, comfortably under'],
  [
    'atMost',
    'at most, up to, no more than, not more than, max, maximum, a maximum of, not over, ≤, < =, tops, at the most, as much as',
  ],
  [
    'almost',
    'almost, nearly, just under, not quite, a hair under, just shy of, a touch under, a little under, just below, a little less than, shy of, a bit under, slightly under, close on, a shade under, a smidge under, a hair shy of, very nearly, practically, pretty much, a tad under, just about, slightly less than, a bit less than',
  ],
];

const AFTER: readonly (readonly [Hedge, string])[] = [
  [
    'about',
    'ish, or so, give or take, roughly, approximately, approx, or thereabouts, ballpark, more or less, or something, or something like that, about',
  ],
  [
    'atLeast',
    'plus, or more, and up, minimum, at least, at the least, at a minimum, min, or over, and change',
  ],
  ['atMost', 'tops, max, maximum, at most, at the most, or less, or under, or fewer'],
];

/** How numbers are softened. 'Exactly', 'only', 'a solid' and the like do not. */
export const HEDGES: [string, Role][] = BEFORE.flatMap(([hedge, words]) =>
  all<Role>(words, { cat: 'hedge', hedge }),
);

/** The same behind a number, its unit or its noun. */
export const HEDGES_AFTER: [string, Hedge][] = AFTER.flatMap(([hedge, words]) =>
  all<Hedge>(words, hedge),
);
