import { describe, expect, test } from 'vitest';
import { brief } from './brief';

const kcal = (number: number, rest = '') => `nutrient ${number} energyKcal kcal ${rest}`.trim();

// Invented sentences; what they say follows the conventions of the labelled texts.
describe('parts that come to their sum', () => {
  test.each([
    [
      'patty is 190, bun 140, relish 30, so 360 calories all in',
      [
        kcal(190, 'ingredient patty'),
        kcal(140, 'ingredient bun'),
        kcal(30, 'ingredient relish'),
        kcal(360, 'whole'),
      ],
    ],
    [
      'the base by itself is 610 calories the filling’s 890 so the whole pie fifteen hundred',
      [kcal(610, 'ingredient base'), kcal(890, 'ingredient filling'), kcal(1500, 'whole')],
    ],
    [
      'two eggs, that is 12 grams, and the cottage cheese is another 24, so 36 grams of protein',
      [
        'amount 2 piece egg',
        'nutrient 12 protein g ingredient egg',
        'nutrient 24 protein g ingredient cottage cheese',
        'nutrient 36 protein g',
      ],
    ],
    // They come to something else: nobody can say of what the second is.
    ['the base is 610 calories the filling’s 890 and the whole pie is 1,900 calories', null],
  ])('%s', (text, expected) => {
    if (expected) expect(brief(text)).toEqual(expected);
    else expect(brief(text).join()).not.toContain('filling');
  });
});

describe('what each part gets of an amount', () => {
  test.each([
    [
      '400 grams of oats split over the four jars so a hundred in each',
      ['amount 400 g oat', 'portions 4 portion', 'amount 100 g portion oat'],
    ],
    [
      'four eggs, one per plate, and the mackerel is 240 grams so sixty a head',
      [
        'amount 4 piece egg',
        'amount 1 piece portion egg',
        'amount 240 g mackerel',
        'amount 60 g portion mackerel',
      ],
    ],
    // No count of parts comes to it.
    [
      '400 grams of oats over the four jars and 30 in each',
      ['amount 400 g oat', 'portions 4 portion'],
    ],
  ])('%s', (text, expected) => expect(brief(text)).toEqual(expected));
});

// Degrees Celsius times 9/5 and 32 more (SI brochure, 9th edition, and its definition of °F in NIST SP 811, B.8).
describe('an oven in both scales', () => {
  const both = (celsius: number, fahrenheit: number) => [
    `ovenTemperature ${celsius} C`,
    `ovenTemperature ${fahrenheit} F`,
  ];
  test.each([
    [
      'mine is on one ninety, if you are in the States I looked it up it is three seventy five',
      both(190, 375),
    ],
    ['pop it in at 160, that is 320 for the Americans', both(160, 320)],
    // No scale, or no such degrees.
    ['one ninety of them and three seventy five more', []],
    ['one ninety in the States and four ninety here', []],
  ])('%s', (text, expected) => expect(brief(text)).toEqual(expected));
});

describe('shares of what a day needs', () => {
  test.each([
    [
      'forty percent of your fibre for the day and twenty one percent of the iron',
      ['nutrient 40 fibre %DV', 'nutrient 21 iron %DV'],
    ],
    [
      '640 milligrams of sodium, 28% of your day',
      ['nutrient 640 sodium mg', 'nutrient 28 sodium %DV'],
    ],
    [
      'of the calories 29 percent is protein, 47 carbs, 24 fat',
      ['nutrient 29 protein %', 'nutrient 47 carbohydrate %', 'nutrient 24 fat %'],
    ],
    // What one food has of it.
    ['sixty percent of the protein is the cheese', []],
  ])('%s', (text, expected) => expect(brief(text)).toEqual(expected));
});

describe('how much of it a number is of', () => {
  test.each([
    ['a slice of the meatloaf comes out at 335 calories', [kcal(335, 'slice')]],
    ['a plate of that with the dumplings on is gonna run you 600 calories', [kcal(600, 'portion')]],
    ['a bowl with rice is 500 calories', [kcal(500, 'portion')]],
    ['four hundred and sixty calories. 18 minutes total', [kcal(460), 'readyIn 18 min']],
    [
      'I cut it into eight so a portion is 365 calories',
      ['portions 8 portion', kcal(365, 'portion')],
    ],
    ['so far it is 900 calories today', [kcal(900, 'soFar')]],
    ['12 g of fibre, half of what you need in a day', ['nutrient 12 fibre g']],
    ['calories are sat at five thirty', [kcal(530)]],
    [
      'you would pay twelve dollars for it at a restaurant and it cost me three fifty',
      ['price 12 USD compared', 'price 3.5 USD'],
    ],
  ])('%s', (text, expected) => expect(brief(text)).toEqual(expected));

  test('in written lists', () => {
    const written = { form: 'description' as const };
    expect(brief('Pots: 5\nPer pot: 310 kcal', written)).toEqual([
      'portions 5 portion',
      kcal(310, 'portion'),
    ]);
    expect(brief('150 g rice\n50 g sugar\nServes 6', written)).toEqual([
      'amount 150 g rice',
      'amount 50 g sugar',
      'portions 6 portion',
    ]);
    expect(brief('Three-bean soup, 6 portions', written)).toEqual(['portions 6 portion']);
    expect(brief('For a 750 g loaf: 15 g treacle', written)).toEqual([
      'amount 750 g whole',
      'amount 15 g treacle',
    ]);
  });
});
