import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Judged } from '#lib/claims/judged';
import { readEdit } from '#lib/claims/read-edit';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import { editFactsOf } from '#lib/overview/edit-facts-of';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';
import { aText, edited } from './edit-build';
import { aStep } from './judge-beyond/invented-kitchen';

/*
 * The one error that must not happen, from the words of a description to the verdict: dishes and sentences are made up,
 * the number in each is wrong by what is worked out here a second time, and none may agree. Poultry has 165 °F, fin fish
 * 145 °F as their least inside temperatures (FoodSafety.gov, Safe Minimum Internal Temperature Chart, 12 April 2019; the
 * same at USDA FSIS). Degrees Fahrenheit, ounces and pounds: NIST SP 811, Appendix B.
 */

const FOODS = [
  aFood('table', {}, { name: 'Chicken, thigh, meat only, raw' }, { state: 'raw' }),
  aFood('label', {}, { kind: 'label', name: 'Boneless thighs' }),
  aFood('cooked', {}, { name: 'Turkey, breast, roasted' }, { state: 'cooked' }),
  aFood('cod', {}, { name: 'Fish, cod, raw' }, { state: 'raw' }),
  aFood('oats', {}, { name: 'Oats' }),
  aFood('plain', {}, { kind: 'label', name: 'Big pack' }),
];
const NESTED = aRecipe('balls', [aLine('n', null, { text: '400 g minced turkey' })]);

/** The ways in which raw poultry comes into a dish. */
const POULTRY: readonly RecipeLine[] = [
  grams('p', 'table', 400, { text: '400 g chicken thighs', state: 'raw' }),
  grams('p', 'label', 400, { text: '400 g of the pack' }),
  grams('p', 'plain', 400, { text: '400 g large chicken pieces' }),
  grams('p', 'plain', 400, { text: '400 g of either', orFoodId: 'label' }),
  grams('p', 'cooked', 300, { text: '300 g turkey, weighed cooked', state: 'cooked' }),
  aLine('p', null, { text: '1 whole duck' }),
  aLine('p', null, { text: '12 meatballs', madeFrom: { recipeId: 'balls', rev: 1 } }),
  aLine('p', null, { text: '400 g goose or large cod' }),
];
const COD = grams('c', 'cod', 300, { text: '300 g large cod fillets', state: 'raw' });

const fileOf = (lines: readonly RecipeLine[], steps: readonly Step[], region: 'US' | 'EU') => ({
  ...aFile(
    [aDish('d', aRecipe('r', [...lines]), { title: 'Quay supper', steps: [...steps] })],
    FOODS,
    {
      episode: { region },
    },
  ),
  recipes: [NESTED],
});

/** What is said of one kind in a description, judged with all that the program knows of the file. */
function judged(
  file: EpisodeFile,
  words: string,
  kind: Judged['statement']['kind'],
): Judged | undefined {
  const all = readEdit(
    edited(file, [aText(words, 'description')]),
    editFactsOf(file, { events: [], costs: [] }),
  );
  return all.judged.find(({ statement }) => statement.kind === kind);
}

/** Puts a law to the test and counts how many of the sentences were read at all. */
function holds<T>(cases: fc.Arbitrary<T>, check: (made: T) => Judged | undefined): void {
  let read = 0;
  const numRuns = 250;
  fc.assert(
    fc.property(cases, (made) => {
      const row = check(made);
      if (!row) return;
      read += 1;
      expect([row.statement.words, row.verdict, row.why]).not.toEqual([
        row.statement.words,
        'agrees',
        row.why,
      ]);
    }),
    { numRuns },
  );
  expect(read).toBeGreaterThan(numRuns / 2);
}

const inUnit = (celsius: number, unit: 'C' | 'F') => (unit === 'C' ? celsius : celsius * 1.8 + 32);
const inCelsius = (value: number, unit: 'C' | 'F') => (unit === 'C' ? value : (value - 32) / 1.8);
const unit = fc.constantFrom<'C' | 'F'>('C', 'F');
const region = fc.constantFrom<'US' | 'EU'>('US', 'EU');

/** 165 °F and how far a number as it is printed reaches up to it. */
const LEAST = inCelsius(165, 'F');
const half = (decimals: number) => 0.5 / 10 ** decimals;

const SENTENCES = [
  (said: string) => `The middle should read ${said} inside.`,
  (said: string) => `Cook it until it is large and golden and reads ${said} inside.`,
  (said: string) => `Serve it next to the cod at ${said} inside.`,
  (said: string) => `Brush it with egg and cook it to ${said} inside.`,
  (said: string) => `Take the chicken, duck or turkey to ${said} inside.`,
];

