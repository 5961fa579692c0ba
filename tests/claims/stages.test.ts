import { describe, expect, test } from 'vitest';
import { brief } from './brief';

// Invented sentences in the manner of the trade; what they say follows the conventions of the labelled texts.
describe('units and hedges', () => {
  test.each([
    ['just over 35 grams of protein', 'nutrient 35 protein g justOver'],
    ['forty plus grams of protein', 'nutrient 40 protein g atLeast'],
    ['38ish grams of protein', 'nutrient 38 protein g about'],
    ['no more than five hundred calories', 'nutrient 500 energyKcal kcal atMost'],
    ['a hair under two grams of salt', 'nutrient 2 salt g almost'],
    ['around 40 to 45 grams of protein', 'nutrient 40-45 protein g'],
    ['exactly 38 grams of protein', 'nutrient 38 protein g'],
    ['6 40 calories', 'nutrient 640 energyKcal kcal'],
    ['only ate grams of fat', 'nutrient 8 fat g'],
    ['sodium 610mg', 'nutrient 610 sodium mg'],
    ['two thousand kilojoules', 'nutrient 2000 energyKj kJ'],
    ['between five hundred and five fifty calories', 'nutrient 500-550 energyKcal kcal'],
    ['1 point 8 grams of salt', 'nutrient 1.8 salt g'],
    ['1 hundred and 12 grams of protein', 'nutrient 112 protein g'],
    ['40 five grams of protein', 'nutrient 45 protein g'],
    ['fifty- two grams of protein', 'nutrient 52 protein g'],
  ])('%s', (text, expected) => expect(brief(text)).toEqual([expected]));
});

describe('nouns in lists', () => {
  const three = ['nutrient 18 carbohydrate g', 'nutrient 11 fat g', 'nutrient 42 protein g'];
  test.each([
    ['18 carbs, 11 fat and 42 protein'],
    ['carbs 18 fat 11 protein 42'],
    ['18, 11 and 42 grams of carbs, fat and protein'],
    ['carbs fat and protein are 18 11 and 42'],
    ['eighteen eleven and forty two grams of carbs fat and protein'],
    ['18C 11F 42P'],
    ['C 18 | F 11 | P 42'],
  ])('%s', (text) => expect(brief(text)).toEqual(three));

  test('a number before a food counts the food', () => {
    expect(brief('I tried 5 protein dinners')).toEqual([]);
  });
});

test('a hedge said of all softens each that has none of its own', () => {
  expect(brief('Approx macros: 530 kcal, 46 g protein', { form: 'description' })).toEqual([
    'nutrient 530 energyKcal kcal about',
    'nutrient 46 protein g about',
  ]);
});

test('on a card the noun may stand on a line of its own', () => {
  expect(brief('530\nCALORIES\n46 g\nPROTEIN', { form: 'card' })).toEqual([
    'nutrient 530 energyKcal kcal',
    'nutrient 46 protein g',
  ]);
});

test('so many times an amount is left out', () => {
  expect(brief('2 x 150 g salmon fillets', { form: 'description' })).toEqual([]);
});

describe('parts', () => {
  test.each([
    ['the whole pot is 1,400 calories', 'nutrient 1400 energyKcal kcal whole'],
    ['530 calories per plate', 'nutrient 530 energyKcal kcal portion'],
    ['64 calories a slice', 'nutrient 64 energyKcal kcal slice'],
    ['half the tray is 320 calories', 'nutrient 320 energyKcal kcal half'],
    ['128 calories per 100 grams', 'nutrient 128 energyKcal kcal per100g'],
    ['today so far 980 calories', 'nutrient 980 energyKcal kcal soFar'],
    ['today is 1,840 calories', 'nutrient 1840 energyKcal kcal day'],
    ['a quarter of the tray is 160 calories', 'nutrient 160 energyKcal kcal unknown'],
    ['the turkey alone is 94 grams of protein', 'nutrient 94 protein g ingredient turkey'],
    ['200 calories less than the takeaway one', 'nutrient 200 energyKcal kcal compared less'],
    ['half the calories of the bakery version', 'nutrient 50 energyKcal % compared shareOf'],
    ['ten grams more protein than the old one', 'nutrient 10 protein g compared more'],
  ])('%s', (text, expected) => expect(brief(text)).toEqual([expected]));

  test('one at the end of a row holds for all of it', () => {
    expect(brief('530 calories and 46 grams of protein per plate')).toEqual([
      'nutrient 530 energyKcal kcal portion',
      'nutrient 46 protein g portion',
    ]);
  });

  test('without a dish nothing says of what', () => {
    const context = { dish: undefined, dishes: undefined };
    expect(brief('< 500 kcal', { form: 'card', ...context })).toEqual([
      'nutrient 500 energyKcal kcal under unknown',
    ]);
  });
});

