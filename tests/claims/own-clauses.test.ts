import { expect, test } from 'vitest';
import { readStatements } from '#lib/claims/read-statements';

const CONTEXT = { form: 'captions', dish: 'Harbour bake', dishes: ['Harbour bake'] } as const;

/** What a text states, in short. */
const brief = (text: string) =>
  readStatements(text, CONTEXT).map((one) =>
    [
      one.kind,
      'low' in one ? one.low : '',
      'nutrient' in one ? one.nutrient : '',
      'unit' in one ? one.unit : '',
      'scope' in one ? one.scope : '',
    ]
      .filter((part) => part !== '' && part !== undefined)
      .join(' '),
  );

// Turns of speech: common practice, no source.
test.each([
  // What somebody does next says nothing of the numbers before.
  [
    'this bowl is 610 calories and 17 fat and I filmed the whole thing twice',
    ['nutrient 610 energyKcal kcal portion', 'nutrient 17 fat g portion'],
  ],
  [
    "under four hundred calories and I'm talking the whole plate",
    ['nutrient 400 energyKcal kcal portion'],
  ],
  // What is pointed at or named as a part may come in addition.
  ['and this plate is another 780 calories', ['nutrient 780 energyKcal kcal portion']],
  ['and that is another 80 calories', []],
  // Shares go on.
  [
    '38 percent of the calories come from protein and only 21 from fat',
    ['nutrient 38 protein % dish', 'nutrient 21 fat % dish'],
  ],
  // Rules for everybody.
  ['fat has nine calories a gram, carbs have four', []],
  // A number set against something is no claim word as well.
  ['this has 12 grams less fat than the takeaway one', ['nutrient 12 fat g compared']],
  ['this is my reduced fat version', ['claimWord fat']],
  ['28 percent of your daily value of iron', ['nutrient 28 iron %DV dish']],
  ['today I ate 90 grams of protein', ['nutrient 90 protein g day']],
  ['it has ate grams of protein', ['nutrient 8 protein g dish']],
])('%s', (text, want) => {
  expect(brief(text)).toEqual(want);
});
