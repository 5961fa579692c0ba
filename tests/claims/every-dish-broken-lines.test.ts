import { describe, expect, it } from 'vitest';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { rowsOf } from './edit-build';

/* Invented dishes; that the same words mean the same wherever they stand is the project's own rule, no source. */

const BEAN = aFood('bean', { energyKcal: '100.0', protein: '10.0' }, { name: 'Beans, white' });
/** Four bowls of a mass of beans: 1 kg of them has 100 g of protein. */
const dish = (id: string, title: string, gram: number) =>
  aDish(
    id,
    aRecipe(`r-${id}`, [grams(`l-${id}`, 'bean', gram, { text: `${gram} g white beans` })], {
      portions: [{ id: `p-${id}`, kind: 'count', name: 'a bowl', of: 4 }],
    }),
    { title },
  );
const FILE = aFile(
  [dish('a', 'Smoky bean pot', 1600), dish('b', 'Bean and corn bake', 1000)],
  [BEAN],
  { resolutionMg: 1 },
);

const verdict = (text: string, kind: 'captions' | 'title') =>
  rowsOf(FILE, text, kind).find(({ statement }) => statement.kind === 'nutrient')?.verdict;

describe('each of several dishes has one verdict in a title and in captions', () => {
  // The bowls have 40 g and 25 g.
  it.each([
    ['2 Bean Dinners (35g+ protein EACH)', 'title', 'off'],
    ['2 Bean Dinners (24g+ protein EACH)', 'title', 'agrees'],
    ['two bean dinners and every single one has at least 35 grams of protein', 'captions', 'off'],
    ['two bean dinners and every single\none has at least 35 grams of protein', 'captions', 'off'],
    ['two bean dinners and every\nsingle one has\nat least 35 grams of protein', 'captions', 'off'],
    ['two bean dinners and each\none has at least 35 grams of protein', 'captions', 'off'],
    ['two bean dinners and all of them come\nin at over 35 grams of protein', 'captions', 'off'],
    ['two bean dinners every single\none has at least 24 grams of protein', 'captions', 'agrees'],
  ] as const)('%j in %s: %s', (text, kind, expected) => {
    expect(verdict(text, kind)).toBe(expected);
  });
});