describe('numbers that count what was counted before', () => {
  test('a row in the order of the row before', () => {
    expect(brief('640 calories and 71 protein so half is 320 and 35 and a half').slice(2)).toEqual([
      'nutrient 320 energyKcal kcal half',
      'nutrient 35.5 protein g half',
    ]);
  });

  test('a fraction of it', () => {
    expect(brief('112 grams of protein for the batch so half of that').slice(1)).toEqual([
      'nutrient 56 protein g half',
    ]);
  });

  test('a time of the clock is none of them', () => {
    expect(brief('112 grams of protein at four twelve in the video')).toEqual([
      'nutrient 112 protein g',
    ]);
  });

  test('where two are as near, none is chosen', () => {
    expect(brief('40 protein and 38 carbs so that is 20 a bowl')).toHaveLength(2);
  });
});

describe('corrections', () => {
  test.each([
    ['forty-eight no wait fifty-two grams of protein', 'nutrient 52 protein g'],
    ['protein is forty two I mean forty four grams', 'nutrient 44 protein g'],
    ['612 calories scratch that 620', 'nutrient 620 energyKcal kcal'],
    ['thirty minutes sorry forty minutes', 'minutes 40 min'],
    ['200 grams of beans no 300 grams of beans', 'amount 300 g bean'],
    ['oven at three fifty no three twenty five', 'ovenTemperature 325 F'],
    ['42 not 48 grams of protein', 'nutrient 42 protein g'],
    ['45 grams of protein correction 42', 'nutrient 42 protein g'],
    ['makes sixteen no wait eighteen meatballs', 'portions 18 piece'],
    ['two tablespoons of oil I mean two teaspoons', 'amount 2 tsp oil'],
    ['let me start over 42 grams of protein', 'nutrient 42 protein g'],
    ['I said 45 grams it is 54 grams of protein', 'nutrient 54 protein g'],
  ])('%s', (text, expected) => expect(brief(text)).toEqual([expected]));

  test('an edit further down takes back what was written', () => {
    const text = 'Simmer 30 minutes. Edit: the simmer is 40 minutes, not 30.';
    expect(brief(text, { form: 'description' })).toEqual(['minutes 40 min']);
  });
});

describe('numbers that say nothing of the dish', () => {
  test.each([
    'f 2.8 ISO 400 and 5600 kelvin',
    "two minutes I'll be back",
    'it is recording in 4K at 24 frames',
    'I aim for 150 grams of protein a day',
    'a gram of fat has 9 calories',
    'I bought the 400 gram tub',
    'I weigh seventy kilos',
    'how many calories is it 400 grams',
    'my lens cost 300 dollars',
    '100 percent you can freeze these',
    'every 15 minutes stir and after 20 minutes flip it',
    'keep your fridge below 5 degrees',
    'seven hundred and something calories',
    'use code SLATE15 for 15 % off',
    'I burned 600 calories',
    'it went from 38 to 42 grams of protein',
    'noodles 200 grams tofu',
    'these used to be 600 calories',
    'about as much protein as three eggs',
    'they should get about 30 grams of fiber a day',
    "don't go over 500 calories",
    '50 55 grams of carbs',
    'sixty percent of the calories come from the peanut butter',
  ])('%s', (text) => expect(brief(text)).toEqual([]));
});

