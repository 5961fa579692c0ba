import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NO_FACTS } from '#lib/claims/edit-facts';
import type { BeyondContext } from '#lib/claims/judge-beyond/beyond-context';
import { judgeBeyond, type BeyondStatement } from '#lib/claims/judge-beyond/judge-beyond';
import type { Hedge } from '#lib/claims/statement';
import { dishesOf } from '#lib/episode/context';
import type { Step } from '#lib/episode/step-schema';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../../support/build';
import { aContext, aStep, POULTRY_CAUTION } from './invented-kitchen';

/*
 * The one error that must not happen: a number that is wrong and agrees. Each law works out by itself, in another way
 * than the code, what a number may stand for.
 */

type Numbered = Pick<BeyondStatement & { readonly kind: 'amount' }, 'low' | 'high' | 'hedge'>;

const WORDS = { start: 0, end: 0, words: '', tags: [], how: [] } as const;

/** A number as it is written, with so many digits behind the point. */
const written = (value: number, decimals: number) => ({ ...WORDS, words: value.toFixed(decimals) });

const verdict = (
  statement: BeyondStatement,
  context: BeyondContext,
  { spoken = false, text = '' } = {},
) => {
  const dish = context.dishes[0] ?? null;
  return judgeBeyond(statement, { dish, spoken, text }, context).verdict;
};

const numbered = (value: fc.Arbitrary<number>): fc.Arbitrary<Numbered> =>
  fc
    .tuple(
      value,
      fc.integer({ min: 0, max: 10 }),
      fc.constantFrom<Hedge>(
        'none',
        'about',
        'justOver',
        'under',
        'atLeast',
        'atMost',
        'almost',
        'between',
      ),
    )
    .map(([low, more, hedge]) =>
      hedge === 'between' ? { low, high: low + more, hedge } : { low, high: low, hedge },
    );

/** From where to where a number may stand for, by its hedge, in words of MODEL D.1: written apart from the code. */
function mayBe(
  { low, high, hedge }: Numbered,
  half: number,
  about: number,
): readonly [number, number] {
  const wide = Math.max(half, about);
  if (hedge === 'under' || hedge === 'atMost') return [-Infinity, high];
  if (hedge === 'atLeast') return [low, Infinity];
  if (hedge === 'justOver') return [low, high + wide];
  if (hedge === 'almost') return [low - wide, high];
  if (hedge === 'about') return [low - wide, high + wide];
  return [low - half, high + half];
}

/** Grams in an ounce and a pound: NIST SP 811, Appendix B. */
const GRAMS = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 } as const;
/** Millilitres in US measures: NIST Handbook 44, Appendix C. */
const MILLILITRES = {
  ml: 1,
  l: 1000,
  tsp: 4.92892159375,
  tbsp: 14.78676478125,
  flOz: 29.5735295625,
  cup: 236.5882365,
  pint: 473.176473,
  quart: 946.352946,
  gallon: 3785.411784,
} as const;
/** How coarse each is said at most. */
const HALF = { g: 0.5, kg: 0.05, oz: 0.25, lb: 0.0625 } as const;

