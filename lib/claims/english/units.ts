import type { Role } from '../language';
import { all, framed, phrasesOf } from './words';

/** Whose dollars are not those of the United States. */
const DOLLARS =
  'aussie, australian, canadian, new zealand, kiwi, singapore, hong kong, taiwan, jamaican, aus, can';

/** Units as they are spoken and written (common practice; symbols: SI brochure, 9th edition). */
export const UNITS: [string, Role][] = [
  ...all<Role>('g, gr, gram, grams, gramme, grammes, gs, gm, gms', {
    cat: 'unit',
    of: 'mass',
    unit: 'g',
  }),
  ...all<Role>('mg, milligram, milligrams, milligramme, milligrammes, mgs', {
    cat: 'unit',
    of: 'mass',
    unit: 'mg',
  }),
  ...all<Role>('kg, kgs, kilo, kilos, kilogram, kilograms', {
    cat: 'unit',
    of: 'mass',
    unit: 'kg',
  }),
  ...all<Role>('µg, μg, mcg, ug, microgram, micrograms', { cat: 'unit', of: 'mass', unit: 'µg' }),
  ...all<Role>('oz, ounce, ounces', { cat: 'unit', of: 'mass', unit: 'oz' }),
  ...all<Role>('lb, lbs, pound, pounds', { cat: 'unit', of: 'mass', unit: 'lb' }),
  ...all<Role>('ml, mls, millilitre, millilitres, milliliter, milliliters, mil, mils', {
    cat: 'unit',
    of: 'volume',
    unit: 'ml',
  }),
  ...all<Role>('l, litre, litres, liter, liters', { cat: 'unit', of: 'volume', unit: 'l' }),
  ...all<Role>('tsp, tsps, teaspoon, teaspoons', { cat: 'unit', of: 'volume', unit: 'tsp' }),
  ...all<Role>('tbsp, tbsps, tbs, tablespoon, tablespoons', {
    cat: 'unit',
    of: 'volume',
    unit: 'tbsp',
  }),
  ...all<Role>('fl oz, fl. oz, fluid ounce, fluid ounces', {
    cat: 'unit',
    of: 'volume',
    unit: 'flOz',
  }),
  ...all<Role>('cup, cups', { cat: 'unit', of: 'volume', unit: 'cup' }),
  ...all<Role>('pint, pints', { cat: 'unit', of: 'volume', unit: 'pint' }),
  ...all<Role>('quart, quarts', { cat: 'unit', of: 'volume', unit: 'quart' }),
  ...all<Role>('gallon, gallons', { cat: 'unit', of: 'volume', unit: 'gallon' }),
  ...all<Role>('iu', { cat: 'unit', of: 'energy', unit: 'IU' }),
  ...all<Role>('international units', { cat: 'unit', of: 'energy', unit: 'IU' }),
  ...all<Role>('kj, kjs, kilojoule, kilojoules', { cat: 'unit', of: 'energy', unit: 'kJ' }),
  ...all<Role>('%, percent, per cent', { cat: 'unit', of: 'share', unit: '%' }),
  ...framed(
    '{} dv, {}dv, {} nrv, {} ri, {} rda, {} daily value, {} of daily value, {} of the rda, {} of your rda, {} of the ri, {} of your ri, {} of the nrv, {} of your nrv, {} of what you need, {} of what you need in a day, {} of what you need for the day, {} of what you should get, {} of your guideline, {} of your day, {} of your days, {} of the day, {} of the days, {} of a day, {} of a days, {} of your daily, {} of the daily, {} of your daily value, {} of the daily value, {} of your daily needs, {} of your daily amount, {} of the daily amount, {} of your recommended daily, {} of the recommended daily',
    ['%', 'percent', 'per cent'],
  ).map((phrase): [string, Role] => [phrase, { cat: 'unit', of: 'share', unit: '%DV' }]),
  ...all<Role>('minute, minutes, min, mins, min., mins.', {
    cat: 'unit',
    of: 'time',
    unit: 'min',
    factor: 1,
  }),
  ...all<Role>('hour, hours, hr, hrs, h', { cat: 'unit', of: 'time', unit: 'h', factor: 60 }),
  ...all<Role>('second, seconds, sec, secs', {
    cat: 'unit',
    of: 'time',
    unit: 's',
    factor: 1 / 60,
  }),
  ...all<Role>('dollar, dollars, buck, bucks, usd', {
    cat: 'unit',
    of: 'money',
    unit: 'USD',
    factor: 1,
  }),
  ...all<Role>('euro, euros, eur, €', { cat: 'unit', of: 'money', unit: 'EUR', factor: 1 }),
  ...all<Role>('quid, quids, gbp, pounds sterling', {
    cat: 'unit',
    of: 'money',
    unit: 'GBP',
    factor: 1,
  }),
  ...all<Role>('cents, cent, ¢', { cat: 'unit', of: 'money', unit: 'USD', factor: 1 / 100 }),
  ...all<Role>('fiver, fivers', { cat: 'unit', of: 'money', unit: 'GBP', factor: 5 }),
  ...all<Role>('tenner, tenners', { cat: 'unit', of: 'money', unit: 'GBP', factor: 10 }),
  // Money for which there is no name here.
  ...all<Role>(
    framed('{} dollar, {} dollars, {} bucks', phrasesOf(DOLLARS)).join(', ') +
      ', aud, cad, nzd, rupee, rupees, rs, inr, ₹, yen, kronor, kroner, krona, krone, rand, pesos, francs, zloty, baht, ringgit, dirhams, dirham, naira, shekels, lira',
    { cat: 'unit', of: 'money', unit: 'unknown', factor: 1 },
  ),
  ...all<Role>('pence', { cat: 'unit', of: 'money', unit: 'GBP', factor: 1 / 100 }),
  ...all<Role>('°, degrees, degree, deg', { cat: 'unit', of: 'degree', unit: null }),
  ...all<Role>(
    'c, ° c, celsius, degrees celsius, degrees c, degree celsius, centigrade, degrees centigrade, ℃, deg c',
    { cat: 'unit', of: 'degree', unit: 'C' },
  ),
  ...all<Role>('f, ° f, fahrenheit, degrees fahrenheit, degrees f, degree fahrenheit, ℉, deg f', {
    cat: 'unit',
    of: 'degree',
    unit: 'F',
  }),
  ...all<Role>(
    'can, cans, tin, tins, jar of, jars of, packet, packets, pack, packs, tub, tubs, bag, bags, bottle, bottles, block, blocks, carton, cartons, pouch, pouches, sachet, sachets, box of, boxes of, scoop, scoops, clove, cloves, slice of, slices of, stick of, sticks of, rasher, rashers, head of, heads of, bunches, sprig, sprigs, stalk, stalks, fillet of, fillets of, sheet of, sheets of, ball of, balls of, wedges of, rib of, ribs of, ear of, ears of, piece of, pieces of, strips of, leaves of, mug of, mugs of, jug of, pot of, pots of, punnet of, punnets of, tray of, trays of, tube of, tubes of, bar of, bars of, square of, squares of, cubes of, ladles of, spoons of, bottle of, net of, sack of, roll of, rolls of, rounds of, wheel of, log of',
    { cat: 'unit', of: 'container', unit: 'piece' },
  ),
];

export const CURRENCIES: ReadonlyMap<string, 'USD' | 'EUR' | 'GBP' | 'unknown'> = new Map([
  ['₹', 'unknown'],
  ['¥', 'unknown'],
  ['$', 'USD'],
  ['€', 'EUR'],
  ['£', 'GBP'],
]);
