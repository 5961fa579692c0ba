import { describe, expect, it } from 'vitest';
import { cookMethods, yieldPercent, yieldUsedWords, yieldWords } from '#lib/episode/yield-words';
import type { YieldObservation } from '#lib/foods/food';
import { refuseText, refuseWords } from '#lib/foods/refuse-words';
import { aFood, aLine } from '../support/build';

// USDA SR28, Weight file, at 05306 and 23568.
const patty: YieldObservation = {
  id: 'p',
  method: 'patty',
  rawMg: 113_400,
  cookedMg: 82_000,
  source: 'USDA SR28, Weight file',
  own: null,
};
const broiled = { ...patty, id: 'b', method: 'patty, broiled', cookedMg: 77_000 };
const own = (id: string, cookedMg: number, lineId: string | null = null): YieldObservation => ({
  ...patty,
  id,
  method: 'pan',
  rawMg: 500_000,
  cookedMg,
  source: 'my own weights',
  own: { halfMg: 500, lineId },
});
const food = (...yields: YieldObservation[]) => aFood('f', {}, { yields }, { state: 'raw' });
const cooked = aLine('l', 'f', { state: 'cooked' });

describe('the cooked weight that an ingredient is turned by, in words', () => {
  it('names the way, the share with its range, the method and who says so', () => {
    expect(yieldWords(food(patty), cooked)).toBe(
      'cooked to raw by 72 % (67–77 %): patty, USDA SR28, Weight file',
    );
    expect(yieldUsedWords(food(patty))).toBe('72 % (67–77 %): patty, USDA SR28, Weight file');
    const raw = aFood('f', {}, { yields: [patty] }, { state: 'cooked' });
    expect(yieldWords(raw, aLine('l', 'f', { state: 'raw' }))).toMatch(/^raw to cooked by/);
  });

  it('is that of the person’s own cooks before a published one, and of this cook before those', () => {
    expect(yieldWords(food(patty, own('y1', 350_000)), cooked)).toContain('pan, your last cook');
    expect(yieldWords(food(patty, own('y1', 350_000), own('y2', 375_000)), cooked)).toBe(
      'cooked to raw by 73 % (70–75 %): pan, your 2 cooks',
    );
    expect(yieldWords(food(own('y1', 350_000), own('y3', 360_000, 'l')), cooked)).toBe(
      'cooked to raw by 72 % (72–72 %): pan, this cook’s own two weights',
    );
  });

  it('is that of the method that the ingredient names', () => {
    expect(yieldWords(food(patty, broiled), { ...cooked, cookMethod: 'patty, broiled' })).toContain(
      '68 % (63–73 %)',
    );
  });

  it('is none where none is needed, and says so where none is known', () => {
    expect(yieldWords(food(patty), aLine('l', 'f', { state: 'raw' }))).toBeNull();
    expect(yieldWords(food(), cooked)).toContain('no cooked weight is known');
    expect(yieldUsedWords(food())).toBeNull();
  });

  it('lists each method once, own ones first', () => {
    expect(cookMethods(food(patty, broiled, own('y1', 350_000), own('y2', 360_000)))).toEqual([
      'pan',
      'patty',
      'patty, broiled',
    ]);
    expect(yieldPercent(broiled)).toBe('68 %');
  });
});

describe('peel and trim in words', () => {
  const refuse = (percent: number, inValues: boolean) =>
    aFood('f', {}, {}, { refuse: { percent, text: 'ends', inValues } });

  it('says what comes off, when, and never twice', () => {
    // Zucchini: 5 % ends, USDA SR28 FOOD_DES.
    expect(refuseWords(refuse(5, false))).toContain('5 % (ends) come off before it counts');
    expect(refuseWords(refuse(5, false))).toContain('100 g count as 95 g');
    expect(refuseWords(refuse(20, true))).toContain('80 g of what is eaten count as 100 g');
    expect(refuseWords(refuse(20, true))).toContain('the grams count as they are');
    expect(refuseWords(aFood('f', {}))).toContain('ticked or not, the grams count as they are');
    expect(refuseWords(null)).toContain('once a food is chosen');
    expect(refuseText({ percent: 0, text: 'none', inValues: false })).toBeNull();
  });
});