describe('beyond nutrition', () => {
  test.each([
    ['bake it at 350 for 25 to 30 minutes', ['ovenTemperature 350 F', 'minutes 25-30 min']],
    ['200 °C fan', ['ovenTemperature 200 C']],
    ['gas mark seven', ['ovenTemperature 7 gas']],
    [
      'until the middle reads 74 °C (165 °F)',
      ['insideTemperature 74 C', 'insideTemperature 165 F'],
    ],
    ['three minutes a side', ['minutes 6 min']],
    ['on the table in half an hour', ['readyIn 30 min']],
    ['an hour and a half', ['minutes 90 min']],
    ['serves four', ['portions 4 portion']],
    ['makes 12 muffins', ['portions 12 piece']],
    ['cut it into eight', ['portions 8 slice']],
    ['two dollars nineteen a bowl', ['price 2.19 USD portion']],
    ['£1.24 per bowl', ['price 1.24 GBP portion']],
    ['1,35 € a portion', ['price 1.35 EUR portion']],
    ['two pounds of beef', ['amount 2 lb beef']],
    ['two pounds fifty each', ['price 2.5 GBP each']],
    ['half a lemon and two teaspoons of salt', ['amount 0.5 piece lemon', 'amount 2 tsp salt']],
    ['tofu 280 grams', ['amount 280 g tofu']],
    ['1 cup (185 g) of rice', ['amount 1 cup rice', 'amount 185 g rice']],
    ['each portion weighs 320 g', ['amount 320 g portion']],
    ['twenty minutes at two hundred', ['minutes 20 min', 'ovenTemperature 200 C']],
    ['it goes up to 68 in the middle', ['insideTemperature 68 C']],
    ['eggs are 4 dollars a dozen', ['price 4 USD ingredient egg']],
  ])('%s', (text, expected) => expect(brief(text)).toEqual(expected));
});

describe('claim words', () => {
  test.each([
    ['high protein low fat sugar free', ['high protein', 'low fat', 'free sugars']],
    ['rich in fiber and a good source of protein', ['high fibre', 'source protein']],
    ['no added sugar and zero sugar added', ['noAdded sugars', 'noAdded sugars']],
    ['it is light and packed with protein', ['light', 'high protein']],
  ])('%s', (text, expected) =>
    expect(
      brief(text).map((said) => said.replace('claimWord ', '').split(' ').reverse().join(' ')),
    ).toEqual(expected.map((said) => said.split(' ').join(' '))),
  );

  test.each([
    'the low fat cottage cheese',
    'not exactly low calorie',
    'is it low calorie',
    'lightly oil the pan',
    'the light in here',
    'light soy sauce',
  ])('%s is none', (text) => expect(brief(text)).toEqual([]));
});

describe('foods that are in no ingredient', () => {
  const ingredients = ['black bean', 'onion', 'olive oil', 'rice noodle'];
  test.each([
    ['finish with sesame seeds and mayo', ['foodNamed sesame seed', 'foodNamed mayo']],
    ['I put a bit of sour cream on mine', ['foodNamed sour cream']],
    ['toasted pine nuts on top', ['foodNamed pine nut']],
    ['a little oil, the noodles and black beans', []],
    ['no butter in this', []],
    ['you could add feta, olives or avocado', []],
    [
      'season with salt pepper and cumin',
      ['foodNamed salt', 'foodNamed pepper', 'foodNamed cumin'],
    ],
    ['a piece of cake', []],
    ['a glass of water', []],
  ])('%s', (text, expected) => expect(brief(text, { ingredients })).toEqual(expected));
});

test('a reading says step by step what was read as what', async () => {
  const { readStatements } = await import('#lib/claims/read-statements');
  const text = 'just over thirty eight grams of protein per portion';
  const [statement] = readStatements(text, { form: 'captions' });
  const steps = statement?.how.map(({ stage, start, end, as }) => [
    stage,
    text.slice(start, end),
    as,
  ]);
  expect(steps).toEqual([
    ['number', 'thirty eight', '38'],
    ['hedge', 'just over thirty eight grams of protein', 'justOver'],
    ['unit', 'grams', 'g'],
    ['noun', 'protein', 'protein'],
    ['scope', 'per portion', 'portion'],
    ['kind', 'just over thirty eight grams of protein', 'protein'],
  ]);
});