describe('an amount', () => {
  const law = fc.record({
    planned: fc.integer({ min: 20, max: 900 }),
    weighed: fc.option(fc.integer({ min: 20, max: 900 }), { nil: null }),
    unit: fc.constantFrom('g', 'kg', 'oz', 'lb'),
    times: fc.double({ min: 0.8, max: 1.25, noNaN: true }),
    spoken: fc.boolean(),
    decimals: fc.integer({ min: 0, max: 2 }),
    said: numbered(fc.constant(0)),
  });

  it('that agrees is what the scale says, else the ingredient, as far as its words reach', () => {
    fc.assert(
      fc.property(law, ({ planned, weighed, unit, times, spoken, decimals, said }) => {
        const truth = weighed ?? planned;
        const low = Number(((truth * times) / GRAMS[unit]).toFixed(decimals));
        const number = {
          low,
          high: low + (said.hedge === 'between' ? said.high : 0),
          hedge: said.hedge,
        };
        const recipe = aRecipe('r', [grams('l', 'oats', planned, { text: 'rolled oats' })], {
          weighings:
            weighed === null
              ? []
              : [
                  aReading('w', 'raw', weighed, {
                    shares: [{ lineId: 'l', share: { num: 1, den: 1 } }],
                  }),
                ],
        });
        const context = aContext([aDish('d', recipe)]);
        const statement = {
          ...written(low, decimals),
          kind: 'amount',
          unit,
          food: 'oats',
          scope: 'dish',
          ...number,
        } as const;
        const judged = verdict(statement, context, { spoken });
        const tens = spoken && decimals === 0 && low >= 100 && low % 10 === 0 && unit === 'g';
        const about = unit === 'g' ? Math.max(1, 0.05 * low) : 0.05 * low;
        const digit = 0.5 / 10 ** decimals;
        const [from, to] = mayBe(number, tens ? 5 : Math.min(HALF[unit], digit), about);
        const inUnit = truth / GRAMS[unit];
        // The kitchen's scale shows whole grams.
        const blur = 0.5 / GRAMS[unit];
        if (judged === 'agrees') {
          expect(inUnit).toBeGreaterThanOrEqual(from - 1e-6);
          expect(inUnit).toBeLessThanOrEqual(to + 1e-6);
        }
        if (inUnit + 1.01 * blur < from || inUnit - 1.01 * blur > to) expect(judged).toBe('off');
        expect(judged).not.toBe('unknown');
      }),
    );
  });

  // Half of what each unit is said to. Common practice, no source.
  it.each([
    ['g', 0.5, GRAMS.g],
    ['kg', 0.05, GRAMS.kg],
    ['oz', 0.25, GRAMS.oz],
    ['lb', 1 / 16, GRAMS.lb],
    ['ml', 0.5, MILLILITRES.ml],
    ['l', 0.05, MILLILITRES.l],
    ['flOz', 0.25, MILLILITRES.flOz],
    ['tsp', 1 / 16, MILLILITRES.tsp],
    ['tbsp', 1 / 16, MILLILITRES.tbsp],
    ['cup', 1 / 16, MILLILITRES.cup],
    ['pint', 1 / 16, MILLILITRES.pint],
    ['quart', 1 / 16, MILLILITRES.quart],
    ['gallon', 1 / 16, MILLILITRES.gallon],
  ] as const)(
    'of a whole number in %s agrees as far as %d of one, and no farther',
    (unit, half, size) => {
      const whole = fc.integer({ min: 1, max: 12 });
      const beyond = fc.constantFrom(-2, -1.1, -0.9, -0.5, 0, 0.5, 0.9, 1.1, 2);
      fc.assert(
        fc.property(whole, beyond, (said, halves) => {
          const truth = said + halves * half;
          const mg = Math.round(truth * 1000 * size);
          const planned = { lowMg: mg, valueMg: mg, highMg: mg };
          // A gram to each millilitre.
          const cup = {
            ...{ id: 'cup', name: 'cup', source: 'invented' },
            ...{ qtyNum: 1, qtyDen: 1, massMg: 236_588, digits: 6 },
          };
          const food = aFood('water', {}, { name: 'Water', measures: [cup] });
          const recipe = aRecipe('r', [aLine('l', 'water', { text: 'water', planned })]);
          const file = aFile([aDish('d', recipe)], [food], { resolutionMg: 1 });
          const dishes = dishesOf(file.episode.segments).map((dish) => ({ dish, facts: null }));
          const statement = {
            ...written(said, 0),
            kind: 'amount',
            unit,
            food: 'water',
            scope: 'dish',
            low: said,
            high: said,
            hedge: 'none',
          } as const;
          const judged = verdict(statement, { file, facts: NO_FACTS, dishes });
          expect([said, halves, judged === 'agrees']).toEqual([
            said,
            halves,
            Math.abs(halves) <= 1,
          ]);
        }),
        { numRuns: 40 },
      );
    },
  );

  it('of which several ingredients have the name never agrees with one of them', () => {
    const each = fc.integer({ min: 10, max: 500 });
    fc.assert(
      fc.property(each, each, each, (a, b, said) => {
        const recipe = aRecipe('r', [
          grams('l1', 'onion', a, { text: 'red onion' }),
          grams('l2', 'onion', b, { text: 'white onion' }),
        ]);
        const statement = {
          ...WORDS,
          kind: 'amount',
          unit: 'g',
          food: 'onion',
          scope: 'dish',
          low: said,
          high: said,
          hedge: 'none',
        } as const;
        const judged = verdict(statement, aContext([aDish('d', recipe)]));
        if (judged === 'agrees') expect(Math.abs(said - a - b)).toBeLessThanOrEqual(0.5);
      }),
    );
  });
});

