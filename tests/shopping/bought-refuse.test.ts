import { expect, test } from 'vitest';
import { boughtRefuse } from '#lib/shopping/bought-refuse';
import { offTheShelf } from '#lib/shopping/take-from-lots';
import { shoppingList } from '#lib/shopping/shopping-list';
import { loadSr28 } from '#seed/load-sr28';

import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

const foods = loadSr28();

function foodNamed(name: string) {
  const food = foods.find((each) => each.name === name);
  if (!food) throw new Error(`no food ${name}`);
  return food;
}

const THIGH = 'Chicken, broilers or fryers, dark meat, thigh, meat only, raw';
const POTATO = 'Potatoes, flesh and skin, raw';
const ZUCCHINI = 'Squash, summer, zucchini, includes skin, raw';
const BANANA = 'Bananas, raw';

// Refuse by USDA SR28; what a line's words say of it: common practice, no source.
test.each([
  ['450 g chicken thighs', THIGH, true],
  ['450 g chicken thighs, skinless', THIGH, false],
  ['450 g skinless boneless thighs', THIGH, false],
  ['300 g waxy potatoes', POTATO, false],
  ['300 g courgette, unpeeled', ZUCCHINI, true],
  ['200 g bananas, sliced', BANANA, true],
])('%s of %s', (text, name, isBought) => {
  const food = foodNamed(name);
  const percent = food.version.refuse?.percent ?? 0;
  expect(percent).toBeGreaterThan(0);
  const line = { text, note: '', asBought: false };
  expect([food.version.refuse?.text, boughtRefuse(line, food)]).toEqual([
    food.version.refuse?.text,
    isBought ? percent : 0,
  ]);
  expect(offTheShelf(75_000, line, food)).toBe(
    isBought ? Math.round(75_000 / (1 - percent / 100)) : 75_000,
  );
});

test('a row of the list says what is bought on top', () => {
  const peeled = aFood('banana', {});
  const food = {
    ...peeled,
    version: { ...peeled.version, refuse: { percent: 36, text: 'Skin', inValues: false } },
  };
  const rowOf = (text: string) => {
    const line = { ...grams('l', 'banana', 64), text };
    return shoppingList(aFile([aDish('d', aRecipe('r', [line]))], [food])).items[0]?.working[0];
  };
  expect(rowOf('64 g banana')).toMatchObject({ mg: 100_000, onTop: '36 % (Skin)' });
  expect(rowOf('64 g banana, skin on')).toMatchObject({ mg: 64_000, onTop: null });
});
