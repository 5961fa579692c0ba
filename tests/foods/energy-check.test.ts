import { describe, expect, it } from 'vitest';
import { checkTableEnergy, energyReasons } from '#lib/foods/energy-check';
import { loadSr28 } from '#seed/load-sr28';
import { aVersion } from '../support/build';

// Tolerances and shares outside them: derived over USDA SR28 (abbreviated file, data/ABBREV.txt).
describe('the two rules over SR28 without alcoholic foods', () => {
  // The list of the derivation, as parts of words: it also leaves out drums, gingers and what is "original".
  const NAMES = /alcohol|beer|rum|gin|extract/i;
  const foods = loadSr28().filter(({ name }) => !NAMES.test(name));
  const outside = (own: boolean) => {
    const checks = foods.flatMap((food) => {
      const check = checkTableEnergy(own ? food.version : { ...food.version, factors: null });
      return check && (check.factors === 'own') === own ? [{ food, check }] : [];
    });
    return { of: checks.length, outside: checks.filter(({ check }) => !check.fits) };
  };

  it('own factors: 27 of 4,450 lie outside, without the two waters whose factors are all 0', () => {
    const found = outside(true);
    expect([found.outside.length, found.of]).toEqual([27, 4450]);
  });

  it('general factors: 166 of 8,488 lie outside', () => {
    const found = outside(false);
    expect([found.outside.length, found.of]).toEqual([166, 8488]);
    // What the program can say of them by name and by what is stated.
    const named = found.outside.filter(
      ({ food }) => energyReasons(food.name, food.version).length > 0,
    );
    expect(named.length).toBeGreaterThan(40);
  });

  it('hold with alcoholic foods left out by whole words: fewer names, hardly more outside', () => {
    const all = loadSr28();
    const sober = all.filter(({ name, version }) =>
      energyReasons(name, version).every(({ code }) => code !== 'alcohol'),
    );
    const checks = sober.flatMap(
      ({ version }) => checkTableEnergy({ ...version, factors: null }) ?? [],
    );
    expect(all.length - sober.length).toBeLessThan(120);
    expect(checks.filter(({ fits }) => !fits).length / checks.length).toBeLessThan(0.02);
  });
});

describe('what is named', () => {
  const macros = { protein: '0', fat: '0', carbohydrate: '10.0' };

  it('alcohol that is stated counts 7 kcal a gram (21 CFR 101.9; Regulation 1169/2011 Annex XIV)', () => {
    const beer = { ...macros, alcohol: '14.0' };
    expect(checkTableEnergy(aVersion('a', { ...beer, energyKcal: '138' }))?.fits).toBe(true);
    expect(checkTableEnergy(aVersion('a', { ...macros, energyKcal: '138' }))?.fits).toBe(false);
  });

  it('polyols that are stated count 0 to 4 kcal a gram', () => {
    const sweet = { ...macros, polyols: '10.0' };
    expect(checkTableEnergy(aVersion('a', { ...sweet, energyKcal: '0' }))?.fits).toBe(true);
    expect(checkTableEnergy(aVersion('a', { ...macros, energyKcal: '0' }))?.fits).toBe(false);
  });

  it.each([
    ['Vinegar, balsamic', 'acids'],
    ['Lime juice, raw', 'acids'],
    ['Alcoholic beverage, wine, table, red', 'alcohol'],
    ['Sweetener, herbal extract powder from Stevia leaf', 'polyols'],
    ['Leavening agents, baking powder, double-acting', 'leavening'],
    ['Cocoa, dry powder, unsweetened', 'undigested'],
    ['Wheat bran, crude', 'undigested'],
  ])('%s: %s', (name, code) => {
    const codes = energyReasons(name, aVersion('a', macros)).map((reason) => reason.code);
    expect(codes).toContain(code);
  });

  it('a drumstick and ginger hold no rum and no gin', () => {
    for (const name of ['Chicken, drumstick, meat only', 'Ginger root, raw', 'Cheese, original']) {
      expect(energyReasons(name, aVersion('a', macros))).toEqual([]);
    }
  });
});
