import { describe, expect, it } from 'vitest';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { rowsOf } from './edit-build';

/* Invented dishes; sums worked by hand: 320, 230 and 400 calories a portion. Common practice, no source. */

const FOODS = [aFood('meal', { energyKcal: '100.0', protein: '10.0' }, { name: 'Meal' })];
const dish = (id: string, title: string, weight: number, of: number) =>
  aDish(
    id,
    aRecipe(`${id}-recipe`, [grams(`${id}-line`, 'meal', weight, { text: `${weight} g meal` })], {
      portions: of === 0 ? [] : [{ id: `${id}-p`, kind: 'count', name: 'a pot', of }],
    }),
    { title },
  );
const FILE = aFile(
  [
    dish('stew', 'Smoky barley stew', 1280, 4),
    dish('flan', 'Plum flan', 1380, 6),
    dish('toast', 'Mushroom toast', 400, 0),
  ],
  FOODS,
  { resolutionMg: 1 },
);
const rows = (words: string) => rowsOf(FILE, words).map(({ verdict, why }) => ({ verdict, why }));
const last = (words: string) => rows(words).at(-1);

describe('all of several dishes', () => {
  it.each([
    [
      'If you have all three in one day, one stew, one flan and one toast, that is 950 calories.',
      'agrees',
    ],
    [
      'If you have all three in one day, one stew, one flan and one toast, that is 750 calories.',
      'off',
    ],
    [
      'Eat both of them today, one stew and a piece of flan, and that comes to 550 calories.',
      'agrees',
    ],
    // One portion of each or all of each: 950 or 3,060.
    ['Moving on to the toast. Eat all three of these in a day and it is only 400 calories.', 'off'],
    ['Eat all three of these in a day and it is 950 calories.', 'unknown'],
    // Which two is not said.
    ['First up, the stew. Eat both of these in a day and it is 320 calories.', 'unknown'],
  ])('%s', (words, verdict) => {
    expect([last(words)?.verdict, last(words)?.why]).toEqual([verdict, expect.any(String)]);
  });

  it('says of which it is the sum', () => {
    const said = 'If you eat both of these, one stew and one flan, that is 700 calories.';
    expect(last(said)?.why).toContain('one portion each of Smoky barley stew and Plum flan: 550');
  });

  it('is nothing of the kind where one dish alone is spoken of', () => {
    expect(last('First up, the stew. If you eat all of it, it is 1280 calories.')?.verdict).toBe(
      'agrees',
    );
    expect(last('First up, the stew. Eat the whole pot and it is 1280 calories.')?.verdict).toBe(
      'agrees',
    );
  });
});

describe('an amount with each is of what was spoken of', () => {
  it('and so is the number behind it', () => {
    const said =
      'First up, the stew. This makes four bowls. These are 32 grams of protein each at around 320 calories.';
    expect(rowsOf(FILE, said).map(({ verdict, place }) => [verdict, place.segmentId])).toEqual([
      ['agrees', 'stew'],
      ['agrees', 'stew'],
      ['agrees', 'stew'],
    ]);
  });

  it('but of each dish where so many are counted', () => {
    const said = 'Two dinners. They are each at 320 calories.';
    expect(last(said)?.verdict).toBe('off');
  });
});
