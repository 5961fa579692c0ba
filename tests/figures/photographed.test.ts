import { describe, expect, it } from 'vitest';
import type { RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { breakdown } from '#lib/figures/breakdown';
import { episodeFigures } from '#lib/figures/episode-figures';
import { confirmedOnly, publishedNumbers } from '#lib/figures/published-numbers';
import { provisionalWords } from '#lib/figures/provisional-words';
import { lockStanding } from '#lib/lock/lock-standing';
import { takeLock } from '#lib/lock/numbers-lock';
import { description } from '#lib/publish/description';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';

// 100 kcal in 100 g, as printed; so grams and kilocalories are one number.
const food = aFood('f', {
  energyKcal: '100.00',
  protein: '10.00',
  fat: '1.00',
  carbohydrate: '2.00',
});
const PHOTO = { at: '2026-11-14T11:40:00Z', sha256: 'ab'.repeat(32) };
const of = (more: Partial<RecipeLine>, weighings: Weighing[] = []): EpisodeFile => {
  const lines = [{ ...grams('leek', 'f', 200), ...more }, grams('oil', 'f', 10)];
  return aFile([aDish('soup', aRecipe('r', lines, { weighings }))], [food]);
};
const plain = of({});
const photographed = of({ photographed: PHOTO });
const whole = { kind: 'whole', segmentId: 'soup' } as const;
const numbersOf = (file: EpisodeFile) => publishedNumbers(file, episodeFigures(file));

describe('an ingredient whose scale was photographed and whose number is not typed yet', () => {
  it('counts as planned, and makes what rests on it provisional', () => {
    const [then, now] = [plain, photographed].map((file) => numbersOf(file)('energyKcal', whole));
    expect(now?.text).toBe(then?.text);
    expect(then?.provisional).toEqual([]);
    expect(now?.provisional).toEqual([
      { why: 'photo', lineId: 'leek', text: 'leek', foodName: food.name },
    ]);
    const lines = episodeFigures(photographed).dishes[0]?.lines ?? [];
    expect(lines.map(({ figures }) => figures.energyKcal?.provisional.length)).toEqual([1, 0]);
    expect(numbersOf(photographed)('energyKcal', { kind: 'day' }).provisional).toHaveLength(1);
  });

  it('is provisional also where it was weighed before: more may be on the scale', () => {
    const file = of({ photographed: PHOTO }, [
      aReading('w', 'raw', 180, { shares: [{ lineId: 'leek', share: { num: 1, den: 1 } }] }),
    ]);
    expect(numbersOf(file)('energyKcal', whole)).toMatchObject({ text: '190' });
    expect(numbersOf(file)('energyKcal', whole).provisional).toHaveLength(1);
  });

  it('leaves open what is copied and said, with the reason', () => {
    const number = confirmedOnly(numbersOf(photographed))('energyKcal', whole);
    expect(number).toMatchObject({
      number: null,
      range: 'photographed, not typed yet: leek',
    });
    const { text } = description(photographed);
    expect(text).toContain('photographed, not typed yet: leek');
    expect(text).toContain('- leek (200 g, as sold, as planned: photographed, not typed yet)');
    expect(text).not.toContain('210 kcal');
  });

  it('stands beside a food that waits for the person’s word', () => {
    const both = of({ photographed: PHOTO, match: 'provisional' });
    expect(provisionalWords(numbersOf(both)('energyKcal', whole).provisional)).toBe(
      'not confirmed yet: leek; photographed, not typed yet: leek',
    );
  });

  it('says so in its row of the breakdown', () => {
    const rows = breakdown(photographed, whole, 'energyKcal')?.rows;
    expect(rows?.map(({ waits }) => waits)).toEqual(['photographed, not typed yet', '']);
  });

  it('is in what a dish made from it, or made from by it, says', () => {
    const base = aRecipe('base', [grams('leek', 'f', 200)]);
    const made = { recipeId: 'base', rev: 1 };
    const line = aLine('base-line', null, { madeFrom: made, unit: 'batch', photographed: PHOTO });
    const quantity = { low: { num: 1, den: 1 }, high: { num: 1, den: 1 } };
    const file = aFile([aDish('pie', aRecipe('r', [{ ...line, quantity }]))], [food], {
      recipes: [base],
    });
    const pie = { kind: 'whole', segmentId: 'pie' } as const;
    expect(numbersOf(file)('energyKcal', pie).provisional).toEqual([
      { why: 'photo', lineId: 'base-line', text: 'base-line', foodName: base.title },
    ]);
  });

  it('breaks a lock that was taken before', () => {
    expect(lockStanding(takeLock(plain).snapshot, plain)).toBe('locked');
    expect(lockStanding(takeLock(plain).snapshot, photographed)).toBe('broken');
  });
});
