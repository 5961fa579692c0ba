import { describe, expect, it } from 'vitest';
import { amountContext } from '#lib/episode/context';
import { countOf, gramsOf } from '#lib/swap/counted-amount';
import { fileDifferences } from '#lib/swap/difference';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';
import { swapped } from './kitchen';

const SLICE = {
  id: 'm',
  name: 'slice',
  qtyNum: 1,
  qtyDen: 1,
  massMg: 40_000,
  digits: 0,
  source: 's',
};
const bread = aFood('bread', { energyKcal: '250' }, { name: 'Bread', measures: [SLICE] });
const two = { low: { num: 2, den: 1 }, high: { num: 2, den: 1 } };
const slices = aLine('bread', 'bread', { unit: 'piece', quantity: two, measureName: 'slice' });
const weighed = grams('crumbs', 'bread', 80);
const file = aFile([aDish('bowl', aRecipe('r', [slices, weighed]))], [bread]);
const of = (line: typeof slices, mg: number) =>
  countOf(line, mg, { weighings: [] }, amountContext(file));

describe('an amount of what is counted', () => {
  it('is so many quarters of it, and none where it is weighed or is no such part', () => {
    const count = (num: number, den = 1) => ({ low: { num, den }, high: { num, den } });
    expect(of(slices, 120_000)).toEqual(count(3));
    expect(of(slices, 100_000)).toEqual(count(5, 2));
    expect(of(slices, 10_000)).toEqual(count(1, 4));
    expect(of(slices, 115_000)).toBeNull();
    expect(of(weighed, 120_000)).toBeNull();
  });

  it('keeps the spread of its measure in a swap: a slice more is as unsure as a slice', () => {
    const after = swapped(file, [{ kind: 'amount', lineId: 'bread', massMg: 120_000 }]);
    const line = after.episode.segments[0]?.recipe?.lines[0];
    expect(line).toMatchObject({ planned: null, quantity: { low: { num: 3, den: 1 } } });
    const slice = gramsOf(slices, { weighings: [] }, amountContext(file));
    const { energyKcal } = fileDifferences(file, after, 'bowl', ['energyKcal']).whole;
    // One slice at 2.5 kcal a gram, from its least to its most grams; 2.495 to 2.505 by the printed digits.
    expect(energyKcal?.value).toBeCloseTo(100, 6);
    expect(energyKcal?.low).toBeCloseTo(((slice?.lowMg ?? 0) / 2000) * 2.495, 1);
    expect(energyKcal?.high).toBeCloseTo(((slice?.highMg ?? 0) / 2000) * 2.505, 1);
    expect((energyKcal?.high ?? 0) - (energyKcal?.low ?? 0)).toBeGreaterThan(5);
  });
});