describe('an inside temperature of what may be raw poultry', () => {
  const dish = fc.record({
    poultry: fc.constantFrom(...POULTRY),
    cod: fc.boolean(),
    title: fc.constantFrom('Cook it', 'Roast it all', 'Grill the large pieces'),
    sentence: fc.constantFrom(...SENTENCES),
    unit,
    region,
    decimals: fc.constantFrom(0, 1, 2),
  });

  test('below 165 °F as it is written never agrees, though the step says the same', () => {
    const below = fc.record({
      dish,
      under: fc.double({ min: 0.001, max: 18, noNaN: true }),
      hedge: fc.constantFrom('', 'about ', 'at least ', 'just over ', 'around ', 'almost '),
    });
    holds(below, ({ dish: made, under, hedge }) => {
      const ulp = 10 ** -made.decimals;
      const least = inUnit(LEAST, made.unit);
      const value = Math.floor((least - half(made.decimals) - under) / ulp) * ulp;
      const said = value.toFixed(made.decimals);
      // As it is printed, the number does not reach the least.
      expect(Number(said) + half(made.decimals)).toBeLessThan(least);
      return inside(made, hedge, said, inCelsius(Number(said), made.unit));
    });
  });

  test('up to which it may be, at 165 °F or below, never agrees whatever the step says', () => {
    const most = fc.record({
      dish,
      value: fc.integer({ min: 0, max: 20 }),
      step: fc.integer({ min: 55_000, max: 90_000 }),
      hedge: fc.constantFrom('up to ', 'at most ', 'no more than ', 'under ', 'less than '),
    });
    holds(most, ({ dish: made, value, step, hedge }) => {
      const said = Math.floor(inUnit(LEAST, made.unit)) - value;
      return inside(made, hedge, String(said), step / 1000);
    });
  });

  test('of a step that is itself too cool never agrees, whatever is said', () => {
    const cool = fc.record({
      dish,
      // A tenth of a degree is what is published.
      step: fc.integer({ min: 55_000, max: 73_800 }),
      said: fc.integer({ min: 0, max: 40 }),
      hedge: fc.constantFrom('', 'about ', 'no more than ', 'under ', 'at least ', 'almost '),
    });
    holds(cool, ({ dish: made, step, said, hedge }) =>
      inside(made, hedge, String(Math.floor(inUnit(55, made.unit)) + said), step / 1000),
    );
  });

  function inside(
    made: typeof dish extends fc.Arbitrary<infer D> ? D : never,
    hedge: string,
    said: string,
    celsius: number,
  ) {
    const lines = made.cod ? [made.poultry, COD] : [made.poultry];
    const step = aStep('s', made.title, { coreMilliC: Math.round(celsius * 1000) });
    const words = made.sentence(`${hedge}${said} °${made.unit}`);
    return judged(fileOf(lines, [step], made.region), words, 'insideTemperature');
  }
});

/** Grams in each, and by how much a number in it is never meant to be off. */
const GRAMS = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 } as const;

describe('an amount', () => {
  test('that is more than a tenth and 3 g off never agrees', () => {
    const off = fc.record({
      planned: fc.integer({ min: 20, max: 900 }),
      of: fc.constantFrom('g', 'kg', 'oz', 'lb'),
      times: fc.oneof(
        fc.double({ min: 0.2, max: 0.89, noNaN: true }),
        fc.double({ min: 1.11, max: 4, noNaN: true }),
      ),
      hedge: fc.constantFrom('', 'about ', 'just over ', 'almost '),
      region,
    });
    holds(off, ({ planned, of, times, hedge, region: where }) => {
      const decimals = of === 'g' ? 0 : 2;
      const said = ((planned * times) / GRAMS[of]).toFixed(decimals);
      const apart = Math.abs(Number(said) * GRAMS[of] - planned);
      // 0.02 kg as it is written is 23 g too.
      const written = (0.5 / 10 ** decimals) * GRAMS[of];
      if (apart < 3 || apart < planned * 0.1 || apart <= written) return undefined;
      const file = fileOf([grams('l', 'oats', planned, { text: 'rolled oats' })], [], where);
      return judged(file, `I used ${hedge}${said} ${of} of rolled oats.`, 'amount');
    });
  });

  test('in whole grams that is one off never agrees', () => {
    const near = fc.record({
      planned: fc.integer({ min: 20, max: 900 }),
      by: fc.constantFrom(-3, -2, -1, 1, 2, 3),
    });
    holds(near, ({ planned, by }) => {
      const file = fileOf([grams('l', 'oats', planned, { text: 'rolled oats' })], [], 'EU');
      return judged(file, `I used ${planned + by} g of rolled oats.`, 'amount');
    });
  });
});

describe('oven degrees', () => {
  test('that are no conversion of the step’s never agree', () => {
    const oven = fc.record({
      fives: fc.integer({ min: 20, max: 50 }),
      away: fc.integer({ min: 1, max: 80 }),
      up: fc.boolean(),
      unit,
      region,
      hedge: fc.constantFrom('', 'at '),
    });
    holds(oven, ({ fives, away, up, unit: of, region: where, hedge }) => {
      const celsius = fives * 5;
      const exact = inUnit(celsius, of);
      const said = Math.round(exact) + (up ? away : -away);
      // Cookbooks round a conversion to 25 °F, at most 10 °F off (common practice, from memory).
      if (of === 'F' && Math.abs(said - exact) <= 10) return undefined;
      const step = aStep('s', 'Bake it', { oven: { ovenId: null, milliC: celsius * 1000 } });
      return judged(
        fileOf([COD], [step], where),
        `Bake it in the oven ${hedge}${said} °${of}.`,
        'ovenTemperature',
      );
    });
  });
});
