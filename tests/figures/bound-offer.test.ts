import { describe, expect, it } from 'vitest';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { dishesOf } from '#lib/episode/context';
import {
  atMostText,
  boundedValues,
  boundOffers,
  offerWords,
  rangeFromZero,
} from '#lib/figures/bound-offer';
import { episodeFigures } from '#lib/figures/episode-figures';
import { figureStatus } from '#lib/figures/figure';
import { publishedNumbers } from '#lib/figures/published-numbers';
import type { Nutrient } from '#lib/foods/nutrients';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

const ALL = {
  energyKcal: '300',
  fat: '5.00',
  saturated: '1.000',
  cholesterol: '0',
  sodium: '50',
  sugars: '5.00',
  protein: '10.00',
  water: '10.00',
  ash: '5.00',
};
const oats = aFood('oats', { ...ALL, carbohydrate: '70.00', fibre: '10.0' });
const paprika = aFood('paprika', { ...ALL, energyKcal: '260', carbohydrate: '45.00' });
const bare = aFood('bare', {});
const rusk = aFood(
  'rusk',
  { ...ALL, carbohydrate: '60.00', energyKj: '1300', salt: '0.10' },
  {},
  { carbBasis: 'available' },
);

function made(
  lines: readonly RecipeLine[],
  region: 'US' | 'EU' = 'US',
  more: { nutrients?: readonly Nutrient[]; energyStep?: 1 | 10 } = {},
) {
  const file = aFile([aDish('d', aRecipe('r', [...lines]))], [oats, paprika, bare, rusk], {
    episode: { region, energyStep: more.energyStep ?? 1 },
    resolutionMg: 1,
  });
  const figures = more.nutrients ? episodeFigures(file, more.nutrients) : episodeFigures(file);
  return { file, figures, offers: boundOffers(file, figures, 'd') };
}
const fibreOf = (g: number, known = 40) =>
  made([grams('oats', 'oats', known), grams('smoked paprika', 'paprika', g)]);

// Half a printed unit or 0.5 % of the known sum: the project's own definition, no source.
describe('a value that a source does not state', () => {
  it('is offered as a range where so much of it can hold at most half a printed unit', () => {
    // Up to 45.01 g of carbohydrate in 100 g: 1.1 g and half a milligram of it hold 0.4953 g, 1.2 g hold 0.54 g.
    expect(fibreOf(1.1).offers).toMatchObject([
      { lineId: 'smoked paprika', nutrient: 'fibre', lackedBy: ['fibre'], negligible: true },
    ]);
    expect(fibreOf(1.1).offers[0]?.top).toBeCloseTo(1.1005 * 0.4501, 8);
    expect(fibreOf(1.2).offers).toMatchObject([{ nutrient: 'fibre', negligible: false }]);
  });

  it('is offered too where that is at most 0.5 % of the known sum', () => {
    // 2 g hold 0.9 g; 10 % of 1,900 g is 190 g, of which 0.5 % is 0.95 g.
    expect(fibreOf(2, 1900).offers).toMatchObject([{ nutrient: 'fibre', negligible: true }]);
    expect(fibreOf(2, 1700).offers).toMatchObject([{ nutrient: 'fibre', negligible: false }]);
  });

  it('counts half a unit of what calories are written to', () => {
    const line = [grams('oats', 'oats', 5), grams('a pinch', 'bare', 0.5)];
    const energy = (energyStep: 1 | 10) =>
      made(line, 'US', { energyStep }).offers.find(({ nutrient }) => nutrient === 'energyKcal');
    // Half a gram of pure fat is 4.51 kcal, and half a milligram more of it.
    expect(energy(1)).toMatchObject({ maxPer100: 902, negligible: false });
    expect(energy(10)).toMatchObject({ negligible: true });
  });

  it('is none where the food or its grams are missing, or all is stated', () => {
    expect(made([aLine('salt to taste', 'bare'), aLine('a mystery', null)]).offers).toEqual([]);
    expect(made([grams('oats', 'oats', 40)]).offers).toEqual([]);
  });

  it('is one for all figures that lack it: fibre in itself, in carbohydrate and in energy', () => {
    const { offers } = made([grams('oats', 'oats', 40), grams('paprika', 'paprika', 1)], 'EU');
    expect(offers).toMatchObject([
      { nutrient: 'fibre', lackedBy: ['energyKj', 'carbohydrate', 'fibre'] },
    ]);
    const us = made([grams('oats', 'oats', 40), grams('rusk', 'rusk', 1)]);
    expect(us.offers).toMatchObject([{ nutrient: 'fibre', lackedBy: ['carbohydrate', 'fibre'] }]);
  });

  it('of one of two foods is the higher of both maxima', () => {
    const line = grams('one of two', 'paprika', 1, { orFoodId: 'bare' });
    const fibre = made([line]).offers.find(({ nutrient }) => nutrient === 'fibre');
    expect(fibre?.maxPer100).toBe(100);
  });

  it('is said in one sentence with the numbers it is missing from', () => {
    const { file, figures, offers } = fibreOf(2, 41);
    const [offer] = offers;
    if (!offer) throw new Error('no offer');
    expect(offerWords(offer, publishedNumbers(file, figures), 'd')).toBe(
      'at least 4 g fibre: no value for smoked paprika, 2 g – it can hold at most 0.91 g, all of its carbohydrate',
    );
  });

  it.each([
    [1.0799, '1.1'],
    [0.9, '0.9'],
    [0.0541, '0.055'],
    [787.2, '790'],
    [12, '12'],
    [0, '0'],
  ])('%d at most is said as %s', (top, words) => {
    expect(atMostText(top)).toBe(words);
    expect(Number(atMostText(top))).toBeGreaterThanOrEqual(top);
  });
});

