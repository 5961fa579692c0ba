import { describe, expect, test } from 'vitest';
import { brief } from './brief';

// Invented sentences; what they say follows the conventions of the labelled texts.
describe('numbers away from what they count', () => {
  test.each([
    // The noun long before its grams, or behind them.
    [
      'so protein right that is what everyone in the comments wants to know and I worked it out twice because I did not believe it and honestly it came to twenty six grams a bowl',
      ['nutrient 26 protein g portion'],
    ],
    ['it is thirty one grams, protein, the rest is beans', ['nutrient 31 protein g']],
    ["twenty eight. that's the protein. I know", ['nutrient 28 protein g']],
    ['high fibre eleven grams', ['claimWord fibre high', 'nutrient 11 fibre g']],
    [
      'four thirty. thirty six. forty one. thirteen. that is calories protein carbs fat',
      [
        'nutrient 430 energyKcal kcal',
        'nutrient 36 protein g',
        'nutrient 41 carbohydrate g',
        'nutrient 13 fat g',
      ],
    ],
    // A full stop that captions set within.
    ['four hundred. And eighty five. Calories a plate', ['nutrient 485 energyKcal kcal portion']],
    ['it is. Nineteen. Grams. Of fibre. In one bowl.', ['nutrient 19 fibre g portion']],
    // The food before its amount.
    ['butter next, and do not skimp, sixty grams', ['amount 60 g butter']],
    ['milk now and it is a lot of milk, a litre and a half, trust me', ['amount 1.5 l milk']],
    // The food before its price.
    ['the sausages are the expensive bit, three quid', ['price 3 GBP ingredient sausage']],
    [
      'potatoes, a dollar twenty. cheese, two bucks.',
      ['price 1.2 USD ingredient potato', 'price 2 USD ingredient cheese'],
    ],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});

// 4 · 39 + 4 · 52 + 9 · 13 = 481 (21 CFR 101.9(c)(1)(i)(B)), which is near 485 and near no other cut.
test('numbers said without a pause are cut where their energy adds up, and left out where it does not', () => {
  expect(
    brief('four eighty five thirty nine fifty two thirteen calories protein carbs fat'),
  ).toEqual([
    'nutrient 485 energyKcal kcal',
    'nutrient 39 protein g',
    'nutrient 52 carbohydrate g',
    'nutrient 13 fat g',
  ]);
  expect(brief('forty one thirty nine protein carbs fat')).toEqual([]);
});

describe('parts', () => {
  test.each([
    ['a generous bowl is five ten calories', ['nutrient 510 energyKcal kcal portion']],
    [
      'a portion is a sixth of the pot so it is two eighty calories',
      ['nutrient 280 energyKcal kcal portion'],
    ],
    ['ninety calories per dollop', ['nutrient 90 energyKcal kcal each']],
    [
      'two ten calories each so two is four twenty',
      ['nutrient 210 energyKcal kcal each', 'nutrient 420 energyKcal kcal unknown'],
    ],
    ["mine's four ninety calories", ['nutrient 490 energyKcal kcal']],
    [
      'one mug of couscous and two tins of beans',
      ['amount 1 piece couscous', 'amount 2 piece bean'],
    ],
    ['seven pounds the pot, three fifty each bowl', ['price 7 GBP whole', 'price 3.5 GBP portion']],
    ['five pounds for four portions', ['price 5 GBP whole', 'portions 4 portion']],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));

  test('what the title counts is one piece, and so many of it are what the dish makes', () => {
    const known = { dish: 'Mango lollies', dishes: ['Mango lollies'] };
    expect(brief('eight lollies, 85 calories a lolly', { ...known, form: 'card' })).toEqual([
      'portions 8 piece',
      'nutrient 85 energyKcal kcal each',
    ]);
  });
});

test('what another day had is a comparison where this one has its own number beside it', () => {
  expect(
    brief('last time it was seven ten a bowl and now it is five forty calories a bowl'),
  ).toEqual([
    'nutrient 710 energyKcal kcal compared itsOwn',
    'nutrient 540 energyKcal kcal portion',
  ]);
});

test('a dish that is named behind a number is the one that it is of', () => {
  const dishes = ['Smoky bean stew', 'Tray-baked turkey meatloaf'];
  expect(
    brief('twenty six grams of protein in the stew and thirty two in the meatloaf', { dishes }),
  ).toEqual(['nutrient 26 protein g', 'nutrient 32 protein g Tray-baked turkey meatloaf']);
});
