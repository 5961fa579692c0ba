import { describe, expect, test } from 'vitest';
import { readSwapQuestion } from '#lib/swap/swap-question';
import { aDish, aRecipe, grams } from '../support/build';

const line = (id: string, text: string) => grams(id, `f-${id}`, 100, { text });
const dishes = [
  aDish('pan', aRecipe('r1', [line('turkey', '500 g ground turkey'), line('rice', '200 g rice')])),
  aDish('bowl', aRecipe('r2', [line('feta', '80 g feta, crumbled'), line('beans', '1 tin beans')])),
].map(({ recipe, ...dish }) => ({ ...dish, recipe: recipe ?? aRecipe('none', []) }));
const names = new Map([['f-feta', 'Cheese, feta']]);
const asks = (comment: string) => {
  const found = readSwapQuestion(comment, dishes, names);
  return found && [found.lineId, found.other];
};

// Sentences as viewers write them; invented, no source.
describe('a swap that a comment asks for', () => {
  test.each([
    ['Could I use tempeh instead of the turkey?', 'turkey', 'tempeh'],
    ['instead of rice can you use red lentils please', 'rice', 'red lentils'],
    ['smoked tofu in place of feta, yes or no?', 'feta', 'smoked tofu'],
    ['Love it! If I swap the beans for chickpeas, what are the macros', 'beans', 'chickpeas'],
    ['can you substitute quorn for the ground turkey?', 'turkey', 'quorn'],
    ['more of the rice instead of the turkey', 'turkey', 'rice'],
    ['I replaced the cheese with cashew cream', 'feta', 'cashew cream'],
    ['would halloumi work rather than feta', 'feta', 'halloumi'],
  ])('%s', (comment, lineId, other) => {
    expect(asks(comment)).toEqual([lineId, other]);
  });

  test('may be to leave an ingredient out', () => {
    expect(asks('Can I leave out the feta here?')).toEqual(['feta', null]);
  });

  test.each([
    'I get 512 calories, not 480',
    'use butter instead of ghee',
    'Thanks, made it twice instead of once!',
    'instead of',
    'swap the rice for the turkey',
    '',
  ])('is none in “%s”, or none of these dishes', (comment) => {
    expect(asks(comment)).toBeNull();
  });

  test('is read in time whatever the comment is', () => {
    const from = performance.now();
    for (const part of ['instead of ', 'swap a for ', 'can leave out ', 'x ']) {
      readSwapQuestion(part.repeat(2000), dishes, names);
    }
    expect(performance.now() - from).toBeLessThan(2000);
  });
});
