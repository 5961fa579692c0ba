import type { AmountWords } from '../judging-words';
import { phrasesOf } from './words';

const COUNTS: readonly (readonly [times: number, words: string])[] = [
  [1 / 2, 'half, ½, a half'],
  [1 / 3, 'a third, one third, ⅓'],
  [2 / 3, 'two thirds, ⅔'],
  [1 / 4, 'a quarter, one quarter, ¼'],
  [3 / 4, 'three quarters, ¾'],
  [2, 'two, both, 2'],
  [3, 'three, all three, 3'],
  [4, 'four, all four, 4'],
  [5, 'five, 5'],
  [6, 'six, 6'],
];

/** Words of what is held in a vessel or cut off, by what they are called alike: a tin is a can. */
const VESSELS: readonly string[] = [
  'can, cans, tin, tins, tinned, canned',
  'packet, packets, pack, packs, package, packages, sachet, sachets, pouch, pouches',
  'jar, jars',
  'tub, tubs, pot, pots',
  'bag, bags, sack, net',
  'bottle, bottles',
  'carton, cartons, box, boxes',
  'scoop, scoops, scoopful',
  'handful, handfuls',
  'bunch, bunches',
  'head, heads',
  'block, blocks',
  'mug, mugs',
  'jug, jugs',
  'punnet, punnets',
  'tray, trays',
  'tube, tubes',
  'ladle, ladles, ladleful, ladlefuls',
  'spoon, spoons, spoonful, spoonfuls',
  'drizzle, glug, splash',
];

const TIMES = COUNTS.flatMap(([times, words]) =>
  phrasesOf(words).map((word) => [word, times] as const),
);
const counted = TIMES.map(([word]) => word)
  .sort((a, b) => b.length - a.length)
  .join('|');

/** Shares alone: less than all of it. */
const SHARES = TIMES.filter(([, times]) => times < 1)
  .map(([word]) => word)
  .sort((a, b) => b.length - a.length)
  .join('|');

/** Words around an amount that say how much of it is used, or that each portion has it. */
export const AMOUNT_WORDS: AmountWords = {
  vessels: new Map(
    VESSELS.flatMap((alike, index) => phrasesOf(alike).map((word) => [word, index] as const)),
  ),
  times: new Map(TIMES),
  used: new RegExp(
    `\\b(?:use|uses|using|used|need|take|taking|took|put|putting|add|adding)\\s+(?:in\\s+|only\\s+|just\\s+)?(${counted})\\s+(?:of\\s+)?(?:them|those|these|it|that|the\\s+(\\p{L}+))(?![\\p{L}])`,
    'iu',
  ),
  shareBefore: new RegExp(
    `\\b(${SHARES})\\s+(?:of\\s+)?(?:it|them|that|this|those|these|(?:the|my|your|our|that)\\s+(\\p{L}+))\\b[^.!?;\\d]{0,50}?\\b(?:so|meaning|which|(?:that|it)(?:['’]?s|\\s+is))(?:\\s+(?:so|that['’]?s|thats|that is|it['’]?s|its|is|i\\s+mean|like|means?|to|be|would|will|about|around|roughly|say|just|only|maybe|another|a|bit|over|under))*\\s*$`,
    'iu',
  ),
  eachHas:
    /\beach(?: one| of (?:them|these|those)| \p{L}+)?\s+(?:gets?|takes?|has|holds?|needs?)\b|\b(?:per|for each|in each|into each|on each|onto each|to each|in every|into every)\s+(?:one|of them|\p{L}+)\b/iu,
};
