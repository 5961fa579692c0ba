import { describe, expect, test } from 'vitest';
import { brief } from './brief';

// Invented sentences; what they say follows the conventions of the labelled texts.
describe('what a change saves or adds', () => {
  test.each([
    [
      'swap the sour cream for skyr and you save about seventy calories',
      ['nutrient 70 energyKcal kcal about compared less'],
    ],
    [
      'roasting instead of frying knocks off 130 calories and 15 grams of fat',
      ['nutrient 130 energyKcal kcal compared less', 'nutrient 15 fat g compared less'],
    ],
    [
      'using lentils in place of mince takes off 160 calories and adds 6 grams of fibre',
      ['nutrient 160 energyKcal kcal compared less', 'nutrient 6 fibre g compared more'],
    ],
    [
      'leave out the sugar, it cuts the calories by 90',
      ['nutrient 90 energyKcal kcal compared less'],
    ],
    ['that is a saving of 210 calories', ['nutrient 210 energyKcal kcal compared less']],
    [
      'swap the pasta for courgette, that is 190 calories less and 2 grams more protein',
      ['nutrient 190 energyKcal kcal compared less', 'nutrient 2 protein g compared more'],
    ],
    // What they are not.
    ['I swapped the rice and it dropped to 410 calories', ['nutrient 410 energyKcal kcal']],
    ['I save 300 calories for a pudding', []],
    ['I am trying to cut 500 calories a day', []],
    ['it adds 80 calories', []],
    ['the cheddar adds 80 calories', ['nutrient 80 energyKcal kcal ingredient cheddar']],
    ['we save two pounds and it is 400 calories', ['nutrient 400 energyKcal kcal']],
    ['cut 200 grams of butter into cubes', ['amount 200 g butter']],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));

  test('a card of a swap', () => {
    const card = { form: 'card' as const };
    const said = [
      'nutrient 80 energyKcal kcal compared less',
      'nutrient 5 protein g compared more',
    ];
    expect(brief('SWAP: butter → quark\nsaves 80 kcal\nadds 5 g protein', card)).toEqual(said);
    expect(brief('Butter → quark\n−80 kcal\n+5 g protein', card)).toEqual(said);
    expect(brief('Oats – 80 kcal\nQuark – 5 g protein', card)).toEqual([
      'nutrient 80 energyKcal kcal',
      'nutrient 5 protein g',
    ]);
  });
});

describe('what it was, what it is, and the difference', () => {
  const was = 'nutrient 840 energyKcal kcal compared itsOwn';
  const is = 'nutrient 610 energyKcal kcal';
  const less = 'nutrient 230 energyKcal kcal compared less';
  test.each([
    ["last week's one was 840 calories this one is six ten so two thirty less", [was, is, less]],
    ["yesterday's curry was 840 calories, this stew is 610, so 230 fewer", [was, is, less]],
    ["it was 840 calories, this one is 610, so that's 230 calories less", [was, is, less]],
    ['the pie was 840 calories and this is 610 which is 230 fewer', [was, is, less]],
    ["it used to be 840 calories, now it's 610", [was, is]],
    ['it went from eight forty to six ten calories', [was, is]],
    ["it was 840 calories and now it's 610", [was, is]],
    ["it's 610 calories, down from 840", [is, was]],
    ['the bowl that I did on Friday was 840 calories and this one is 610', [was, is]],
    [
      'it has 40 grams of protein, 12 more than the shop one',
      ['nutrient 40 protein g', 'nutrient 12 protein g compared more'],
    ],
    // More than what, nobody can say; and what another day had says nothing of this one alone.
    ['that is 80 calories more', []],
    ['last week I had 2000 calories', []],
    ['it is 610 calories for basically the same amount of food', [is]],
    ['it is 610 calories, 30 protein, more than enough', [is, 'nutrient 30 protein g']],
    ["it's 25 minutes, down from 40", ['minutes 25 min']],
    [
      'the pasta was 400 calories, now the sauce is 120',
      [
        'nutrient 400 energyKcal kcal ingredient pasta',
        'nutrient 120 energyKcal kcal ingredient sauce',
      ],
    ],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});
