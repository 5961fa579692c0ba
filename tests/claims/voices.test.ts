import { expect, test } from 'vitest';
import { brief } from './brief';

/** Invented sentences in manners of speaking that differ; what each comes to is by the conventions of the labelled texts. */
test.each([
  // Near misses.
  ['the guts of thirty grams of fibre in that', ['nutrient 30 fibre g almost']],
  ['it is a whisker over six hundred calories', ['nutrient 600 energyKcal kcal justOver']],
  ['three hundred and change calories', ['nutrient 300 energyKcal kcal justOver']],
  ['thirty-odd grams of protein', ['nutrient 30 protein g about']],
  // Ranges with two units, and run on.
  ['simmer it for fifty minutes to an hour', ['minutes 50-60 min']],
  ['drain it for a minute or two', ['minutes 1-2 min']],
  ['one ninety to two hundred calories', ['nutrient 190-200 energyKcal kcal']],
  ['between three and three fifty calories', ['nutrient 300-350 energyKcal kcal']],
  ['the oven at one ninety one seventy fan', ['ovenTemperature 190 C', 'ovenTemperature 170 C']],
  ['it takes an hour and ten but go on', ['minutes 70 min']],
  // Other moneys.
  ['it cost me twelve Aussie dollars', ['price 12 unknown']],
  [
    'it was eight euro for the pot so eighty cent a bowl',
    ['price 8 EUR whole', 'price 0.8 EUR portion'],
  ],
  ['a tenner for the lot', ['price 10 GBP whole']],
  ['feeds five for a tenner', ['portions 5 portion', 'price 10 GBP']],
  // Set against another thing.
  [
    'the takeaway stew is nine hundred calories and this is six ten',
    ['nutrient 900 energyKcal kcal compared itsOwn', 'nutrient 610 energyKcal kcal'],
  ],
  ['a quarter fewer calories than the shop one', ['nutrient 25 energyKcal % compared less']],
  // Counted parts.
  [
    'a bowl is six ten calories and there are five of those',
    ['nutrient 610 energyKcal kcal portion', 'portions 5 portion'],
  ],
  [
    'sixteen hundred calories in the pot split four ways that is four hundred',
    [
      'nutrient 1600 energyKcal kcal whole',
      'portions 4 portion',
      'nutrient 400 energyKcal kcal portion',
    ],
  ],
  ['half of that pot is eight hundred calories', ['nutrient 800 energyKcal kcal half']],
  // The noun of what follows, and nouns with 'on' and 'in'.
  ['the protein is forty grams the fat is nine', ['nutrient 40 protein g', 'nutrient 9 fat g']],
  [
    'six ten on the calories forty on the protein',
    ['nutrient 610 energyKcal kcal', 'nutrient 40 protein g'],
  ],
  ['thirty forty grams of protein', ['nutrient 30-40 protein g']],
  ['eight dollars split over four bowls', ['price 8 USD', 'portions 4 portion']],
  ['point six of a gram of salt', ['nutrient 0.6 salt g']],
])('%s', (text, said) => {
  expect(brief(text)).toEqual(said);
});

test.each([
  'last week the soup was three hundred calories',
  'I ate two thousand calories yesterday',
  'if you made it with cream it comes to seven hundred calories',
  'I thought it was five hundred calories',
  'you could add cheese that is another ninety calories',
  'ninety calories of that is the oil',
  'ten grams of protein per hundred calories',
  'new pot by the way forty euro in the sale',
  'one second the door',
  'I ran five k in thirty minutes',
  'calories today protein forty two hundred and something',
])('%s: nothing of the dish', (text) => {
  expect(brief(text)).toEqual([]);
});

test('a number cut by a full stop that captions set is left out', () => {
  expect(brief('so there is forty. Two grams of fat in it')).toEqual([]);
});

test('dollars with a letter before the sign are not those of the United States', () => {
  expect(brief('A$14 for the pot', { form: 'card' })).toEqual(['price 14 unknown whole']);
  expect(brief('US$14 for the pot', { form: 'card' })).toEqual(['price 14 USD whole']);
});

test('what follows the name of another dish holds for that dish alone', () => {
  const dishes = ['Smoky bean stew', 'Lemon oat squares'];
  expect(
    brief('the bean stew is six ten calories and the oat squares are two hundred each', { dishes }),
  ).toEqual([
    'nutrient 610 energyKcal kcal',
    'nutrient 200 energyKcal kcal each Lemon oat squares',
  ]);
});

test('a part in brackets behind a number there holds for none before them', () => {
  expect(brief('$3 bean stew (28 g protein, 410 calories each)', { form: 'title' })).toEqual([
    'price 3 USD',
    'nutrient 28 protein g each',
    'nutrient 410 energyKcal kcal each',
  ]);
  expect(brief('a 410 calorie stew (per huge slice)', { form: 'title' })).toEqual([
    'nutrient 410 energyKcal kcal slice',
  ]);
});

test.each([
  ['you can do it in under forty minutes', ['readyIn 40 min under']],
  ['we managed it in twenty five minutes', ['readyIn 25 min']],
  ['my pan was sixty dollars and worth it', []],
])('%s', (text, said) => {
  expect(brief(text)).toEqual(said);
});
