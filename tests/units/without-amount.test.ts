import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withoutAmount } from '#lib/units/without-amount';

describe('the food words of an ingredient', () => {
  it.each([
    ['150 g pearl barley', 'pearl barley'],
    ['2 cloves of garlic', 'garlic'],
    ['1 1/2 cups shredded cheddar', 'shredded cheddar'],
    ['½ large aubergine', 'aubergine'],
    ['14–16 oz ground turkey', 'ground turkey'],
    ['2 eggs', 'eggs'],
    ['1 tbsp butter', 'butter'],
    ['200 ml milk', 'milk'],
    ['olive oil', 'olive oil'],
    ['05062', '05062'],
    ['7up', 'up'],
    ['', ''],
  ])('%j are %j', (text, food) => {
    expect(withoutAmount(text)).toBe(food);
  });

  it('are never empty where something was written', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(withoutAmount(text) === '').toBe(text.trim() === '');
      }),
    );
  });
});
