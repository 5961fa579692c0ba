import { describe, expect, it } from 'vitest';
import { episodeFigures } from '#lib/figures/episode-figures';
import { takeLock } from '#lib/lock/numbers-lock';
import { heldAgainst, locksOut } from '#lib/publish/correction/went-out';
import { aDish, aFile, aFood, aRecipe, grams } from '../../support/build';

/** What counts as out is a rule of this program (common practice, no source): dates are worked through by hand. */
describe('which locks are out', () => {
  const copied = (seq: number, copiedOn: string | null) => ({ seq, copiedOn, correctedTo: false });
  const to = (seq: number) => ({ seq, copiedOn: null, correctedTo: true });
  const seqs = (locks: Parameters<typeof locksOut>[0], publishOn: string | null) =>
    locksOut(locks, publishOn).map(({ seq }) => seq);
  const three = [copied(3, '2026-12-13'), copied(2, '2026-12-10'), copied(1, '2026-12-09')];

  it('are none where no text was copied', () => {
    expect(seqs([], '2026-12-12')).toEqual([]);
    expect(seqs([copied(1, null)], '2026-12-12')).toEqual([]);
  });

  it('is the last one copied, as long as nothing is out', () => {
    expect(seqs(three, null)).toEqual([3]);
    expect(seqs(three, '2026-12-20')).toEqual([3]);
  });

  it('are the last one of before the day of publishing, and all that were copied from then on', () => {
    expect(seqs(three, '2026-12-12')).toEqual([2, 3]);
    expect(seqs(three, '2026-12-13')).toEqual([2, 3]);
    expect(seqs(three, '2026-12-10')).toEqual([1, 2, 3]);
    expect(seqs(three, '2026-12-01')).toEqual([1, 2, 3]);
  });

  it('begin with the last correction, whatever the day of publishing', () => {
    expect(seqs([...three, to(4)], '2026-12-12')).toEqual([4]);
    expect(seqs([...three, to(4), copied(5, '2026-12-14')], null)).toEqual([4, 5]);
    expect(seqs([copied(2, '2026-12-10'), to(1)], '2026-12-20')).toEqual([1, 2]);
  });
});

/** 404, 505 and 606 kcal: 400, 500 and 600 g of 101 kcal per 100 g, by hand. */
describe('what the numbers of now are held against', () => {
  const BEAN = aFood('bean', { energyKcal: '101', protein: '10', fat: '1', carbohydrate: '13' });
  const weighing = (g: number) => {
    const stew = aRecipe('stew', [grams('beans', 'bean', g)]);
    return aFile([aDish('s', stew, { title: 'Stew' })], [BEAN]);
  };
  const lock = (seq: number, g: number) => ({ seq, snapshot: takeLock(weighing(g)).snapshot });
  const held = (out: readonly ReturnType<typeof lock>[], g: number) => {
    const file = weighing(g);
    return heldAgainst(out, { file, figures: episodeFigures(file) });
  };

  it('is the first lock with another number, though a later one agrees', () => {
    const found = held([lock(1, 400), lock(2, 500)], 500);
    expect(found?.lock.seq).toBe(1);
    expect(found?.needed.numbers[0]).toMatchObject({ from: { text: '404' }, to: { text: '505' } });
  });

  it('is a later one where the first agrees again and the later does not', () => {
    const found = held([lock(1, 400), lock(2, 500)], 400);
    expect(found?.lock.seq).toBe(2);
    expect(found?.needed.numbers[0]).toMatchObject({ from: { text: '505' }, to: { text: '404' } });
  });

  it('is the last one where all agree, and nothing where nothing is out', () => {
    const found = held([lock(1, 400), lock(2, 400)], 400);
    expect(found).toMatchObject({ lock: { seq: 2 }, needed: { kind: 'none' } });
    expect(held([], 400)).toBeNull();
  });
});