const withStep = (more: Partial<Step>, facts = {}) =>
  aContext(
    [aDish('d', aRecipe('r', []), { steps: [aStep('s', 'Bake it', more)] })],
    [{ segmentId: 'd', ...facts }],
  );

/** Degrees Fahrenheit: NIST SP 811, Appendix B. */
const fahrenheit = (celsius: number) => celsius * 1.8 + 32;

describe('oven degrees', () => {
  const said = fc.oneof(
    fc.record({
      unit: fc.constant('C' as const),
      value: fc.integer({ min: 20, max: 60 }).map((five) => five * 5),
    }),
    fc.record({
      unit: fc.constant('F' as const),
      value: fc.integer({ min: 40, max: 115 }).map((five) => five * 5),
    }),
  );

  it('that agree are those of the step, or a conversion of them within 5 °C or 10 °F', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 60 }),
        said,
        fc.constantFrom('US', 'EU'),
        (five, { unit, value }, region) => {
          const celsius = five * 5;
          const context = aContext(
            [
              aDish('d', aRecipe('r', []), {
                steps: [aStep('s', 'Bake it', { oven: { ovenId: null, milliC: celsius * 1000 } })],
              }),
            ],
            [],
            { region },
          );
          const statement = {
            ...WORDS,
            kind: 'ovenTemperature',
            unit,
            low: value,
            high: value,
            hedge: 'none',
          } as const;
          const judged = verdict(statement, context);
          const off = Math.abs(value - (unit === 'C' ? celsius : fahrenheit(celsius)));
          if (unit === 'C') expect(judged).toBe(off === 0 ? 'agrees' : 'off');
          if (judged === 'agrees') expect(off).toBeLessThanOrEqual(10 + 1e-9);
          if (off > 10) expect(judged).toBe('off');
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('an inside temperature', () => {
  // FoodSafety.gov: poultry at least 165 °F.
  const inside = [
    {
      ingredients: [{ text: 'chicken', foods: [] }],
      milliC: 73_889,
      fahrenheit: 165,
      caution: POULTRY_CAUTION,
    },
  ];

  it('that is below the least published never agrees, whatever steps and readings say', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('C', 'F'),
        fc.integer({ min: 0, max: 400 }),
        fc.constantFrom<Hedge>('none', 'about', 'atLeast', 'justOver', 'almost', 'under'),
        (unit, tenths, hedge) => {
          const least = unit === 'C' ? 73.889 : 165;
          // Rounded to a whole degree it would be the least.
          const value = Math.round((least - 0.6 - tenths / 20) * 10) / 10;
          const milliC = unit === 'C' ? value * 1000 : ((value - 32) / 1.8) * 1000;
          const own = Math.round(milliC);
          const context = withStep({ coreMilliC: own }, { inside, coreMilliC: [own] });
          const statement = {
            ...WORDS,
            kind: 'insideTemperature',
            unit,
            low: value,
            high: value,
            hedge,
          } as const;
          expect(verdict(statement, context)).toBe('off');
        },
      ),
    );
  });
});