describe('a bounded value', () => {
  const bounded = [{ nutrient: 'fibre' as const, maxPer100: 45 }];
  const lines = [grams('oats', 'oats', 40), grams('smoked paprika', 'paprika', 2, { bounded })];

  it('makes the figure known, from what is known to that and the most', () => {
    const { figures } = made(lines);
    const fibre = figures.dishes[0]?.whole.fibre;
    expect(fibre && figureStatus(fibre)).toBe('known');
    // 39.9995 g of 9.95 % to 40.0005 g of 10.05 %, and 2.0005 g of 45 %.
    expect(fibre?.low).toBeCloseTo(3.97995, 4);
    expect(fibre?.high).toBeCloseTo(4.02005 + 0.900225, 4);
    expect(fibre?.missing).toEqual([]);
  });

  it('is offered no more, and can be given back', () => {
    const { file, offers } = made(lines);
    expect(offers).toEqual([]);
    const [dish] = dishesOf(file.episode.segments);
    expect(dish && boundedValues(file, dish)).toMatchObject([
      { lineId: 'smoked paprika', nutrient: 'fibre', maxPer100: 45, idle: false },
    ]);
    expect(rangeFromZero('fibre', 0.900225)).toBe('0 to 0.91 g fibre');
  });

  it('is one error in carbohydrate and fibre: what one has, the other has not', () => {
    // Net: 45 % of 100 g less 0 to 45 %; the fibre beside it 0 to 45 %. Their sum is the carbohydrate, exactly.
    const line = grams('paprika', 'paprika', 100, { bounded });
    const { figures } = made([line], 'EU', { nutrients: ['carbohydrate', 'fibre', 'energyKj'] });
    const whole = figures.dishes[0]?.whole;
    expect(whole?.carbohydrate?.high).toBeCloseTo(45.005 * 1.000005, 3);
    expect(whole?.carbohydrate?.low).toBeCloseTo(0, 2);
    expect(whole?.fibre).toMatchObject({ low: expect.closeTo(0, 6) });
    // 17 kJ a gram less 17 and plus 8 for each gram of fibre (Regulation (EU) 1169/2011, Annex XIV).
    const [protein, fat, carbohydrate] = [10, 5, 45];
    const energy = 17 * protein + 37 * fat + 17 * carbohydrate;
    expect((whole?.energyKj?.low ?? 0) + 9 * 45).toBeGreaterThan(energy - 2);
    expect((whole?.energyKj?.low ?? 0) + 9 * 45).toBeLessThan(energy);
    expect(whole?.energyKj?.high).toBeLessThan(energy + 2);
  });

  it('stands idle where its food states the value by now', () => {
    const { file, figures } = made([grams('oats', 'oats', 40, { bounded })]);
    const [dish] = dishesOf(file.episode.segments);
    expect(dish && boundedValues(file, dish)).toMatchObject([{ idle: true }]);
    expect(figures.dishes[0]?.whole.fibre?.value).toBeCloseTo(4, 10);
  });

  it('is counted only with grams: without them the figure stays open', () => {
    const { figures } = made([aLine('paprika to taste', 'paprika', { bounded })]);
    const fibre = figures.dishes[0]?.whole.fibre;
    expect(fibre && figureStatus(fibre)).toBe('open');
  });
});
