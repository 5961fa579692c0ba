import { describe, expect, it } from 'vitest';
import { aDish, aReading, aRecipe, grams } from '../../support/build';
import { aContext, judgeText } from './invented-kitchen';

/*
 * Whether an amount is of the raw or of the cooked food, in an invented kitchen. That grams of the one are none of the
 * other is the project’s own rule; no source.
 */

const of = (share: string) => ({ shares: [{ lineId: share, share: { num: 1, den: 1 } }] });

const LEFTOVERS = aDish(
  'leftovers',
  aRecipe(
    'r',
    [
      grams('oats', 'oats', 150, { text: '150 g cooked oats', state: 'cooked' }),
      grams('stock', 'stock', 200, { text: '200 g drained noodles', state: 'drained' }),
      grams('chicken', 'chicken', 100, { text: '100 g chicken breast', state: 'raw' }),
      grams('egg', 'egg', 60, { text: '60 g cheese', state: 'raw' }),
      grams('cheese', 'cheese', 90, { text: '90 g cooked cheese', state: 'cooked' }),
      grams('onion-1', 'onion', 80, { text: '80 g red onion', state: 'raw' }),
      grams('onion-2', 'onion', 120, { text: '120 g white onion', state: 'raw' }),
    ],
    {
      weighings: [
        aReading('w1', 'cooked', 50, of('onion-1')),
        aReading('w2', 'cooked', 70, of('onion-2')),
      ],
    },
  ),
  { title: 'Leftover bowl' },
);
const CONTEXT = aContext([LEFTOVERS]);
const at = (text: string) => judgeText(text, CONTEXT, 'leftovers');

describe('an amount of an ingredient whose grams are of the cooked food', () => {
  it.each([
    ['150 g of oats', 'agrees'],
    ['150 g of cooked oats', 'agrees'],
    ['150 g of dry oats', 'unknown'],
    ['150 g of oats, dry', 'unknown'],
    ['300 g of dry oats', 'unknown'],
    ['200 g of noodles', 'agrees'],
    ['200 g of dry noodles', 'unknown'],
    // Raw: what is said of the cooked food is not what was weighed.
    ['100 g of raw chicken', 'agrees'],
    ['100 g of cooked chicken', 'unknown'],
  ] as const)('%s: %s', (text, verdict) => {
    expect(at(`Ingredients: ${text}.`).verdict).toBe(verdict);
  });

  it('says that no raw weight of it is known', () => {
    expect(at('I used 150 g of dry oats').why).toBe(
      'can’t say: no raw weight is known of 150 g cooked oats',
    );
  });
});

describe('an amount of several ingredients of one name', () => {
  it.each([
    // One is raw, the other cooked.
    ['60 g of raw cheese', 'agrees'],
    ['90 g of raw cheese', 'off'],
    ['90 g of cooked cheese', 'agrees'],
    ['150 g of cooked cheese', 'off'],
    ['150 g of cheese', 'agrees'],
    // 80 g and 120 g raw, 50 g and 70 g cooked.
    ['200 g of raw onion', 'agrees'],
    ['200 g of cooked onion', 'off'],
    ['120 g of cooked onion', 'agrees'],
    ['120 g of raw onion', 'unknown'],
  ] as const)('%s: %s', (text, verdict) => {
    expect(at(`Ingredients: ${text}.`).verdict).toBe(verdict);
  });
});
