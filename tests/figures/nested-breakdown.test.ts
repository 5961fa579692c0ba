import { describe, expect, it } from 'vitest';
import type { Segment } from '#lib/episode/schema';
import { breakdown } from '#lib/figures/breakdown';
import { breakdownCsv } from '#lib/figures/breakdown-csv';
import { namedScopes } from '#lib/figures/breakdown-scope';
import { figureStatus } from '#lib/figures/figure';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';

const OATS = aFood('oats', { energyKcal: '379', protein: '13.0' });
const PORRIDGE = aRecipe('in', [grams('oats in it', 'oats', 50)], {
  title: 'Porridge',
  weighings: [aReading('w', 'finished', 200)],
});
const mass = (g: number) => ({ lowMg: g * 1000, valueMg: g * 1000, highMg: g * 1000 });
const line = aLine('porridge', null, { madeFrom: { recipeId: 'in', rev: 1 }, planned: mass(100) });

describe('a dish within a dish', () => {
  const file = aFile([aDish('d', aRecipe('r', [grams('oats', 'oats', 20), line]))], [OATS], {
    recipes: [PORRIDGE],
  });
  const of = breakdown(file, { kind: 'whole', segmentId: 'd' }, 'protein');

  it('is one row of a breakdown, named, with its grams and what it adds', () => {
    expect(of?.rows.map(({ text, madeFrom }) => [text, madeFrom])).toEqual([
      ['oats', null],
      ['porridge', { recipeId: 'in', title: 'Porridge' }],
    ]);
    const [own, nested] = of?.rows ?? [];
    expect(nested?.foods).toEqual([]);
    expect(nested?.massMg?.value).toBe(100_000);
    // Half of 50 g at 13.0 g in 100 g.
    expect(nested?.value).toBeCloseTo(3.25, 9);
    expect((own?.value ?? 0) + (nested?.value ?? 0)).toBeCloseTo(of?.figure.value ?? NaN, 9);
    expect((own?.shareOfUncertainty ?? 0) + (nested?.shareOfUncertainty ?? 0)).toBeCloseTo(1, 9);
  });

  it('is named in the file of its rows', () => {
    expect(of && breakdownCsv(of, 'the whole dish')).toContain(
      '\r\nporridge,d,100,99.5,100.5,a dish: Porridge,',
    );
  });
});

describe('what was eaten of a dish', () => {
  const eaten = (more: Partial<Segment>) =>
    namedScopes(aFile([aDish('d', PORRIDGE, more)], [OATS]))
      .filter(({ scope }) => scope.kind === 'eaten')
      .map(({ part }) => part);

  it.each<[string, Partial<Segment>, string[]]>([
    ['all of it', {}, []],
    ['none', { eaten: { num: 0, den: 1 } }, []],
    ['a share', { eaten: { num: 1, den: 4 } }, ['1 of 4, as eaten']],
    [
      'a share by eye',
      { eaten: { num: 1, den: 3 }, ate: { kind: 'byEye', permille: 150 } },
      ['1/3, by eye, as eaten'],
    ],
    ['grams', { ate: { kind: 'mass', ...mass(90) } }, ['90 g, as eaten']],
  ])('has a breakdown of its own where it is not exactly all: %s', (_, more, parts) => {
    expect(eaten(more)).toEqual(parts);
  });

  it('is open by grams where the dish was not weighed, and all of it is known', () => {
    const recipe = { ...PORRIDGE, weighings: [] };
    const file = aFile([aDish('d', recipe, { ate: { kind: 'mass', ...mass(90) } })], [OATS]);
    const status = (kind: 'eaten' | 'whole') => {
      const of = breakdown(file, { kind, segmentId: 'd' }, 'protein');
      return of && figureStatus(of.figure);
    };
    expect([status('eaten'), status('whole')]).toEqual(['open', 'known']);
  });
});
