import { describe, expect, it } from 'vitest';
import { brief } from './brief';

/* Invented sentences; how they are read is the project’s own convention (head of statements-open.json). */

const reads = (cases: readonly (readonly [string, readonly string[]])[]) =>
  it.each(cases.map(([text, read]) => [text, [...read]] as const))('%j', (text, read) => {
    expect(brief(text)).toEqual(read);
  });

describe('a difference to another way of making it', () => {
  reads([
    ['you can do maple syrup instead, that is about 70 calories more', []],
    ['triple the beans and that is 15 grams of protein more', []],
    ['use half the oil, that is 90 calories less', ['nutrient 90 energyKcal kcal compared less']],
    // Softened, and on its own.
    ['it is 640 calories more or less', ['nutrient 640 energyKcal kcal about']],
    ['it is 640 calories, more than last time', ['nutrient 640 energyKcal kcal']],
    ['with the bun it is 140 calories more', ['nutrient 140 energyKcal kcal ingredient bun']],
  ]);
});

describe('a condition', () => {
  reads([
    ['If you cut it in nine it would be 220 calories.', []],
    ['If I served it to five, a bowl would be 380 calories.', []],
    ['Suppose you use cream, it’d come to 700 calories.', []],
    ['A bowl is 480 calories. I would make it again.', ['nutrient 480 energyKcal kcal portion']],
    ['If you are hungry, a bowl is 480 calories.', ['nutrient 480 energyKcal kcal portion']],
  ]);
});

describe('an amount that is said again', () => {
  reads([
    [
      'one teaspoon of olive oil, so five millilitres salt, pepper',
      ['amount 1 tsp olive oil', 'amount 5 ml olive oil'],
    ],
    [
      'a tablespoon of tahini, which I weigh, it is 15 grams',
      ['amount 1 tbsp tahini', 'amount 15 g tahini'],
    ],
    [
      'a cup of rice, which I always weigh, that is 185 grams',
      ['amount 1 cup rice', 'amount 185 g rice'],
    ],
    [
      'one teaspoon of olive oil and five millilitres of vinegar',
      ['amount 1 tsp olive oil', 'amount 5 ml vinegar'],
    ],
  ]);
});

describe('what a row of foods comes to', () => {
  reads([
    [
      '200 grams of beans, 80 grams of rice, it is 460 calories and 24 grams of protein',
      [
        'amount 200 g bean',
        'amount 80 g rice',
        'nutrient 460 energyKcal kcal',
        'nutrient 24 protein g',
      ],
    ],
    [
      '80 grams of rice, it is 290 calories',
      ['amount 80 g rice', 'nutrient 290 energyKcal kcal ingredient rice'],
    ],
    [
      '200 grams of beans, 80 grams of rice, that is 290 calories',
      ['amount 200 g bean', 'amount 80 g rice', 'nutrient 290 energyKcal kcal ingredient rice'],
    ],
  ]);
});

describe('one of what was counted, and of a food', () => {
  reads([
    [
      'that makes six balls and one is 90 calories',
      ['portions 6 piece', 'nutrient 90 energyKcal kcal each'],
    ],
    [
      'it cuts into eight slices so one is 165 calories',
      ['portions 8 slice', 'nutrient 165 energyKcal kcal slice'],
    ],
    [
      'that makes twelve tablespoons and one is 25 calories',
      ['nutrient 25 energyKcal kcal unknown'],
    ],
    [
      'the tortillas are the big ones, they are 210 calories each',
      ['nutrient 210 energyKcal kcal each tortilla'],
    ],
    ['the eggs are small so they are 65 calories each', ['nutrient 65 energyKcal kcal each egg']],
    ['they are 210 calories each', ['nutrient 210 energyKcal kcal each']],
    [
      'that is both bowls together, 690 calories, 47 grams of protein',
      ['nutrient 690 energyKcal kcal whole', 'nutrient 47 protein g whole'],
    ],
  ]);
});

describe('numbers that count something else', () => {
  reads([
    [
      'The protein one has twice the protein of the bean one.',
      ['nutrient 200 protein % compared shareOf'],
    ],
    ['that fibre one is my favourite', []],
    [
      'tested in one oven: 145, 102 and 165 kcal per bowl',
      ['nutrient 165 energyKcal kcal portion'],
    ],
    ['the oven is at 180, 25 minutes', ['ovenTemperature 180 C', 'minutes 25 min']],
  ]);
});

describe('money that no currency says', () => {
  reads([
    [
      'the whole batch was twenty eight fifty at the store so two eighty five each',
      ['price 28.5 unknown whole', 'price 2.85 unknown each'],
    ],
    ['I paid twelve forty for the lot', ['price 12.4 unknown whole']],
    ['the pot was nine twenty on the receipt', ['price 9.2 unknown whole']],
    ['a bowl is four eighty calories and I paid nothing', ['nutrient 480 energyKcal kcal portion']],
  ]);
});

describe('another dish, and another day', () => {
  reads([
    // Which kind of that food, and no other dish.
    [
      '200 grams of yogurt, the full fat one, and it is 610 calories',
      ['amount 200 g yogurt', 'nutrient 610 energyKcal kcal'],
    ],
    [
      'dinner comes to 640 calories, the oven is the best bit of the day',
      ['nutrient 640 energyKcal kcal'],
    ],
    ['that is 1795 calories for the day', ['nutrient 1795 energyKcal kcal day']],
  ]);

  it('is the one that has the meal in its title', () => {
    const dishes = ['Breakfast: skyr jars', 'Dinner: bean bake', 'Smoky bean stew'];
    const of = (text: string) => brief(text, { dishes, dish: 'Smoky bean stew' });
    expect(of('dinner comes to 640 calories')).toEqual([
      'nutrient 640 energyKcal kcal Dinner: bean bake',
    ]);
    expect(of('supper comes to 640 calories')).toEqual(['nutrient 640 energyKcal kcal']);
    expect(of('I had dinner with friends and it is 640 calories')).toEqual([
      'nutrient 640 energyKcal kcal',
    ]);
  });

  it('is none of several that are counted', () => {
    const dishes = ['Bean muffins', 'Seed muffins'];
    const read = brief('Two bean muffins in one oven, 165 calories', {
      dishes,
      dish: 'Seed muffins',
    });
    expect(read.filter((line) => line.includes('Bean'))).toEqual([]);
  });
});
