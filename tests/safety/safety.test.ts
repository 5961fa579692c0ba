import { describe, expect, it } from 'vitest';
import { COLD_STORAGE, useBy } from '#lib/safety/cold-storage';
import { chartClasses, rawFoodClass } from '#lib/safety/food-class';
import { insideTemperatureCaution } from '#lib/safety/general-cautions';
import { SAFE_TEMPERATURES, safeTemperature } from '#lib/safety/safe-temperatures';
import { coolingVerdict, timeOutLimitS } from '#lib/safety/time-limits';

const milliC = (fahrenheit: number): number => Math.round(((fahrenheit - 32) * 5000) / 9);
const at = (clock: string): number => {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number);
  return hours * 3600 + minutes * 60;
};

describe('safe inside temperatures', () => {
  // FoodSafety.gov, Safe Minimum Internal Temperature Chart, 12 April 2019 (same figures at USDA FSIS).
  it.each([
    ['poultry', 165, '73.9', 0],
    ['groundMeat', 160, '71.1', 0],
    ['wholeCut', 145, '62.8', 180],
    ['eggDish', 160, '71.1', 0],
    ['leftover', 165, '73.9', 0],
    ['fish', 145, '62.8', 0],
  ] as const)('%s: %i °F is %s °C, rest %i s', (foodClass, fahrenheit, celsius, restS) => {
    const row = safeTemperature(foodClass);
    expect(row.fahrenheit).toBe(fahrenheit);
    expect((row.milliC / 1000).toFixed(1)).toBe(celsius);
    expect(row.restS).toBe(restS);
    expect(insideTemperatureCaution(row).text).toContain(`${celsius} °C (${fahrenheit} °F)`);
  });

  it('never states a Celsius value below the published Fahrenheit one', () => {
    for (const row of SAFE_TEMPERATURES) {
      expect((row.milliC * 9) / 5000 + 32).toBeGreaterThanOrEqual(row.fahrenheit);
    }
  });
});

describe('time out of the refrigerator', () => {
  // USDA FSIS consumer rule: 2 h, 1 h above 90 °F; at exactly 90 °F the limit is 2 h.
  it.each([
    [72, 7200],
    [90, 7200],
    [91, 3600],
  ])('at %i °F the limit is %i s', (fahrenheit, limitS) => {
    expect(timeOutLimitS(milliC(fahrenheit))).toBe(limitS);
  });
});

describe('cooling in two stages', () => {
  // FDA Food Code 3-501.14(A): 135 °F → 70 °F in 2 h, → 41 °F in 6 h in all; cases derived from it.
  const readings = (...pairs: readonly (readonly [string, number])[]) =>
    pairs.map(([clock, fahrenheit]) => ({ atS: at(clock), milliC: milliC(fahrenheit) }));

  it.each([
    ['missedMid', readings(['12:00', 150], ['12:20', 135], ['14:20', 72])],
    ['kept', readings(['12:00', 135], ['13:00', 70], ['17:59', 41])],
    ['missedEnd', readings(['12:00', 135], ['13:59', 70], ['18:01', 41])],
    ['open', readings(['12:00', 135], ['13:00', 90])],
    ['open', []],
  ] as const)('%s', (verdict, given) => {
    expect(coolingVerdict(given)).toBe(verdict);
  });
});

describe('cold storage', () => {
  const keeps = (id: string) => {
    const row = COLD_STORAGE.find((entry) => entry.id === id);
    if (row === undefined) throw new Error(id);
    return row.refrigerator;
  };

  // FoodSafety.gov, Cold Food Storage Chart.
  it('raw ground turkey bought on a Monday is used by Wednesday', () => {
    expect(useBy('2026-03-02', keeps('rawGround'))).toBe('2026-03-04');
  });

  it('leftovers cooked on a Sunday are eaten by Thursday', () => {
    expect(keeps('cookedMeat')).toEqual({ least: 3, most: 4, unit: 'days' });
    expect(useBy('2026-03-01', keeps('cookedMeat'))).toBe('2026-03-05');
  });
});

