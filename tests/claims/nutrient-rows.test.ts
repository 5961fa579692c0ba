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
