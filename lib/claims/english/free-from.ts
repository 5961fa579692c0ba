import type { Allergen } from '#lib/foods/food';
import type { FreeFromWords, FreeOf } from '../free-from-words';
import { phrases } from '../words/phrases';
import { all, framed, phrasesOf, set } from './words';

const of = (...from: Allergen[]): FreeOf => ({ from });
const diet = (name: NonNullable<FreeOf['diet']>): FreeOf => ({ from: [], diet: name });

const NUTS = of('treeNuts', 'peanuts');
const GLUTEN = of('glutenCereals');
const VEGAN = diet('vegan');
const VEGETARIAN = diet('vegetarian');
const MEAT_FREE = diet('meatFree');

/**
 * What labels say a food is free of, by the allergens of law (FALCPA 2004, FASTER Act 2021; Regulation (EU) 1169/2011,
 * Annex II); nuts are those of trees and peanuts, as buyers take the word (common practice, no source).
 */
const NAMES: readonly (readonly [string, FreeOf])[] = [
  ['nut, nuts', NUTS],
  ['tree nut, tree nuts', of('treeNuts')],
  ['peanut, peanuts', of('peanuts')],
  ['gluten', GLUTEN],
  ['wheat', of('wheat')],
  ['dairy, milk, dairy products', of('milk')],
  ['egg, eggs', of('egg')],
  ['soy, soya', of('soy')],
  ['sesame, sesame seeds', of('sesame')],
  ['fish', of('fish')],
  ['shellfish', of('crustaceans', 'molluscs')],
  ['crustaceans', of('crustaceans')],
  ['molluscs, mollusks', of('molluscs')],
  ['celery', of('celery')],
  ['mustard', of('mustard')],
  ['lupin', of('lupin')],
  ['sulphites, sulfites, sulphite, sulfite', of('sulphites')],
  ['meat', MEAT_FREE],
  ['animal products', VEGAN],
];

const table = (rows: readonly (readonly [string, FreeOf])[]) =>
  phrases(rows.flatMap(([row, value]) => all(row, value)));

/** 'nutfree', as tags are written. */
const GLUED = NAMES.flatMap(([row, value]) =>
  phrasesOf(row)
    .filter((name) => !name.includes(' '))
    .map((name): readonly [string, FreeOf] => [`${name}free`, value]),
);

const SUITS = framed(
  '{} friendly, {} safe, suitable for {}, safe for {}, fine for {}, good for {}, ok for {}, okay for {}',
  ['{}'],
);
const suits = (words: string) => SUITS.flatMap((frame) => framed(frame, phrasesOf(words)));

/** What a dish is said to be free of. The turns of speech are common practice, no source. */
export const FREE_FROM: FreeFromWords = {
  names: table(NAMES),
  joined: set(', and or & / + nor'),
  behind: set('free'),
  notBehind: set('range'),
  alone: table([
    ...GLUED,
    ['eggless', of('egg')],
    ['nutless', NUTS],
    ['dairyless, non dairy', of('milk')],
    ['meatless', MEAT_FREE],
    ['vegan, plant based, plantbased', VEGAN],
    ['vegetarian', VEGETARIAN],
    [suits('vegan, vegans').join(','), VEGAN],
    [suits('vegetarian, vegetarians').join(','), VEGETARIAN],
    [suits('coeliac, coeliacs, celiac, celiacs').join(','), GLUTEN],
  ]),
  before: phrases([
    ...all<'sure' | 'own' | 'loose'>(
      "free from, free of, free from any, free of any, contains no, contain no, containing no, contains zero, contain zero, doesn't contain, don't contain, does not contain, do not contain, doesn't contain any, don't contain any, does not contain any, do not contain any, doesn't have any, don't have any, has no, have no, has got no, it's got no, they've got no, hasn't got any, haven't got any, hasn't any, there's no, there is no, there are no, there isn't any, there aren't any, there's not any, there is not any, there's absolutely no, there are absolutely no, made with no, made without, made without any",
      'sure',
    ),
    ...all<'sure' | 'own' | 'loose'>('without, without any, zero, with no, absolutely no', 'own'),
    ...all<'sure' | 'own' | 'loose'>('no', 'loose'),
  ]),
  compounds: set(
    'wash yolk yolks white whites noodle noodles butter butters milk milks oil sauce flour glaze shell shells stock cream powder bran germ spread cheese chocolate topping toppings seed seeds salt leaves stick sticks cracker crackers fingers cakes roll rolls cup cups mix box boxes',
  ),
  ofDish: phrases(
    phrasesOf(
      'at all, whatsoever, anywhere, involved, needed, required, used, to be seen, in sight, inside, added',
    ).map((words) => [words, true]),
  ),
  within: set('in inside'),
  inIt: set('it this that these those them here there any either all'),
  degree: set(
    'naturally completely totally entirely fully also all just even both happily actually accidentally technically already absolutely literally strictly percent % 100 a an the my our still',
  ),
  subjects: set(
    "it it's this this's these they they're there there's those that that's mine ours everything everything's all whole each one",
  ),
  withVerb: set("they're there's that's this's everything's"),
  asIngredients: set(
    'oat oats pasta noodle noodles wrap wraps flatbread flatbreads bagel bagels bread tortilla tortillas taco tacos',
  ),
  relative: set('which that who'),
  choices: phrases(
    phrasesOf(
      "if, unless, whether, can, could, would, should, might, may, you'd, want, wants, need, needs, prefer, make, keep, get, buy, use, using, swap, swapping, choose, pick, try, grab, find, look for, looking for, certified, labelled, labeled, marked, go for, works, work, it'd, they'd, instead of, rather than, unlike, some, isn't, wasn't, aren't, i'm not, nor is, nor are",
    ).map((words) => [words, true]),
  ),
  doubts: phrases(
    phrasesOf(
      "if, unless, whether, make sure, making sure, be sure, check, check that, checked, wish, not saying, not claiming, not pretending, says, doesn't mean, so long as, as long as, swap, use, using, could, until, would say, wouldn't say, can't say, don't think, not sure",
    ).map((words) => [words, true]),
  ),
  denied: set(
    "not isn't never hardly wouldn't don't doesn't aren't wasn't almost nearly practically basically non un isnt mostly largely",
  ),
  only: set('only just'),
  conditions: phrases(
    phrasesOf(
      'if, if you, when you, once you, as long as, so long as, provided, unless, by using, by swapping, with a swap',
    ).map((words) => [words, true]),
  ),
  forWhom: set("need want are have is you're youre that's thats you've youve like it they"),
  people: set(
    'i you we im youre youve he she hes shes who whos friend sister brother mum mom dad husband wife partner daughter son kid boyfriend girlfriend guest people person someone anyone somebody everyone viewer folk family mate colleague crowd eater baker cook',
  ),
  others: set(
    'diet diets cooking cookbook cookbooks channel restaurant restaurants cafe flour flours alternative alternatives substitute substitutes spread spreads blend blends brand brands aisle section world life lifestyle bakery society label labels leather school schools zone household house home kitchen table room class classroom office',
  ),
  versions: set('version versions option options one ones twist take'),
};
