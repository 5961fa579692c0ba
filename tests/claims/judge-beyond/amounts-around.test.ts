import { describe, expect, it } from 'vitest';
import { aDish, aLine, aRecipe, grams } from '../../support/build';
import { aContext, judgeText } from './invented-kitchen';

/* Invented dishes; what words around an amount mean is the project’s own definition (MODEL D); no source. */

const quantity = (num: number, den = 1) => ({ low: { num, den }, high: { num, den } });
const PARCELS = aDish(
  'parcels',
  aRecipe(
    'parcels-recipe',
    [
      grams('l-cheese', 'cheese', 120, { text: '120 g feta' }),
      grams('l-chicken', 'chicken', 600, { text: '600 g minced chicken', state: 'raw' }),
      grams('l-onion', 'onion', 300, { text: '300 g onion' }),
      aLine('l-oats', 'oats', { text: '1 cup dry oats', quantity: quantity(1), unit: 'cup' }),
      aLine('l-egg', 'egg', { text: '3 eggs', quantity: quantity(3), unit: 'piece' }),
      aLine('l-beans', null, {
        text: '2 tins haricot beans',
        quantity: quantity(2),
        unit: 'pack',
        measureName: 'tin',
      }),
    ],
    { portions: [{ id: 'p8', kind: 'count', name: 'a parcel', of: 8 }] },
  ),
  { title: 'Chicken parcels' },
);
const verdict = (text: string) =>
  judgeText(text, aContext([PARCELS]), 'parcels', 'captions').verdict;

describe('how much of it is used', () => {
  it.each([
    ['300 grams of chicken a pack, and I am using two of them', 'agrees'],
    ['200 grams of chicken, and we put in all three of those', 'agrees'],
    ['240 grams of feta in the block. I use half of it', 'agrees'],
    ['one can of haricot beans, I use two of them', 'agrees'],
    ['four tins of haricot beans, I only use half the tins', 'agrees'],
    // Neither one of them nor all: nobody knows what is meant.
    ['300 grams of chicken a pack, and I am using three of them', 'unknown'],
    ['600 grams of chicken, I use half of it', 'unknown'],
    // Of another food, or behind another amount.
    ['600 grams of chicken. I use half the onion', 'agrees'],
    ['600 grams of chicken, 3 eggs, and I use two of them', 'agrees'],
    ['500 grams of chicken', 'off'],
  ])('%s: %s', (text, expected) => {
    expect([text, verdict(text)]).toEqual([text, expected]);
  });
});

describe('what each portion has', () => {
  it.each([
    ['each one gets 15 grams of feta', 'agrees'],
    ['each parcel takes some onion and 15 grams of feta', 'agrees'],
    ['in each of them goes 75 grams of chicken', 'agrees'],
    ['each one gets 30 grams of feta', 'off'],
    // All of it is what was said: nobody knows which is meant.
    ['each one gets 120 grams of feta', 'unknown'],
    ['each one is folded. Then 120 grams of feta', 'agrees'],
    ['15 grams of feta', 'off'],
  ])('%s: %s', (text, expected) => {
    expect([text, verdict(text)]).toEqual([text, expected]);
  });
});

describe('pieces and vessels whose size nobody knows', () => {
  it.each([
    ['a scoop of chicken', 'unknown'],
    ['two bags of oats', 'unknown'],
    ['three tubs of feta', 'unknown'],
    ['four onions', 'unknown'],
    ['two cans of haricot beans', 'agrees'],
    ['three cans of haricot beans', 'off'],
    ['three eggs', 'agrees'],
    ['five eggs', 'off'],
  ])('%s: %s', (text, expected) => {
    expect([text, verdict(text)]).toEqual([text, expected]);
  });
});

describe('raw or cooked, as the words of the amount themselves say', () => {
  it.each([
    // Nobody weighed it cooked.
    ['two cups of cooked oats, one cup dry last night', 'unknown'],
    ['600 grams of raw chicken, cooked in the pan', 'agrees'],
    ['400 grams of cooked chicken, 600 raw', 'unknown'],
  ])('%s: %s', (text, expected) => {
    expect([text, verdict(text)]).toEqual([text, expected]);
  });
});

describe('a share of an ingredient', () => {
  it.each([
    ['Half of it goes in now, so that is about 60 grams of feta', 'agrees'],
    ['A third of the onion first, so 100 grams of onion', 'agrees'],
    ['Half of the chicken, which is 300 grams of chicken', 'agrees'],
    ['Half of it goes in now, so about 90 grams of feta', 'off'],
    // All of it, or half?
    ['Half of it goes in now, so 120 grams of feta', 'unknown'],
    // Half of another food than the one that the amount names.
    ['Half of the topping, so that is 60 grams of feta', 'unknown'],
    ['Half of the topping, so that is 90 grams of feta', 'off'],
    // No share of the food at all.
    ['Half of it goes in the fridge and I use 120 grams of feta', 'agrees'],
  ])('%s: %s', (text, expected) => {
    expect([text, verdict(text)]).toEqual([text, expected]);
  });

  it('is said as what it is', () => {
    const said = judgeText(
      'Half of it goes in now, so 90 grams of feta',
      aContext([PARCELS]),
      'parcels',
      'captions',
    );
    expect(said).toMatchObject({ sayInstead: '60 g', verdict: 'off' });
    expect(said.why).toContain('half of it');
  });
});
