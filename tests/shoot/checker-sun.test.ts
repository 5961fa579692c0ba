import { expect, it } from 'vitest';
import { sunAt } from './checker-sun';

// US Naval Observatory, Rise, Set, and Twilight Tables: San Francisco (N37 46, W122 26), 2012, UTC−8.
it.each([
  ['2012-01-01', 445, 1021],
  ['2012-03-20', 372, 1102],
  ['2012-06-20', 288, 1175],
  ['2012-09-22', 358, 1086],
  ['2012-12-21', 442, 1015],
])('%s is within two minutes of the almanac', (date, rise, set) => {
  const sun = sunAt({ lat: 37 + 46 / 60, lon: -(122 + 26 / 60), zone: 'Etc/GMT+8' }, date);
  if (typeof sun === 'string') throw new Error(sun);
  expect(Math.abs(sun.riseMin - rise)).toBeLessThanOrEqual(2);
  expect(Math.abs(sun.setMin - set)).toBeLessThanOrEqual(2);
});
