import { describe, expect, test } from 'vitest';
import type { TextContext } from '#lib/claims/statement';
import { brief } from './brief';

// Invented sentences; what they say follows the conventions of the labelled texts.
type Case = readonly [text: string, said: readonly string[], form?: TextContext['form']];
const check = (cases: readonly Case[]) =>
  test.each(cases.map(([text, said, form = 'captions']) => ({ text, said, form })))(
    '$text',
    ({ text, said, form }) => expect(brief(text, { form })).toEqual(said),
  );

const MACROS = ['nutrient 31 protein g', 'nutrient 44 carbohydrate g', 'nutrient 9 fat g'];
const ROW = ['nutrient 430 energyKcal kcal', ...MACROS];

describe('letters and names in a row, and their numbers in another', () => {
  check([
    ['P/C/F 31/44/9', MACROS, 'card'],
    ['Macros (p/c/f): 31 / 44 / 9', MACROS, 'description'],
    ['kcal/P/C/F: 430/31/44/9', ROW, 'description'],
    ['kcal | P | C | F\n430 | 31 | 44 | 9', ROW, 'card'],
    ['430 kcal\nP/C/F: 31/44/9', ROW, 'card'],
    // No fraction, and no date.
    [
      'P/C/F: 31/6/12',
      ['nutrient 31 protein g', 'nutrient 6 carbohydrate g', 'nutrient 12 fat g'],
      'card',
    ],
    [
      'Add 1/2 cup milk. P/C/F 31/44/9. Filmed 12/11/25.',
      ['amount 0.5 cup milk', ...MACROS],
      'description',
    ],
    [
      'Turn it to 180C/350F for 3/4 of an hour',
      ['ovenTemperature 180 C', 'ovenTemperature 350 F', 'minutes 45 min'],
      'description',
    ],
    ['four thirty, thirty one, forty four and nine for calories protein carbs and fat', ROW],
    ['four thirty calories, thirty one, forty four and nine protein carbs and fat', ROW],
    ['calories four thirty, then protein carbs fat thirty one, forty four, nine', ROW],
  ]);
});

describe('nouns and numbers that captions part by full stops', () => {
  check([
    ['calories. Four thirty. Protein. Thirty one. Carbs. Forty four. Fat. Nine.', ROW],
    ['four thirty. Calories. Thirty one. Protein. Forty four. Carbs. Nine. Fat.', ROW],
    ['okay the protein. Thirty one grams. Carbs. Forty four grams. Fat. Nine grams.', MACROS],
    // Which of them leads, nobody can say.
    ['four hundred. Protein. Forty.', ['nutrient 40 protein g']],
  ]);
});

describe('digits said one by one', () => {
  check([
    ['one nine four zero calories for the day', ['nutrient 1940 energyKcal kcal day']],
    ['three eight five calories a bowl', ['nutrient 385 energyKcal kcal portion']],
    ['it is one six one protein for the pot', ['nutrient 161 protein g whole']],
    ['and three two one, go, four hundred calories', ['nutrient 400 energyKcal kcal']],
  ]);
});

describe('letters that are no pence and no degrees', () => {
  check([
    ['430 kcal, 31p, 44c, 9f', ROW, 'description'],
    ['31g p · 44g c · 9g f', MACROS, 'card'],
    [
      'costs 50p, bake at 180c for 20 min',
      ['ovenTemperature 180 C', 'minutes 20 min'],
      'description',
    ],
  ]);
});

describe('nouns behind their numbers with words between', () => {
  check([
    [
      'four thirty for the calories, thirty one for the protein, nine for the fat',
      [ROW[0] ?? '', MACROS[0] ?? '', MACROS[2] ?? ''],
    ],
    ['thirty one is the protein and nine was the fat', [MACROS[0] ?? '', MACROS[2] ?? '']],
    [
      'protein? Thirty one. Fat? Nine. Calories? Four thirty.',
      [MACROS[0] ?? '', MACROS[2] ?? '', ROW[0] ?? ''],
    ],
    ['calorie wise four thirty, protein wise thirty one', ROW.slice(0, 2)],
    // What the food is for is no nutrient.
    ['I put two in for the protein', []],
    [
      'Macros per bowl -> 430 / 31 (kcal / protein)',
      ['nutrient 430 energyKcal kcal portion', 'nutrient 31 protein g portion'],
      'description',
    ],
    ['it is eleven comma five grams of protein', ['nutrient 11.5 protein g']],
  ]);
});

