import { describe, expect, test } from 'vitest';
import { brief } from './brief';

const kcal = (number: number, rest = '') => `nutrient ${number} energyKcal kcal ${rest}`.trim();
const gram = (number: number, rest = '') => `nutrient ${number} protein g ${rest}`.trim();

const WRAPS = { dish: undefined, dishes: ['Hot trout wrap', 'Bean and leek wrap'] };
const CURRIES = {
  dish: undefined,
  dishes: ['Yellow squash curry', 'Black lentil curry'],
  form: 'card' as const,
};

// Invented sentences; what they say follows the conventions of the labelled texts.
describe('dishes that only a word of their titles tells apart', () => {
  test.each([
    [
      'the trout one is 520 calories and the bean one is 430',
      WRAPS,
      [kcal(520, 'Hot trout wrap'), kcal(430, 'Bean and leek wrap')],
    ],
    [
      'per wrap, the trout one is 520 calories and the bean one 430',
      WRAPS,
      [kcal(520, 'each Hot trout wrap'), kcal(430, 'each Bean and leek wrap')],
    ],
    [
      'YELLOW 388 kcal / 12 g protein\nBLACK 421 kcal / 23 g protein',
      CURRIES,
      [
        kcal(388, 'Yellow squash curry'),
        gram(12, 'Yellow squash curry'),
        kcal(421, 'Black lentil curry'),
        gram(23, 'Black lentil curry'),
      ],
    ],
    // A food alone stays a food, in a list and beside its own number.
    [
      'Trout 200 g\nLeek 100 g',
      { ...WRAPS, form: 'description' as const },
      ['amount 200 g trout', 'amount 100 g leek'],
    ],
    ['the trout is 210 calories of that', WRAPS, [kcal(210, 'ingredient trout')]],
    // Words that any text has, and what comes with a dish, name none.
    [
      'and 31 grams of protein with leek',
      { dish: undefined, dishes: ['Trout and egg pie', 'Soup with leek'] },
      [gram(31)],
    ],
  ])('%s', (text, context, expected) => {
    expect(brief(text, context)).toEqual(expected);
  });
});

describe('rows that come to the row below them', () => {
  test('are of a dish each, whatever stands above', () => {
    const day =
      'WHAT I EAT IN A DAY\nporridge 390 cal / 22 g protein\nwraps 510 cal / 34 g protein';
    const total = 'TOTAL 900 CAL / 56 G PROTEIN';
    const none = { form: 'card' as const, dish: undefined, dishes: [] };
    expect(brief(`${day}\n${total}`, none)).toEqual([
      kcal(390),
      gram(22),
      kcal(510),
      gram(34),
      kcal(900, 'day'),
      gram(56, 'day'),
    ]);
    // Nothing comes to that.
    expect(brief(`${day}\nTOTAL 1,300 CAL`, none).at(0)).toBe(kcal(390, 'ingredient porridge'));
  });

  test('meals come to a day', () => {
    const meals = 'breakfast four hundred calories, lunch five fifty, total nine fifty';
    expect(brief(meals).at(-1)).toBe(kcal(950, 'day'));
  });
});

describe('who answers with another number', () => {
  test('takes the first one back', () => {
    const said = '- Bake it at a hundred and eighty.\n- Two hundred.\n- For forty minutes.';
    expect(brief(said)).toEqual(['ovenTemperature 200 C', 'minutes 40 min']);
    // The same again confirms it; another thing is another thing.
    const again = '- It serves six.\n- Four hundred calories each.';
    expect(brief(again)).toEqual(['portions 6 portion', kcal(400, 'portion')]);
  });
});