describe('minutes', () => {
  it('that agree touch the range of the step, or what it took on the day', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 0, max: 30 }),
        fc.option(fc.integer({ min: 60, max: 7200 }), { nil: null }),
        numbered(fc.integer({ min: 1, max: 120 })),
        (low, toUsual, toHigh, tookS, said) => {
          const usual = low + toUsual;
          const high = usual + toHigh;
          const times = { lowS: low * 60, usualS: usual * 60, highS: high * 60 };
          const steps = tookS === null ? [] : [{ stepId: 's', tookS }];
          const context = withStep(times, { steps });
          const statement = { ...WORDS, kind: 'minutes', unit: 'min', ...said } as const;
          const judged = verdict(statement, context, { text: ' bake it' });
          const [from, to] = mayBe(said, 0.5, Math.max(1, said.low * 0.05));
          if (judged === 'agrees') {
            if (tookS === null) expect(from <= high && to >= low).toBe(true);
            else expect(from <= tookS / 60 + 1.01 && to >= tookS / 60 - 1.01).toBe(true);
          }
          const apart = from > high || to < low;
          const fromLog = tookS === null || from > tookS / 60 + 1.01 || to < tookS / 60 - 1.01;
          if (apart && fromLog) expect(judged).toBe('off');
        },
      ),
    );
  });
});

describe('portions', () => {
  it('that agree hold the number there is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 24 }),
        numbered(fc.integer({ min: 1, max: 24 })),
        (of, said) => {
          const recipe = aRecipe('r', [], {
            portions: [{ id: 'p', kind: 'count', name: 'a bowl', of }],
          });
          const statement = { ...WORDS, kind: 'portions', unit: 'portion', ...said } as const;
          const judged = verdict(statement, aContext([aDish('d', recipe)]));
          const [from, to] = mayBe(said, 0, 1);
          expect(judged === 'off').toBe(
            of < from ||
              of > to ||
              (said.hedge === 'under' && of === to) ||
              (said.hedge === 'almost' && of === to) ||
              (said.hedge === 'justOver' && of === from),
          );
          if (judged === 'agrees') expect(of >= from && of <= to).toBe(true);
        },
      ),
    );
  });
});

describe('a price', () => {
  it('that agrees is by the prices, as far as it is rounded', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 50, max: 5000 }),
        fc.integer({ min: 0, max: 20 }),
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: -20, max: 20 }),
        fc.boolean(),
        fc.boolean(),
        (minor, miss, of, away, each, cents) => {
          const said = Math.max(1, Math.round(minor / (each ? of : 1)) + away);
          const recipe = aRecipe('r', [], {
            portions: [{ id: 'p', kind: 'count', name: 'a bowl', of }],
          });
          const cost = {
            ...{ lowMinor: Math.max(0, minor - miss), minor, highMinor: minor + miss },
            currency: 'EUR',
          };
          const context = aContext([aDish('d', recipe)], [{ segmentId: 'd', cost }]);
          const scope = each ? 'portion' : 'whole';
          const low = said / 100;
          const toCents = cents || said % 100 !== 0;
          const statement = {
            ...written(low, toCents ? 2 : 0),
            kind: 'price',
            unit: 'EUR',
            scope,
            low,
            high: low,
            hedge: 'none',
          } as const;
          const judged = verdict(statement, context);
          const half = toCents ? 0.5 : 50;
          const per = each ? of : 1;
          if (judged === 'agrees')
            expect(Math.abs(said - minor / per)).toBeLessThanOrEqual(half + 1e-6);
          const apart = said - half > cost.highMinor / per || said + half < cost.lowMinor / per;
          expect(judged === 'off').toBe(apart);
        },
      ),
    );
  });
});
