import { describe, expect, it } from 'vitest';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';
import { rowsOf } from './edit-build';
import { aStep } from './judge-beyond/invented-kitchen';

/* Invented dishes; what may be meant by words is the project’s own definition (MODEL D); no source. */

const values = (energyKcal: string, protein: string) => ({ energyKcal, protein });
const FOODS = [
  aFood('bean', values('100.0', '10.0'), { name: 'Beans, white' }),
  aFood('rice', values('350.0', '7.0'), { name: 'Rice, white' }),
  aFood('bun', values('250.0', '8.0'), { name: 'Rolls, wheat' }),
];
/** 1,150 calories and 87 g of protein in five bowls: 230 and 17.4 g. */
const BOWLS = aDish(
  'bowls',
  aRecipe(
    'r1',
    [
      grams('beans', 'bean', 800, { text: '800 g white beans' }),
      grams('rice', 'rice', 100, { text: '100 g rice' }),
    ],
    { portions: [{ id: 'p5', kind: 'count', name: 'a bowl', of: 5 }] },
  ),
  {
    title: 'Bean rice bowls',
    steps: [
      aStep('bake', 'Bake the rice and beans', {
        lowS: 1800,
        usualS: 1800,
        highS: 1800,
        oven: { ovenId: null, milliC: 180_000 },
      }),
    ],
  },
);
/** 600 calories and 24 g. */
const ROLLS = aDish(
  'rolls',
  aRecipe('r2', [
    aLine('buns', 'bun', {
      text: '4 buns',
      quantity: { low: { num: 4, den: 1 }, high: { num: 4, den: 1 } },
      unit: 'piece',
      planned: { lowMg: 200_000, valueMg: 200_000, highMg: 200_000 },
    }),
    grams('more', 'bean', 100, { text: '100 g bean mash' }),
  ]),
  { title: 'Stuffed rolls' },
);
const BOTH = aFile([BOWLS, ROLLS], FOODS, { resolutionMg: 1 });
const verdicts = (words: string, kind: Parameters<typeof rowsOf>[2] = 'captions', of = BOTH) =>
  rowsOf(of, words, kind).map(({ verdict }) => verdict);
const cases = (all: readonly (readonly [string, ...string[]])[]) =>
  it.each(all.map(([words, ...expected]) => [words, expected] as const))(
    '%s',
    (words, expected) => {
      expect([words, verdicts(words)]).toEqual([words, expected]);
    },
  );

describe('all of several dishes are each of them', () => {
  cases([
    // 230 calories a bowl, 600 of the rolls.
    ['Two lunches today, all under 700 calories.', 'agrees'],
    ['Two lunches today, all under 500 calories.', 'off'],
    ['Two lunches today. All of them have over 15 grams of protein.', 'agrees'],
    ['Two lunches today. Every one of them is over 22 grams of protein.', 'off'],
    ['Two easy dinners and all of them are at least 250 calories.', 'off'],
    // Of each, or of all of them: 1,750 together.
    ['Two lunches, under 700 calories.', 'unknown'],
    // Together they are the day.
    ['That is 1,750 calories for the day.', 'agrees'],
    ['The rolls, all of it, are under 700 calories.', 'agrees'],
  ]);

  it('but not where the whole day is said behind them', () => {
    const day = 'Two lunches, under 700 calories and 60 grams of protein for the whole day.';
    expect(verdicts(day)).toEqual(['off', 'off']);
  });

  it('in a title and in a description too, and says of which it is not so', () => {
    expect(verdicts('2 Lunches Under 700 Calories', 'title')).toEqual(['agrees']);
    const [row] = rowsOf(BOTH, '2 Lunches Under 500 Calories', 'title');
    expect(row?.verdict).toBe('off');
    expect(row?.why).toContain('Stuffed rolls');
    expect(row?.why).not.toContain('bowls');
    expect(verdicts('Two lunches for the week. All under 700 calories!', 'description')).toEqual([
      'agrees',
    ]);
  });
});

