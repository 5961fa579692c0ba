import { describe, expect, test } from 'vitest';
import { ENGLISH } from '#lib/claims/english/english';
import { stemsOf } from '#lib/claims/words/foods';
import { fitOf, ingredientNames } from '#lib/claims/judge-beyond/ingredient-names';

/* Invented ingredients; how cooks call them for short is common practice, no source. */

const fit = (said: string, text: string) =>
  fitOf(stemsOf(said, ENGLISH), ingredientNames({ text }, [], ENGLISH));

describe('how well a food that is said fits an ingredient', () => {
  test.each([
    // A share of fat or cocoa is no part of the name.
    ['dark chocolate', '40 g dark chocolate 85%', 4],
    ['greek yogurt', '150 g Greek yogurt 10%', 4],
    ['beef mince', '500 g beef mince 95/5', 4],
    ['cream cheese', '60 g 5% fat cream cheese', 4],
    // For short.
    ['vanilla', '1 tsp vanilla extract', 2],
    ['cocoa', '20 g cocoa powder', 2],
    ['strawberry whey', '30 g strawberry whey protein powder', 2],
    ['whey', '30 g strawberry whey protein', 2],
    ['feta', '80 g feta cheese', 2],
    ['chia', '2 tbsp chia seeds', 2],
    // What it is kept in comes behind.
    ['tuna', '1 tin tuna in water', 3],
    ['tuna', '2 x 145g tinned tuna in water, drained', 3],
    ['sun-dried tomatoes', '40 g sun-dried tomatoes in oil', 3],
    // An ingredient that says more of it is nearer than one that says less.
    ['red pepper', '1 red bell pepper', 3],
    ['red pepper', 'pepper', 2],
  ])('%s fits "%s" by %i', (said, text, expected) => {
    expect(fit(said, text)).toBe(expected);
  });

  test.each([
    ['garlic', '1 tsp garlic powder'],
    ['almond', '1 tsp almond extract'],
    ['coconut', '200 ml coconut milk'],
    ['tomato', '2 tbsp tomato paste'],
    ['mustard', '1 tsp mustard powder'],
    ['egg', '100 g egg whites'],
    ['chicken', '300 ml chicken stock'],
    ['oil', '1 tin tuna in oil'],
    ['milk chocolate', '200 ml chocolate milk 2%'],
  ])('%s does not fit "%s"', (said, text) => {
    expect(fit(said, text)).toBe(0);
  });
});
