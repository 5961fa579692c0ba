import type { Role } from '../language';
import type { Hedge } from '../statement';
import { all } from './words';

const BEFORE: readonly (readonly [Hedge, string])[] = [
  [
    'about',
    "about, around, roughly, approximately, approx, approx., ca, ca., circa, ~, ≈, ∼, somewhere around, somewhere near, somewhere in the region of, in the region of, call it, maybe, like, i think, i wanna say, i want to say, let us say, let's say, call that, in the neighborhood of, in the ballpark of, ballpark, more or less, close to, probably, give or take, say, around about, round about, some, in or around, in and around, there or thereabouts, roughly speaking, more like, something like, in the order of, on the order of, in the vicinity of, somewhere about, somewhere round, something around, hovering around, maybe like, probably around, probably about, i reckon, i'd say, i would say, i'd guess, around the, give or take a bit, let us call it, plus or minus, -ish, approaching about",
  ],
  [
    'justOver',
    'just over, a touch over, a little over, a little more than, just above, a hair over, slightly over, a bit over, a shade over, a smidge over, slightly more than, a bit more than, just a touch over, just a hair over, just past, a tad over, barely over, a tick over, a whisker over, a wee bit over, a wee bit more than, a smidgen over, a smidgeon over, a fraction over, a hair above, a touch above, a tad above, a smidge above, a bit above, a little above, a little bit over, a little bit more than, a touch more than, a tad more than, a smidge more than, a hair more than, just a little over, just a smidge over, just a bit over, just a tad over, a nudge over, marginally over, a sliver over, only just over, only over, just barely over, just north of, just the other side of, slightly above, ever so slightly over, only slightly over, only a hair over, just a little above',
  ],
  [
    'atLeast',
    'at least, over, more than, upwards of, a minimum of, minimum, minimum of, >, ≥, > =, no less than, not less than, no fewer than, north of, above, well over, way over, min., a good bit over, easily over, in excess of, comfortably over, comfortably above, well above, upward of, at the very least, at the least, greater than, not under, not below, a minimum, a good deal over',
  ],
  [
    'under',
    'under, sub, less than, fewer than, below, <, well under, way under, comfortably under, south of, well below, not even, comfortably below, under the, way below, safely under, less then',
  ],
  [
    'atMost',
    'at most, up to, no more than, not more than, max, maximum, a maximum of, not over, ≤, < =, at the most, as much as, at the very most, no higher than, capped at, not above, not exceeding',
  ],
  [
    'almost',
    'almost, nearly, just under, not quite, a hair under, just shy of, a touch under, a little under, just below, a little less than, shy of, a bit under, slightly under, close on, a shade under, a smidge under, a hair shy of, very nearly, practically, pretty much, a tad under, just about, slightly less than, a bit less than, the guts of, guts of, knocking on, knocking on for, getting on for, pushing, close on to, near on, nigh on, well nigh, a whisker under, a whisker off, a whisker shy of, a hair off, just off, just short of, a bit short of, a touch below, a tad below, a smidge below, a hair below, a shade below, a little below, touching, not far off, not far from, coming up on, coming up to, nudging, bordering on, approaching, verging on, a wee bit under, a fraction under, marginally under, a smidgen under, a smidgeon under, damn near, darn near, as good as, virtually, all but, a little shy of, a bit shy of, a touch shy of, a tad shy of, a smidge shy of, a little bit under, a little bit less than, a touch less than, a smidge less than, a tad less than, just this side of, just the right side of, ever so slightly under, only just under, a hair less than, slightly below, best part of, the best part of, the better part of',
  ],
];

const AFTER: readonly (readonly [Hedge, string])[] = [
  [
    'about',
    'ish, or so, give or take, roughly, approximately, approx, or thereabouts, ballpark, more or less, or something, or something like that, about, odd, or there abouts, there or thereabouts, or somewhere around there, or around there, or thereby, or near enough, near enough, or close to it, i think, i reckon, i guess, i believe, by my reckoning, or roughly, roughly speaking, as near as makes no difference',
  ],
  [
    'atLeast',
    'plus, or more, and up, minimum, at least, at the least, at a minimum, min, or over, at the very least, and then some, and upwards, or upwards, or better, or above, or higher, and over',
  ],
  [
    'justOver',
    'and a little change, and change, and a bit, and a little bit, and a smidge, and a wee bit, and a tad, and some change, and a touch, and a hair, and a little, or just over, or a bit over, or a touch over',
  ],
  [
    'almost',
    'nearly, almost, just about, or thereabouts just under, or just under, or a touch under, or just shy, or a bit under, or a hair under',
  ],
  [
    'atMost',
    'at the very most, at the outside, absolute max, tops, max, maximum, at most, at the most, or less, or under, or fewer',
  ],
];

/** How numbers are softened. 'Exactly', 'only', 'a solid' and the like do not. */
export const HEDGES: [string, Role][] = BEFORE.flatMap(([hedge, words]) =>
  all<Role>(words, { cat: 'hedge', hedge }),
);

/** The same behind a number, its unit or its noun. */
export const HEDGES_AFTER: [string, Hedge][] = AFTER.flatMap(([hedge, words]) =>
  all<Hedge>(words, hedge),
);
