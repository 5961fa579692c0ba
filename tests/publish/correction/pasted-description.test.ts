import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { correctionFoot } from '#lib/publish/correction/correction-words';
import { pastedNumbers } from '#lib/publish/correction/pasted-description';
import { aDish, aFile, aFood, aRecipe, grams } from '../../support/build';

const BEAN = aFood('bean', {
  energyKcal: '101',
  protein: '10.0',
  fat: '1.0',
  carbohydrate: '13.0',
});

/** 404 kcal and 40 g of protein in 400 g, by hand. */
function pasted(text: string, match: 'confirmed' | 'provisional' = 'confirmed'): EpisodeFile {
  const stew = aRecipe('stew', [grams('beans', 'bean', 400, { match })]);
  const file = aFile([aDish('s', stew, { title: 'Harbour stew' })], [BEAN]);
  const texts = [{ id: 't', kind: 'description' as const, name: 'Description', text }];
  return { ...file, edit: { texts, mends: [], named: [] } };
}
const numbers = (file: EpisodeFile) => pastedNumbers(file, episodeFigures(file));

describe('a description that was out before', () => {
  it('has its wrong numbers told with those of now, and never those that hold', () => {
    const found = numbers(
      pasted('Harbour stew\nThe whole dish: 470 kcal, 40 g protein\nThe whole dish: 470 kcal'),
    );
    expect(found).toMatchObject([
      { line: 2, nutrient: 'energyKcal', from: { text: '470' }, to: { text: '404' } },
    ]);
    expect(correctionFoot(found ?? [], { reason: '', on: '2026-11-30' })).toBe(
      'Correction, 30 Nov 2026:\n- Harbour stew, the whole dish: 404 kcal (not 470)',
    );
  });

  it('is nothing to correct where it holds, or where nobody has confirmed the foods', () => {
    expect(numbers(pasted('Harbour stew\nThe whole dish: 404 kcal, 40 g protein'))).toEqual([]);
    expect(numbers(pasted('Harbour stew\nThe whole dish: 470 kcal', 'provisional'))).toEqual([]);
  });

  it('is none where none was pasted', () => {
    const { edit: _, ...file } = pasted('x');
    expect(numbers(file)).toBeNull();
  });
});
