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

describe('numbers that are taken back', () => {
  check([
    [
      "a bowl is thirty six grams of protein no sorry I'm reading the bean one it's thirty one",
      ['nutrient 31 protein g portion'],
    ],
    [
      "four ten calories, sorry, I'm looking at the chilli, this is three eighty",
      ['nutrient 380 energyKcal kcal'],
    ],
    [
      'four hundred and ten calories. No. Four hundred and twenty.',
      ['nutrient 420 energyKcal kcal'],
    ],
    ['three eighty calories, wrong line, three ninety', ['nutrient 390 energyKcal kcal']],
    ["it's three eighty calories, apologies, three ninety", ['nutrient 390 energyKcal kcal']],
    ['this is episode no. 5 and it has four hundred calories', ['nutrient 400 energyKcal kcal']],
  ]);
});

describe('nutrients that are taken back', () => {
  check([
    ['thirty one grams of fat, sorry, protein', ['nutrient 31 protein g']],
    ['it has got thirty one grams of carbs, no, protein.', ['nutrient 31 protein g']],
    [
      'thirty one grams of fat, not fat, protein, thirty one grams of protein',
      ['nutrient 31 protein g'],
    ],
    // What is denied, or begins what follows, corrects nothing.
    ['nine grams of fat, no sugar', ['nutrient 9 fat g']],
    [
      'nine grams of fat, sorry, protein is thirty one',
      ['nutrient 9 fat g', 'nutrient 31 protein g'],
    ],
    ['thirty one grams of protein not fat', ['nutrient 31 protein g']],
  ]);
});

describe('what is put right in writing', () => {
  check([
    [
      'Correction: at 2:10 I say the stew is 430 calories a bowl. It’s 460.',
      ['nutrient 460 energyKcal kcal portion'],
      'description',
    ],
    [
      'Correction: 430 calories in the video should be 460.',
      ['nutrient 460 energyKcal kcal'],
      'description',
    ],
    ['34 g protein a bowl (the video says 31)', ['nutrient 34 protein g portion'], 'description'],
    [
      "430 calories a bowl. Edit: it's 460, I forgot the oil.",
      ['nutrient 460 energyKcal kcal portion'],
      'description',
    ],
    ['430 calories. Edit: 460 with the oil.', ['nutrient 460 energyKcal kcal'], 'description'],
    [
      'that is 590 calories. edit from later, I forgot the oil, it is 670',
      ['nutrient 670 energyKcal kcal'],
    ],
    // It is of something else.
    [
      '430 calories a bowl. Edit: 3 of you asked for the pan.',
      ['nutrient 430 energyKcal kcal portion'],
      'description',
    ],
    [
      'I say it is 430 calories a bowl and it has 31 g of protein',
      ['nutrient 430 energyKcal kcal portion', 'nutrient 31 protein g portion'],
      'description',
    ],
  ]);
});
