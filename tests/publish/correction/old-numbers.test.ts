import { describe, expect, it } from 'vitest';
import type { CorrectedNumber } from '#lib/publish/correction/correction-of';
import { oldNumbersIn, oldNumberWords } from '#lib/publish/correction/old-numbers';
import { aDish, aFile, aFood, aRecipe, grams } from '../../support/build';

const portions = [{ id: 'third', kind: 'count' as const, name: 'a plate', of: 3 }];
const file = aFile(
  [
    aDish('stew', aRecipe('r', [grams('beans', 'beans', 400)], { portions })),
    aDish('soup', aRecipe('s', [grams('more', 'beans', 300)])),
  ],
  [aFood('beans', { energyKcal: '80' })],
);

const calories = (
  from: string,
  to: string | null,
  scope: CorrectedNumber['scope'] = { kind: 'whole', segmentId: 'stew' },
): CorrectedNumber => ({
  ...{ scope, dish: 'Stew', part: 'the whole dish', spoken: false },
  ...{ nutrient: 'energyKcal', label: 'calories', unit: 'kcal' },
  from: { text: from, range: '' },
  to: to === null ? null : { text: to, range: '' },
});
const old = (text: string, ...corrections: CorrectedNumber[][]) =>
  oldNumbersIn({ text, segmentId: 'stew' }, file, corrections).map(({ was, is }) => [was, is]);

describe('old numbers in a text', () => {
  it('are those that a correction put another in the place of', () => {
    expect(old('All of it comes to 846 calories.', [calories('846', '870')])).toEqual([
      ['846 kcal', '870 kcal'],
    ]);
    expect(old('All of it comes to 870 calories.', [calories('846', '870')])).toEqual([]);
    expect(old('It was 846 calories and is 870 calories.', [calories('846', '870')])).toEqual([]);
    expect(old('It has 846 mg of sodium, in 846 steps.', [calories('846', '870')])).toEqual([]);
    expect(old('846 calories', [calories('at least 846', null)])).toEqual([
      ['at least 846 kcal', null],
    ]);
  });

  it('are of the last correction of that amount: what is the number again is not old', () => {
    const [last, first] = [[calories('870', '846')], [calories('846', '870')]];
    expect(old('846 calories', last, first)).toEqual([]);
    expect(old('870 calories', last, first)).toEqual([['870 kcal', '846 kcal']]);
    const third = [calories('846', '900')];
    expect(old('870 calories', third, last, first)).toEqual([['870 kcal', '900 kcal']]);
  });

  it('are of the dish that the text is about, its portions and the day', () => {
    const of = (scope: CorrectedNumber['scope']) =>
      old('846 calories', [calories('846', '1', scope)]);
    expect(of({ kind: 'portion', portionId: 'third' })).toHaveLength(1);
    expect(of({ kind: 'day' })).toHaveLength(1);
    expect(of({ kind: 'portion', portionId: 'of another' })).toEqual([]);
    expect(of({ kind: 'whole', segmentId: 'soup' })).toEqual([]);
  });

  it('are told in a sentence’s middle', () => {
    const told = [
      { was: '846 kcal', is: '870 kcal' },
      { was: '94 g protein', is: null },
    ];
    expect(oldNumberWords(told)).toBe(
      '846 kcal, which is 870 kcal now; 94 g protein, which no longer holds',
    );
  });
});
