import type { Role } from '../language';
import { conjugated } from './verbs';
import { all, framed, phrasesOf } from './words';

/** Whom it saves or gains something, or how much of it is meant, between the verb and its number. */
const TO_WHOM =
  ', you, me, us, them, it, another, a whopping, a full, a good, a solid, a cool, just';

const LOWERING =
  'cut, cuts, cutting, drop, drops, dropped, dropping, reduce, reduces, reduced, reducing, lower, lowers, lowered, lowering, bring down, brings down, brought down';
const RAISING =
  'raise, raises, raised, raising, increase, increases, increased, increasing, boost, boosts, boosted, boosting, bump up, bumps up, bumped up, push up, pushes up, pushed up, put up, puts up, lift, lifts';

/** 'drops by', 'cut it by', 'raises the protein by'. */
const byIt = (verbs: string): string[] =>
  phrasesOf(verbs).flatMap((verb) => [
    `${verb} by`,
    ...framed(
      `${verb} {} by`,
      phrasesOf('it, them, that, this, the total, the number, everything'),
    ),
    ...framed(
      `${verb} the {} by, ${verb} {} by, ${verb} your {} by`,
      phrasesOf(
        'calories, energy, fat, sat fat, carbs, sugar, protein, fibre, fiber, salt, sodium',
      ),
    ),
  ]);

/** What a change takes away or puts on, before the number and behind it (common practice, no source). */
export const DIFFERENCES: [string, Role][] = [
  ...[
    ...conjugated('save saves saved saving', TO_WHOM),
    ...conjugated('cut cuts cut cutting', ', out, out another, another, off, you'),
    ...conjugated(
      'knock knocks knocked knocking, shave shaves shaved shaving, lop lops lopped lopping, chop chops chopped chopping, trim trims trimmed trimming',
      'off, another, off another, off a whopping, off a good, off you, out',
    ),
    ...conjugated('take takes took taking', 'off, out, away, off another, away another'),
    ...conjugated(
      'lose loses lost losing, drop drops dropped dropping, shed sheds shed shedding',
      ', you, another',
    ),
    ...framed("you {}, i {}, we {}, you'll {}, you can {}", phrasesOf('save, cut, lose, drop')),
    ...byIt(LOWERING),
    ...phrasesOf(
      'down by, lower by, lighter by, a saving of, savings of, the saving is, a drop of, a reduction of, less by, fewer by, falls by, fell by',
    ),
  ].map((phrase): [string, Role] => [phrase, { cat: 'by', against: 'less' }]),
  ...[
    ...conjugated('gain gains gained gaining', TO_WHOM),
    ...byIt(RAISING),
    ...phrasesOf('up by, higher by, heavier by, a gain of, an increase of'),
  ].map((phrase): [string, Role] => [phrase, { cat: 'by', against: 'more' }]),
  // Of a food that is named it is what that has; only where things are swapped it is a difference.
  ...[
    ...conjugated('add adds added adding', ', you, in, on, another, about, back'),
    ...conjugated('put puts put putting', 'on, in, back, back in, on another'),
  ].map((phrase): [string, Role] => [phrase, { cat: 'by', against: 'more', swapped: true }]),
  ...all<Role>(
    'saved, knocked off, shaved off, taken off, lopped off, trimmed off, cut out, off the total',
    { cat: 'byBehind' },
  ),
  ...all<Role>(
    'swap, swaps, swapped, swapping, the swap, that swap, this swap, instead of, in place of, replace, replaces, replaced, replacing, trade, trading, traded, switch, switches, switched, switching, subbing, subbed, sub, →, ->, ditch, ditching, ditched, leave out, leaving out, left out, skip, skipping, skipped',
    { cat: 'swap' },
  ),
  ...all<Role>('was, were, came in at, came to, had, it was, they were, that was', { cat: 'was' }),
  ...all<Role>(
    "now it is, now it's, now its, now they are, now they're, now this is, now that's, now that is, now just, now only, is now, are now, it's now, its now, this is now, now it comes in at, now it has, now they have, now comes in at, now down to, now it's down to",
    { cat: 'nowIs' },
  ),
  ...all<Role>(
    'trying to cut, trying to lose, trying to save, want to cut, want to lose, want to save, need to cut, need to lose, have to lose, to lose weight, aim to cut, hoping to lose',
    { cat: 'target' },
  ),
];