describe('use-by dates', () => {
  it.each([
    ['2026-01-31', { least: 1, most: 1, unit: 'months' }, '2026-02-28'],
    ['2026-12-15', { least: 3, most: 4, unit: 'months' }, '2027-04-15'],
    ['2026-02-27', { least: 1, most: 2, unit: 'days' }, '2026-03-01'],
  ] as const)('%s and %o → %s', (from, keep, until) => {
    expect(useBy(from, keep)).toBe(until);
  });
});

describe('the kind of a raw food by its name', () => {
  it.each([
    ['Turkey, ground, 93 % lean, raw', 'raw', 'poultry'],
    ['Beef, ground, 85 % lean, raw', 'raw', 'groundMeat'],
    ['Pork, loin, chop, raw', 'raw', 'wholeCut'],
    ['Fish, salmon, Atlantic, wild, raw', 'raw', 'fish'],
    ['Egg, whole, raw, fresh', 'raw', 'eggDish'],
    ['Eggplant, raw', 'raw', null],
    ['Soup, chicken broth, ready to serve', 'raw', null],
    ['Chicken, breast, roasted', 'cooked', null],
    ['Squash, summer, zucchini, raw', 'raw', null],
    // As it is sold a label does not say 'raw'.
    ['Chicken thighs, boneless', 'asIs', 'poultry'],
    ['Large eggs', 'asIs', 'eggDish'],
    ['Pork sausages', 'asIs', 'groundMeat'],
    ['Rotisserie chicken', 'asIs', null],
    ['Chicken thighs in barbecue sauce', 'raw', 'poultry'],
    ['Salmon, smoked', 'asIs', null],
    ['Vegan chicken-style pieces', 'asIs', null],
  ] as const)('%s (%s) → %s', (name, state, foodClass) => {
    expect(rawFoodClass({ name }, state)).toBe(foodClass);
  });
});

// FoodSafety.gov names the kinds of food; which words stand for them is the project’s own rule, no source.
describe('rows of the chart that words may fall under', () => {
  it.each([
    ['500 g chicken thighs', 'asIs', ['poultry']],
    ['500 g chicken or salmon', 'asIs', ['poultry', 'fish']],
    ['6 thighs, skin on', 'asIs', ['poultry']],
    ['Turkey bacon', 'asIs', ['poultry']],
    ['chicken sausages', 'asIs', ['poultry']],
    ['8 quail eggs', 'asIs', ['eggDish']],
    ['Egg, quail, whole, fresh, raw', 'raw', ['eggDish']],
    ['chicken egg fried rice', 'asIs', ['poultry']],
    ['beans in duck fat', 'asIs', []],
    ['200 ml chicken stock', 'asIs', []],
    ['stock from chicken bones', 'asIs', []],
    ['1 soup chicken', 'asIs', ['poultry']],
    ['meat from 1 chicken', 'asIs', ['poultry']],
    ['noodles with chicken', 'asIs', ['poultry']],
    ['rice for the chicken', 'asIs', []],
    ['80 g lamb’s lettuce', 'asIs', []],
    ['2 beef tomatoes', 'asIs', []],
    ['500 g lean mince', 'asIs', ['groundMeat']],
    ['2 cloves garlic, mince', 'asIs', []],
    ['4 burger buns', 'asIs', []],
    ['4 black bean burgers', 'asIs', []],
    ['4 burgers', 'asIs', ['groundMeat']],
    ['smoked paprika chicken', 'asIs', ['poultry']],
    ['smoked turkey slices', 'asIs', []],
    ['chicken, smoked bacon', 'asIs', ['poultry']],
    // Weighed cooked it may have gone in raw all the same.
    ['Chicken, breast, roasted', 'cooked', ['poultry']],
    ['Ham', 'asIs', ['precookedHam']],
    ['Ham, raw', 'raw', ['wholeCut']],
    ['Egg, white, dried', 'dry', []],
    ['Drumstick leaves', 'raw', []],
  ] as const)('%s (%s) → %s', (text, state, classes) => {
    expect(chartClasses(text, state)).toEqual(classes);
  });
});
