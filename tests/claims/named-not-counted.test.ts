import { describe, expect, it } from 'vitest';
import { NO_FACTS } from '#lib/claims/edit-facts';
import { keyOf, namedNotCounted } from '#lib/claims/named-not-counted';
import { readEdit } from '#lib/claims/read-edit';
import type { EpisodeEdit } from '#lib/episode/edit-schema';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

/* Invented dishes and words; what counts as named is the project’s own definition. */

const FOODS = [
  aFood('lentils', {}, { name: 'Lentils, raw' }),
  aFood('oil', {}, { name: 'Oil, olive' }),
];
const STEW = aDish(
  'stew',
  aRecipe('stew-recipe', [
    grams('l1', 'lentils', 200, { text: '200 g red lentils' }),
    grams('l2', 'oil', 15, { text: '1 tbsp olive oil' }),
  ]),
  { title: 'Lentil stew' },
);

const text = (kind: EpisodeEdit['texts'][number]['kind'], words: string, id: string = kind) => ({
  id,
  kind,
  name: kind,
  text: words,
});

function found(edit: Partial<EpisodeEdit>) {
  const file = { ...aFile([STEW], FOODS), edit: { texts: [], mends: [], named: [], ...edit } };
  return namedNotCounted(readEdit(file, NO_FACTS), file);
}

describe('foods that are named and not counted', () => {
  const captions = text(
    'captions',
    '[0:05] I put some sour cream on top.\n[0:20] More sour cream, because I can.\n[0:30] And 30 grams of butter in the pan.',
  );
  const description = text(
    'description',
    'Ingredients:\n200 g red lentils\n1 tbsp olive oil\n30 g butter\n',
  );

  it('are each told once, with all places of all texts', () => {
    const all = found({ texts: [captions, description] });
    expect(
      all.map(({ food, places }) => [
        food,
        places.map(({ place }) => `${place.textId} ${place.line}`),
      ]),
    ).toEqual([
      ['sour cream', ['captions 1', 'captions 2']],
      ['butter', ['captions 3', 'description 4']],
    ]);
    expect(all.every(({ segmentIds }) => segmentIds.join() === 'stew')).toBe(true);
  });

  it('are not told where they are said of a dish that has them', () => {
    const bake = aDish(
      'bake',
      aRecipe('bake-recipe', [
        grams('b1', 'butter', 30, { text: '30 g butter' }),
        grams('b2', 'tuna', 290, { text: '2 x 145 g tinned tuna in water' }),
      ]),
      { title: 'Harbour bake' },
    );
    const texts = [
      text('description', 'Lentil stew\n20 g butter\n\nHarbour bake\n30 g butter\n290 g tuna\n'),
    ];
    const file = { ...aFile([STEW, bake], FOODS), edit: { texts, mends: [], named: [] } };
    const all = namedNotCounted(readEdit(file, NO_FACTS), file);
    expect(all.map(({ food, places }) => [food, places.map(({ place }) => place.line)])).toEqual([
      ['butter', [2]],
    ]);
  });

  it('leave out what is an ingredient, by either name, water and the dish itself', () => {
    expect(
      found({
        texts: [
          text(
            'captions',
            'I used 200 grams of lentils, olive oil and 500 millilitres of water. I had 300 grams of stew.',
          ),
        ],
      }),
    ).toEqual([]);
  });

  it('begin an ingredient with the amount that is said', () => {
    const [cream, butter] = found({ texts: [captions] });
    expect(cream?.add).toEqual({ text: 'sour cream', segmentId: 'stew' });
    expect(butter?.add).toEqual({ text: '30 g butter', segmentId: 'stew' });
  });

  it('carry what the person said of them, by their folded name', () => {
    const named = [
      { id: 'n1', food: keyOf('Sour Cream'), answer: 'leftOff' as const },
      { id: 'n2', food: keyOf('butter'), answer: 'none' as const },
    ];
    expect(found({ texts: [captions], named }).map(({ answer }) => answer)).toEqual([
      'leftOff',
      'none',
    ]);
    expect(found({ texts: [captions] }).map(({ answer }) => answer)).toEqual([null, null]);
  });

  it('are none without any text', () => {
    expect(found({})).toEqual([]);
  });
});

