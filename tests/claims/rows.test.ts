import { describe, expect, test } from 'vitest';
import { readStatements } from '#lib/claims/read-statements';
import { brief } from './brief';

// Invented sentences; what they say follows the conventions of the labelled texts.
const DAY = { dish: undefined, dishes: ['Oat pots', 'Chicken wrap', 'Beef stew'] };

describe('rows of dishes', () => {
  test('what one row says of its columns holds for all', () => {
    expect(
      brief(
        'recap. oat pots three sixty, twenty six protein. chicken wrap four ninety, thirty nine.',
        DAY,
      ),
    ).toEqual([
      'nutrient 360 energyKcal kcal Oat pots',
      'nutrient 26 protein g Oat pots',
      'nutrient 490 energyKcal kcal Chicken wrap',
      'nutrient 39 protein g Chicken wrap',
    ]);
  });

  test('where nothing says what is counted, nothing is told', () => {
    expect(brief('the oat pots three sixty, the stew five ten', DAY)).toEqual([]);
  });
});

describe('energy by its row', () => {
  test.each([
    [
      'carbs are fifty, protein thirty, fat ten, and that brings you to four ten',
      // 4 · 50 + 4 · 30 + 9 · 10 = 410 (21 CFR 101.9(c)(1)(i)(B))
      [
        'nutrient 50 carbohydrate g',
        'nutrient 30 protein g',
        'nutrient 10 fat g',
        'nutrient 410 energyKcal kcal',
      ],
    ],
    [
      'it comes out at four sixty with thirty eight protein',
      ['nutrient 460 energyKcal kcal', 'nutrient 38 protein g'],
    ],
    [
      'one bowl is three forty, two of them six eighty, and the pot is thirteen hundred and sixty calories',
      [
        'nutrient 340 energyKcal kcal portion',
        'nutrient 680 energyKcal kcal unknown',
        'nutrient 1360 energyKcal kcal whole',
      ],
    ],
    [
      'the mince is 190, bun 140, cheese 80, so 410 calories',
      [
        'nutrient 190 energyKcal kcal ingredient mince',
        'nutrient 140 energyKcal kcal ingredient bun',
        'nutrient 80 energyKcal kcal ingredient cheese',
        'nutrient 410 energyKcal kcal',
      ],
    ],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));

  test('a number that is less than its macronutrients have is none of theirs', () => {
    expect(brief('it comes out at one ten with thirty eight protein')).toEqual([
      'nutrient 38 protein g',
    ]);
  });

  test('of a day it is told, and waits to be confirmed', () => {
    const [said] = readStatements('that puts me at sixteen twenty for the day', {
      form: 'captions',
    });
    expect(said).toMatchObject({ nutrient: 'energyKcal', low: 1620, unsure: true });
  });
});

describe('amounts without their unit', () => {
  test.each([
    [
      'five hundred flour three twenty water ten salt all grams',
      ['amount 500 g flour', 'amount 320 g water', 'amount 10 g salt'],
    ],
    ['two tablespoons of soy and one of honey', ['amount 2 tbsp soy', 'amount 1 tbsp honey']],
    [
      'yogurt, two hundred grams, ground almonds, fifty',
      ['amount 200 g yogurt', 'amount 50 g ground almond'],
    ],
    [
      'thirty grams of butter and the same again of flour',
      ['amount 30 g butter', 'amount 30 g flour'],
    ],
    ['five hundred grams of five percent mince', ['amount 500 g mince']],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));

  test('what nobody said to be grams waits to be confirmed', () => {
    const read = readStatements('two hundred yogurt, thirty granola', { form: 'captions' });
    expect(read.map(({ unsure }) => unsure)).toEqual([true, true]);
  });
});

describe('parts and prices', () => {
  test.each([
    ['macros for a bowl without rice 290 calories', ['nutrient 290 energyKcal kcal portion']],
    [
      'a slice, an eighth of the loaf, is one ninety calories',
      ['nutrient 190 energyKcal kcal slice'],
    ],
    ['the plate in front of you is five ten calories', ['nutrient 510 energyKcal kcal portion']],
    ["half of that's two hundred and five calories", ['nutrient 205 energyKcal kcal half']],
    [
      'there were four of us so it is four ten calories each',
      ['nutrient 410 energyKcal kcal portion'],
    ],
    [
      'if you have two bowls that is eight hundred calories',
      ['nutrient 800 energyKcal kcal unknown'],
    ],
    [
      'chickpeas eighty nine p, tomatoes fifty five',
      ['price 0.89 GBP ingredient chickpea', 'price 0.55 GBP ingredient tomato'],
    ],
    ['mince was three ninety nine a pack', []],
    [
      'protein, forty ish, fat, no more than twelve',
      ['nutrient 40 protein g about', 'nutrient 12 fat g atMost'],
    ],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));

  test('under heads of columns nobody can say which number is whose', () => {
    expect(brief('PER SLICE | WHOLE CAKE\n212 kcal | 2,544 kcal', { form: 'card' })).toEqual([]);
  });
});