describe('all of the pieces of one dish', () => {
  const of = aFile([BOWLS], FOODS, { resolutionMg: 1 });

  it.each([
    ['All of them are under 250 calories.', 'agrees'],
    ['All of them are 230 calories.', 'unknown'],
    ['All of it is 1,150 calories.', 'agrees'],
  ])('%s', (words, verdict) => {
    expect([words, ...verdicts(words, 'captions', of)]).toEqual([words, verdict]);
  });
});

describe('a total below several dishes', () => {
  const rolls = 'Stuffed rolls\n4 buns\n';
  const bowls = 'Bean rice bowls\n800 g white beans\nPer bowl: 230 kcal\n\n';
  const last = (words: string) => rowsOf(BOTH, words, 'description').at(-1);

  it('is the day’s where the last dish has its own', () => {
    const row = last(`${bowls}${rolls}600 kcal\n\nTOTAL: 1,750 kcal\n\nThank you`);
    expect(row).toMatchObject({ verdict: 'agrees', statement: { scope: 'day' } });
  });

  it.each([
    ['the last dish has none: nobody knows', `${bowls}${rolls}\nTotal: 600 kcal`, 'unknown'],
    ['it stands with its dish', `${bowls}${rolls}Total: 600 kcal`, 'agrees'],
    [
      'there is one of each dish',
      `${bowls.trimEnd()}\n\nTotal: 1,150 kcal\n\n${rolls}\nTotal: 600 kcal`,
      'agrees',
    ],
  ])('but not where %s', (_, words, verdict) => {
    expect([words, last(words)?.verdict]).toEqual([words, verdict]);
  });
});

describe('numbers of another than the dish as it is', () => {
  const of = aFile([ROLLS], FOODS, { resolutionMg: 1 });
  it.each([
    ['That is 600 calories, and without the buns it is 100 calories.', ['agrees', 'unknown']],
    ['Without them it is 100 calories.', ['unknown']],
    // What is not in it was never there.
    ['Without the cheese it is 600 calories.', ['agrees']],
    ['Better than most rolls, and a shop roll is 300 calories.', ['unknown']],
    ['You can do double the beans, that is 90 calories more.', []],
    // One of four buns: 500 calories in all.
    ['The buns are the soft ones, they are 125 calories each.', ['agrees']],
    ['The buns are the soft ones, they are 150 calories each.', ['off']],
  ])('%s', (words, expected) => {
    expect([words, verdicts(words, 'captions', of)]).toEqual([words, expected]);
  });
});

describe('times that go on from one another', () => {
  const of = aFile([BOWLS], FOODS, { resolutionMg: 1 });
  it.each([
    ['Bake the rice for twenty minutes, then the beans for another ten.', ['agrees', 'agrees']],
    ['Bake the rice for twenty minutes, then the beans for another five.', ['off', 'off']],
    [
      'Bake it for thirty minutes. Then another day I bake it for twenty minutes.',
      ['agrees', 'off'],
    ],
    // No step is in a microwave.
    ['It is two minutes in the microwave or thirty minutes in the oven.', ['unknown', 'agrees']],
    ['Give the rice ten minutes in the air fryer.', ['unknown']],
  ])('%s', (words, expected) => {
    expect([words, verdicts(words, 'captions', of)]).toEqual([words, expected]);
  });
});

describe('what to say instead', () => {
  const of = aFile([BOWLS], FOODS, { resolutionMg: 1 });
  const instead = (words: string) => rowsOf(of, words, 'captions').map((row) => row.sayInstead);

  it.each([
    ['This makes four portions.', '5 portions'],
    ['This makes four bowls.', '5 bowls'],
    ['This serves four.', '5 portions'],
  ])('keeps what is counted: %s', (words, right) => {
    expect(instead(words)).toEqual([right]);
  });
});
