import { phrases } from '../words/phrases';
import type { ClaimWords } from '../language';
import type { Claim } from '../statement';
import { all, phrasesOf, set } from './words';

/**
 * Words by which food is sold and that law ties to a number (US 21 CFR 101.54 to 101.62; Regulation (EC) 1924/2006,
 * Annex); the turns of speech around them are common practice.
 */
export const CLAIM_WORDS: ClaimWords = {
  before: phrases<Claim>([
    ...all<Claim>(
      'high, high in, higher, rich in, packed with, loaded with, full of, very high, super high, really high in, very high in, naturally high in, bursting with, crammed with, excellent source of, great source of, an excellent source of, jam packed with, filled with, super high in, so high in, stuffed with',
      'high',
    ),
    ...all<Claim>('source of, good source of, a good source of, a source of', 'source'),
    ...all<Claim>(
      'low, low in, lower, very low, very low in, super low, really low in, super low in, ultra low, naturally low in',
      'low',
    ),
    ...all<Claim>('zero, free from, free of, no, 0, naturally free of', 'free'),
    ...all<Claim>('no added, without added, zero added', 'noAdded'),
    ...all<Claim>('reduced, less, reduced in', 'reduced'),
  ]),
  behind: phrases<Claim>([
    ...all<Claim>('packed, rich, loaded', 'high'),
    ...all<Claim>('free', 'free'),
    ...all<Claim>('added', 'noAdded'),
    ...all<Claim>('reduced', 'reduced'),
  ]),
  alone: phrases<Claim>([
    ...all<Claim>('light, lite', 'light'),
    ...all<Claim>('lean, extra lean', 'lean'),
  ]),
  aloneAfter: set("it's a this that's they're keeps keep stays nice"),
  degree: set(
    'really real properly proper dead well super so pretty nice and very still also fairly quite',
  ),
  subjects: set('it this that they one these'),
  its: set("it it's its"),
  they: set("they they're theyre these those"),
  ifs: set('if suppose supposing imagine'),
  would: set("would it'd that'd they'd you'd"),
  thisOne: set('this these'),
  pointing: set("it it's this this's these they're mine ours"),
  doers: set('i we you he she they'),
  persons: set("i you we i'm you're i've you've we've you'll"),
  denied: set("not isn't never exactly no hardly wouldn't don't doesn't"),
  asked: phrases(
    phrasesOf(
      "wouldn't call it, would not call it, wouldn't call this, won't call it, can't call it, couldn't call it, don't call it, never call it, wouldn't say it's, not pretending, not saying, not claiming, not calling, not going to say, not gonna say, not gonna call, not going to call, nobody is saying it's, nobody says it's, nobody's saying it's, no one says it's, i'm not saying it's, nobody said it's, is it, is this, is that, are they, are these, does it, can you call it, would you call it, would you call this, who says",
    ).map((words) => [words, true]),
  ),
  deniedBehind: phrases<'always' | 'alone'>([
    ...all<'always' | 'alone'>(
      "it is not, it isn't, this is not, this isn't, they are not, they aren't, it ain't, it was not, i am not saying, not really, not quite",
      'always',
    ),
    ...all<'always' | 'alone'>('no, not', 'alone'),
  ]),
  dishes: set(
    'soup dinner lunch breakfast supper meal stew chili chilli bowl salad recipe curry pasta noodles brownie brownies pancake pancakes muffin muffins meatloaf pizza dessert snack snacks version dish food lasagne lasagna casserole tray bake traybake skillet burrito burritos tacos taco wrap wraps jars jar pots pot fritters frittata omelette cake cookies risotto pie comfort flatbread flatbreads bagel bagels waffles oats sandwich loaf loaves',
  ),
};
