import { CARDINALS, FRACTIONS } from '#lib/episode/read-ingredient-words';
import type { NumberWords } from '../language';
import { set } from './words';

/** Words of numbers as they are spoken, American and British (common practice, no source). */
export const NUMBERS: NumberWords = {
  cardinals: new Map([['zero', 0], ...CARDINALS, ['fourty', 40], ['ninty', 90]]),
  nought: set('oh o'),
  hundred: set('hundred'),
  thousand: set('thousand grand'),
  point: set('point comma'),
  and: set('and n'),
  article: set('a an'),
  another: set('another'),
  fractions: FRACTIONS,
  half: set('half'),
  counts: new Map([
    ['dozen', 12],
    ['couple', 2],
    ['pair', 2],
  ]),
  of: set('of'),
  to: set('to through til till - – —'),
  or: set('or and'),
  either: set('or'),
  between: set('between'),
  soundAlikes: new Map([
    ['ate', 8],
    ['for', 4],
    ['won', 1],
    ['too', 2],
    ['to', 2],
  ]),
  vague: set('few several couple many some of odd per the'),
  pointers: set('the this that these those which every another other old new bought shop'),
  open: set('something ish-something'),
};
