import { describe, expect, it } from 'vitest';
import { amountContext } from '#lib/episode/context';
import { readIngredient } from '#lib/episode/read-ingredient';
import { ingredientText } from '#lib/publish/ingredient-text';
import { writtenAmount } from '#lib/publish/written-amount';
import { aDish, aFile, aFood, aLine, aRecipe } from '../support/build';

/** Amounts as they are spoken, and as a description prints them. From memory of how people talk. */
const SPOKEN: readonly (readonly [string, string])[] = [
  ['Two hundred and fifty grams of red lentil pasta', '250 g red lentil pasta'],
  ['A hundred grams of cherry tomatoes', '100 g cherry tomatoes'],
  ['A tin of tuna', '1 tin of tuna'],
  ['Half a cucumber', '1/2 cucumber'],
  ['a quarter of an onion', '1/4 onion'],
  ['a tablespoon of olive oil', '1 tbsp olive oil'],
  ['half a teaspoon of salt', '1/2 tsp salt'],
  ['olive oil, two tablespoons', 'olive oil, 2 tbsp'],
  ['one and a half cups of rice', '1 1/2 cups of rice'],
  ['two cloves of garlic', '2 cloves of garlic'],
  ['two big spoons of oil', '2 big spoons of oil'],
  ['the juice of one lemon', 'the juice of 1 lemon'],
  ['a dozen eggs', '12 eggs'],
];

describe('an amount that is spoken in words', () => {
  it.each(SPOKEN)('%s is printed as %s', (spoken, printed) => {
    expect(writtenAmount(spoken)).toBe(printed);
  });

  it.each(SPOKEN)('%s is the same amount of the same food once printed', (spoken, printed) => {
    const [was] = readIngredient(spoken);
    const [is] = readIngredient(printed);
    expect(is).toMatchObject({ food: was?.food, unit: was?.unit, quantity: was?.quantity });
  });

  it.each([
    '600g ground turkey (5% fat)',
    'olive oil',
    'Salt to taste',
    'A few leaves of lettuce',
    'a couple of eggs',
    'A pinch of salt, 0.6 g',
    'a handful of spinach',
    'one egg + two whites',
    'one 400 g tin of beans',
    'a',
    '',
  ])('%s stays as it is', (text) => {
    expect(writtenAmount(text)).toBe(text);
  });
});

describe('an ingredient whose words say their amount', () => {
  const textOf = (...[text, more]: [string, Parameters<typeof aLine>[2]]) => {
    const line = aLine(text, 'f', { state: 'raw', ...more });
    const file = aFile([aDish('d', aRecipe('r', [line]))], [aFood('f', {}, {}, { state: 'raw' })]);
    return ingredientText(line, [], amountContext(file));
  };
  const once = (num: number) => ({ low: { num, den: 1 }, high: { num, den: 1 } });
  const planned = (grams: number) => {
    const mg = grams * 1000;
    return { lowMg: mg, valueMg: mg, highMg: mg };
  };

  it('says it once, in digits', () => {
    const pasta = { quantity: once(250), unit: 'g' as const };
    expect(textOf('Two hundred and fifty grams of pasta', pasta)).toBe('250 g pasta (raw)');
    const tin = { quantity: once(1), unit: 'pack' as const, planned: planned(290) };
    expect(textOf('A tin of tuna', tin)).toBe('1 tin of tuna (290 g, raw)');
  });

  it('says its state once', () => {
    const beans = { quantity: once(120), unit: 'g' as const, state: 'drained' as const };
    expect(textOf('120 g borlotti beans, drained', beans)).toBe('120 g borlotti beans, drained');
    const tin = { quantity: once(1), unit: 'pack' as const, planned: planned(110) };
    const fish = { ...tin, state: 'drained' as const };
    const words = '110g tin mackerel in brine (drained weight)';
    expect(textOf(words, fish)).toBe(words);
    // Grams that hold after it was cooked, of words that say it was raw.
    const rice = { quantity: once(80), unit: 'g' as const, state: 'cooked' as const };
    expect(textOf('80 g raw rice', rice)).toBe('80 g raw rice (cooked)');
    expect(textOf('80 g rice, to be cooked', rice)).toBe('80 g rice, to be cooked (cooked)');
  });

  it('has the grams of now beside words that name others', () => {
    const more = { quantity: once(300), unit: 'g' as const };
    expect(textOf('Two hundred grams of pasta', more)).toBe('200 g pasta (counted: 300 g, raw)');
  });
});
