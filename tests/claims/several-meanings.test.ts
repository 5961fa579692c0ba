import { describe, expect, test } from 'vitest';
import { keyOf } from '#lib/claims/named-not-counted';
import { namedRows } from '#lib/overview/named-rows';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { aText, edited, readText, rowsOf } from './edit-build';

/* Invented dishes; what may be meant by words is the project’s own definition (MODEL D); no source. */

const FOODS = [
  aFood('bean', { energyKcal: '100.0' }, { name: 'Beans, white' }),
  aFood('onion', { energyKcal: '50.0' }, { name: 'Onions, raw' }),
];
/** 400 and 50 and 100 calories, in two makings of 550. */
const STEW = aDish(
  'stew',
  aRecipe('r', [
    grams('beans', 'bean', 400, { text: '400 g white beans' }),
    grams('red', 'onion', 100, { text: '100 g red onion' }),
    grams('white', 'onion', 200, { text: '200 g white onion' }),
  ]),
  { title: 'Bean stew', batches: { num: 2, den: 1 } },
);
const ONCE = { ...STEW, batches: { num: 1, den: 1 } };
const SOUP = aDish('soup', aRecipe('s', [grams('b', 'bean', 200, { text: '200 g white beans' })]), {
  title: 'Bean soup',
});
const file = (...dishes: (typeof STEW)[]) => aFile(dishes, FOODS, { resolutionMg: 1 });
const verdicts = (
  words: string,
  of = file(STEW),
  kind: Parameters<typeof rowsOf>[2] = 'description',
) => rowsOf(of, words, kind).map(({ verdict }) => verdict);

describe('a dish that is made twice', () => {
  test.each([
    ['The whole thing has 1100 calories.', 'unknown'],
    ['The whole thing has 550 calories.', 'unknown'],
    ['The whole thing has 900 calories.', 'off'],
    ['Half of it has 550 calories.', 'unknown'],
    ['Half of it has 400 calories.', 'off'],
    ['The beans alone are 800 calories.', 'unknown'],
    ['The beans alone are 600 calories.', 'off'],
  ])('may be told by one making or by both: %s %s', (words, verdict) => {
    expect([words, ...verdicts(words)]).toEqual([words, verdict]);
  });

  test('is told with both', () => {
    expect(rowsOf(file(STEW), 'The whole thing has 1100 calories.', 'description')[0]?.why).toBe(
      'can’t say: is it of Bean stew, the whole dish (550 calories); Bean stew, the whole dish, made 2 times (1100 calories)?',
    );
  });
});

describe('two ingredients of one name', () => {
  test.each([
    // 50 and 100: together 150.
    ['The onions alone are 150 calories.', 'unknown'],
    ['The onions alone are 100 calories.', 'unknown'],
    ['The onions alone are 120 calories.', 'off'],
    ['The onions alone are 300 calories.', 'off'],
    ['The beans alone are 400 calories.', 'agrees'],
  ])('may be meant together or apart: %s %s', (words, verdict) => {
    expect([words, ...verdicts(words, file(ONCE))]).toEqual([words, verdict]);
  });
});

describe('a title that names no dish', () => {
  const both = file(ONCE, SOUP);

  // 550 and 200 calories, 750 on the day.
  test.each([
    ['This 550 calorie dinner is easy', 'unknown'],
    ['This 200 calorie dinner is easy', 'unknown'],
    ['This 900 calorie dinner is easy', 'off'],
    ['Two easy dinners, 750 calories', 'agrees'],
    ['Two easy dinners, 550 calories', 'off'],
  ])('may be of any of them: %s: %s', (words, verdict) => {
    expect([words, ...verdicts(words, both, 'title')]).toEqual([words, verdict]);
  });
});

describe('an answer to a food that is named', () => {
  test('that was given by another spelling of it can be changed', () => {
    const named = [{ id: 'n1', food: keyOf('walnut'), answer: 'none' as const }];
    const of = edited(file(ONCE), [aText('I used 30 grams of walnuts. Then I used one walnut.')], {
      named,
    });
    const read = readText(
      file(ONCE),
      'I used 30 grams of walnuts. Then I used one walnut.',
      'captions',
      {
        named,
      },
    );
    const [row] = namedRows(read.named, of);
    expect([row?.answer, row?.answerId]).toEqual(['none', 'n1']);
  });
});