describe('what is an ingredient by a longer name, or is only mentioned', () => {
  const TART = aDish(
    'tart',
    aRecipe(
      'tart-recipe',
      [
        '60 g dark chocolate 85%',
        '1 tsp vanilla extract',
        '20 g cocoa powder',
        '30 g hazelnut whey protein',
        '2 limes',
        '150 g spelt flour',
        '1 red bell pepper',
      ].map((words, at) => grams(`t${at}`, 'none', 10, { text: words, foodId: null })),
    ),
    { title: 'Lime tart' },
  );
  const namedIn = (words: string) => {
    const file = {
      ...aFile([TART], []),
      edit: { texts: [text('captions', words)], mends: [], named: [] },
    };
    return namedNotCounted(readEdit(file, NO_FACTS), file).map(({ food }) => food);
  };

  it.each([
    '60 grams of dark chocolate and 20 grams of cocoa.',
    'A teaspoon of vanilla and 30 grams of hazelnut whey.',
    'More cocoa and more whey on top.',
    'Then the zest and the juice of one lime.',
    'I add the juice of half a lime.',
    'two limes, zest and juice',
    '150 grams of flower.',
    'One red pepper, diced.',
    "It isn't a steak, it's a tart.",
    "They aren't burgers.",
    "Last week's chili was 620 calories.",
    "Last month's curry had 700 calories.",
  ])('%s', (words) => {
    expect(namedIn(words)).toEqual([]);
  });

  it.each([
    // The fruit itself is in no ingredient; a juice by its own name; a bare one.
    ['I add the juice of one orange.', ['orange']],
    ['A splash of orange juice goes in.', ['orange juice']],
    ["Yesterday's rice goes in.", ['rice']],
    ['30 grams of low fat cream cheese.', ['cream cheese']],
    ['I put some sugar free jelly on top.', ['jelly']],
    ['50 grams of garlic powder.', ['garlic powder']],
    ['Milk chocolate on top.', ['milk chocolate']],
  ])('%s names %j', (words, expected) => {
    expect(namedIn(words)).toEqual(expected);
  });
});

describe('what an ingredient is by another form of its name, what is done, what once was', () => {
  const BAKE = aDish(
    'bake',
    aRecipe(
      'bake-recipe',
      [
        '1 tsp bicarbonate of soda',
        'zest of 2 oranges',
        '3 green onions',
        '2 turkey thighs',
        '1 yellow bell pepper',
        '90 g goat cheese',
        '40 g butter',
      ].map((words, at) => grams(`b${at}`, 'none', 10, { text: words, foodId: null })),
    ),
    { title: 'Quay bake' },
  );
  const namedIn = (words: string, kind: 'captions' | 'description' = 'captions') => {
    const texts = [text(kind, words)];
    const file = { ...aFile([BAKE], []), edit: { texts, mends: [], named: [] } };
    return namedNotCounted(readEdit(file, NO_FACTS), file).map(({ food }) => food);
  };

  it.each([
    'and half a teaspoon of bicarb',
    'a pinch of baking soda goes in',
    'four spring onions on top',
    'then the oranges go in, two oranges',
    'and cream that until it is fluffy',
    'now salt the water and oil the tin',
    'turkey peppers and then half of it',
    'I used to make it with smoked bacon and it was far too rich',
    "if you don't like brie this one is for you",
  ])('is not told: %s', (words) => {
    expect(namedIn(words)).toEqual([]);
  });

  it('is not told where a description says it by another name', () => {
    expect(
      namedIn(
        'Quay bake\n1 tsp bicarbonate of soda\nzest of 2 oranges\n3 scallions\n',
        'description',
      ),
    ).toEqual([]);
  });

  it.each([
    ['and cream that I whipped goes on top', ['cream']],
    ['then the salt, a lot of it', ['salt']],
    ['I used to use lard but now suet and bacon go in', ['bacon']],
    ['a splash of orange juice', ['orange juice']],
    ['turkey bacon on top', ['turkey bacon']],
  ])('%s names %j', (words, expected) => {
    expect(namedIn(words)).toEqual(expected);
  });
});
