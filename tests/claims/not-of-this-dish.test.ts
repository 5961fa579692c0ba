import { describe, expect, it } from 'vitest';
import { brief } from './brief';
import { aContext, BAKE, judgeText, ROAST } from './judge-beyond/invented-kitchen';

/* What people say of other ways of making a dish, and of all dishes of an episode; common practice, no source. */

describe('how a dish used to be made', () => {
  it.each([
    ['I used to make this with double cream and it was nearly 900 calories a plate', []],
    ['it used to be 640 calories a slice', []],
    ['we used to make it with lamb at 710 calories a bowl', []],
    [
      'I used to make it with lamb at 710 calories and this is 480 calories a bowl',
      ['nutrient 710 energyKcal kcal compared itsOwn', 'nutrient 480 energyKcal kcal portion'],
    ],
    [
      'I used to be scared of pastry it is 480 calories a slice',
      ['nutrient 480 energyKcal kcal slice'],
    ],
    // With what it is now, it is the other end of a difference.
    [
      'we used to make it with lamb at 710 calories a bowl now it is 480 calories a bowl',
      ['nutrient 710 energyKcal kcal compared itsOwn', 'nutrient 480 energyKcal kcal portion'],
    ],
  ])('%s', (text, read) => {
    expect(brief(text).filter((each) => each.startsWith('nutrient'))).toEqual(read);
  });
});

describe('a word for one of the dishes', () => {
  it.each([
    ['last one my leek tart', []],
    ['right next one, the oat flapjack', []],
    ['and one egg', ['amount 1 piece']],
    ['one onion and the garlic', ['amount 1 piece']],
  ])('is no number: %s', (text, read) => {
    const amounts = brief(text).filter((each) => each.startsWith('amount'));
    expect(amounts.map((each) => each.split(' ').slice(0, 3).join(' '))).toEqual(read);
  });
});

describe('as many meals as the episode has dishes', () => {
  const two = aContext([ROAST, BAKE]);
  const at = (text: string, context = two) => judgeText(text, context, 'roast', 'captions').verdict;

  it('may be those dishes', () => {
    // The roast makes four portions.
    expect(at("so I've got two meals for you")).toBe('unknown');
    expect(at('that gives you two meals')).toBe('unknown');
    expect(at('that gives you three meals')).toBe('off');
    expect(at('that gives you four meals')).toBe('agrees');
    expect(at('that gives you two portions')).toBe('off');
    expect(at('that gives you two meals', aContext([ROAST]))).toBe('off');
  });
});