describe('numbers that parts said before come to', () => {
  check([
    [
      'the whole pot is two thousand calories and ninety two protein, for five people that is four hundred each',
      [
        'nutrient 2000 energyKcal kcal whole',
        'nutrient 92 protein g whole',
        'portions 5 portion',
        'nutrient 400 energyKcal kcal portion',
      ],
    ],
    [
      'three eighty calories a square and twenty one protein, so for the tray of nine you are looking at three thousand four hundred and twenty',
      [
        'nutrient 380 energyKcal kcal slice',
        'nutrient 21 protein g slice',
        'nutrient 3420 energyKcal kcal whole',
      ],
    ],
    [
      'half of it is two ten so the lot is four twenty calories',
      ['nutrient 210 energyKcal kcal half', 'nutrient 420 energyKcal kcal whole'],
    ],
    [
      'a bowl is three ninety calories. Twice that, seven eighty, for my brother',
      ['nutrient 390 energyKcal kcal portion', 'nutrient 780 energyKcal kcal unknown'],
    ],
    [
      'about fourteen hundred milligrams of sodium a bowl, fourteen thirty if you want it exact',
      ['nutrient 1400 sodium mg about portion', 'nutrient 1430 sodium mg portion'],
    ],
  ]);
});

describe('rows that are parted by full stops, and cut numbers', () => {
  check([
    ['four thirty. Thirty one. Forty four. Nine. Calories protein carbs and then fat', ROW],
    ['protein carbs and fat for this one. Thirty one. Forty four. Nine.', MACROS],
    [
      'protein carbs and fat on this one fifty two sixty and eleven',
      ['nutrient 52 protein g', 'nutrient 60 carbohydrate g', 'nutrient 11 fat g'],
    ],
    [
      "there's thirty. Six grams of protein in it. Which is. Like. A lot",
      ['nutrient 36 protein g'],
    ],
    [
      'four hundred and ten in a tub, calories, and forty four of the good stuff, protein',
      ['nutrient 410 energyKcal kcal', 'nutrient 44 protein g'],
    ],
    // Nothing is cut here.
    ['we made twenty. Five grams of butter goes in.', ['portions 20 piece', 'amount 5 g butter']],
  ]);
});

describe('shares of the energy', () => {
  check([
    [
      '31% of the calories are protein, 42% carbs, the rest is fat.',
      ['nutrient 31 protein %', 'nutrient 42 carbohydrate %'],
      'description',
    ],
    [
      '38 percent of the calories come from fat and 27 percent come from protein',
      ['nutrient 38 fat %', 'nutrient 27 protein %'],
    ],
    [
      'Macro split 40/30/30 (carbs/protein/fat)',
      ['nutrient 40 carbohydrate %', 'nutrient 30 protein %', 'nutrient 30 fat %'],
      'description',
    ],
    ['five percent fat mince and 20% off', []],
  ]);
});

test('a difference is of two things', () => {
  expect(brief('that is a four hundred calorie difference')).toEqual([]);
});

describe('sums and margins', () => {
  check([
    [
      'beans one twenty rice two hundred cheese ninety that is four ten calories',
      [
        'nutrient 120 energyKcal kcal ingredient bean',
        'nutrient 200 energyKcal kcal ingredient rice',
        'nutrient 90 energyKcal kcal ingredient cheese',
        'nutrient 410 energyKcal kcal',
      ],
    ],
    ['four ten calories plus eighty for the bread', ['nutrient 410 energyKcal kcal']],
    ['it is forty plus grams of protein', ['nutrient 40 protein g atLeast']],
    ['it is thirty one protein give or take a gram', ['nutrient 31 protein g about']],
    ['P: 31, C: 44, F: 9', MACROS, 'card'],
    ['NUTRITION (per 100g / per serving): Energy 120 kcal / 410 kcal', [], 'description'],
  ]);
});

describe('salt and sugar', () => {
  check([
    [
      '480 grams of rye flour, 390 of water, nine grams of salt',
      ['amount 480 g rye flour', 'amount 390 g water', 'amount 9 g salt'],
    ],
    ['nine grams of salt in the whole pot', ['nutrient 9 salt g whole']],
    [
      'it takes 300 g of pasta and a bowl has two grams of salt',
      ['amount 300 g pasta', 'nutrient 2 salt g portion'],
    ],
  ]);
});

describe('digits that captions set apart', () => {
  check([
    ['3 9 5 calories a bowl', ['nutrient 395 energyKcal kcal portion']],
    ['4 30 31 44 9 calories protein carbs fat', ROW],
    [
      '6 40 calories a bowl and 1\n12 grams of carbs',
      ['nutrient 640 energyKcal kcal portion', 'nutrient 112 carbohydrate g portion'],
    ],
    ['so that is 1 thousand 2 hundred calories', ['nutrient 1200 energyKcal kcal']],
    // As many numbers as nouns, or nobody can say.
    ['4 30 31 9 calories protein carbs fat', []],
  ]);
});
