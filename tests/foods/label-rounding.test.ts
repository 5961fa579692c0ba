import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cell, FoodVersion } from '#lib/foods/food';
import {
  canBePrinted,
  cellInterval,
  declareEu,
  declareUs,
  labelInterval,
  servingInterval,
} from '#lib/foods/label-rounding';
import type { Nutrient } from '#lib/foods/nutrients';
import { parsePrinted } from '#lib/units/printed';
import { labelVersion } from './label-version';

/** The cell that a declaration in a label's words is entered as. */
function cell(text: string): Cell {
  const printed = parsePrinted(text.replace('<', ''));
  if (!printed) throw new Error(`not a declaration: ${text}`);
  return { kind: text.startsWith('<') ? 'lessThan' : 'eq', ...printed };
}

function bounds(rule: 'us' | 'eu' | 'asPrinted', nutrient: Nutrient, text: string) {
  const interval = labelInterval(rule, nutrient, cell(text));
  return interval && [interval.low, interval.high];
}

describe('what a US label may print', () => {
  // Source: 21 CFR 101.9(c)(1)-(7); limits derived from the rule's text. The 2 mg cholesterol limit is from
  // memory, section number given. Ties: the regulation does not say, so both neighbours are accepted.
  it.each<[Nutrient, number, string[]]>([
    ['energyKcal', 3, ['5', '0']],
    ['energyKcal', 2, ['0']],
    ['energyKcal', 47, ['45']],
    ['energyKcal', 50, ['50']],
    ['energyKcal', 52, ['50']],
    ['energyKcal', 54.9, ['50']],
    ['energyKcal', 55, ['50', '60']],
    ['energyKcal', 56, ['60']],
    ['fat', 0.49, ['0']],
    ['fat', 0.7, ['0.5']],
    ['fat', 4.6, ['4.5']],
    ['fat', 4.8, ['5']],
    ['fat', 5.4, ['5']],
    ['fat', 5.6, ['6']],
    ['saturated', 4.75, ['4.5', '5']],
    ['sodium', 4.9, ['0']],
    ['sodium', 137, ['135']],
    ['sodium', 140, ['140']],
    ['sodium', 143, ['140']],
    ['sodium', 147, ['150']],
    ['cholesterol', 12, ['10']],
    ['cholesterol', 13, ['15']],
    ['cholesterol', 3, ['5', '<5']],
    ['cholesterol', 1.9, ['0']],
    ['protein', 0.4, ['0', '<1']],
    ['protein', 0.8, ['1', '<1']],
    ['protein', 12.4, ['12']],
    ['carbohydrate', 0.5, ['0', '1', '<1']],
  ])('%s %d → %j', (nutrient, trueValue, expected) => {
    expect(declareUs(nutrient, trueValue).sort()).toEqual([...expected].sort());
  });
});

describe('what a US declaration stands for', () => {
  // Source: the same rules turned round: closed, with both ties and every "may".
  it.each<[Nutrient, string, number, number]>([
    ['energyKcal', '0', 0, 5],
    ['energyKcal', '5', 2.5, 7.5],
    ['energyKcal', '45', 42.5, 47.5],
    ['energyKcal', '50', 47.5, 55],
    ['energyKcal', '60', 55, 65],
    ['energyKcal', '190', 185, 195],
    ['fat', '0', 0, 0.5],
    ['fat', '0.5', 0.5, 0.75],
    ['fat', '4.5', 4.25, 4.75],
    ['fat', '5', 4.75, 5.5],
    ['fat', '6', 5.5, 6.5],
    ['sodium', '0', 0, 5],
    ['sodium', '5', 5, 7.5],
    ['sodium', '135', 132.5, 137.5],
    ['sodium', '140', 137.5, 145],
    ['sodium', '150', 145, 155],
    // Under 2 mg is 0; 2 to 2.5 mg round to 0 where the words "less than 5" are not used.
    ['cholesterol', '0', 0, 2.5],
    ['cholesterol', '<5', 0, 5],
    ['cholesterol', '5', 2.5, 7.5],
    ['cholesterol', '10', 7.5, 12.5],
    ['carbohydrate', '0', 0, 0.5],
    ['fibre', '<1', 0, 1],
    ['sugars', '1', 0.5, 1.5],
    ['protein', '12', 11.5, 12.5],
  ])('%s "%s" → %d to %d', (nutrient, text, low, high) => {
    expect(bounds('us', nutrient, text)).toEqual([low, high]);
  });

  it('keeps the printed number as the value', () => {
    expect(labelInterval('us', 'energyKcal', cell('50'))?.value).toBe(50);
  });

  it('takes a number that the rule cannot print as printed, and says that it cannot', () => {
    expect(bounds('us', 'energyKcal', '63')).toEqual([62.5, 63.5]);
    expect(canBePrinted('us', 'energyKcal', cell('63'))).toBe(false);
    expect(canBePrinted('us', 'energyKcal', cell('60'))).toBe(true);
    expect(canBePrinted('us', 'fat', cell('5.5'))).toBe(false);
  });
});

describe('what an EU declaration stands for', () => {
  // Source: EU guidance on tolerances (December 2012), rounding table, from memory.
  it.each<[Nutrient, string, number, number]>([
    ['energyKj', '578', 577.5, 578.5],
    ['fat', '12', 11.5, 12.5],
    ['fat', '10', 9.95, 10.5],
    ['fat', '3.6', 3.55, 3.65],
    ['fat', '0', 0, 0.5],
    ['protein', '<0.5', 0, 0.5],
    ['saturated', '0', 0, 0.1],
    ['salt', '0', 0, 0.0125],
    ['salt', '<0.01', 0, 0.0125],
    ['salt', '0.45', 0.445, 0.455],
    ['salt', '1.2', 1.15, 1.25],
  ])('%s "%s" → %d to %d', (nutrient, text, low, high) => {
    const [foundLow, foundHigh] = bounds('eu', nutrient, text) ?? [];
    expect(foundLow).toBeCloseTo(low, 10);
    expect(foundHigh).toBeCloseTo(high, 10);
  });
});

describe('what a printed table value stands for', () => {
  it('keeps the digits apart: "0.0" is up to 0.05, "0.00" up to 0.005', () => {
    expect(bounds('asPrinted', 'fibre', '0.0')).toEqual([0, 0.05]);
    expect(bounds('asPrinted', 'fibre', '0.00')).toEqual([0, 0.005]);
    expect(bounds('asPrinted', 'energyKcal', '120')).toEqual([119.5, 120.5]);
  });

  it('has no interval where the value is missing, and exactly 0 for a trace', () => {
    expect(labelInterval('us', 'fat', { kind: 'missing' })).toBeNull();
    expect(labelInterval('us', 'fat', { kind: 'trace' })).toEqual({ low: 0, value: 0, high: 0 });
    expect(cellInterval(labelVersion({ values: {} }), 'fat')).toBeNull();
  });
});

describe('laws of rounding and its inversion', () => {
  const nutrients: readonly Nutrient[] = [
    'energyKcal',
    'fat',
    'cholesterol',
    'sodium',
    'carbohydrate',
    'protein',
  ];
  // Quarters hit every tie and joint of the US grids.
  const amount = fc.oneof(
    fc.integer({ min: 0, max: 4000 }).map((quarters) => quarters / 4),
    fc.double({ min: 0, max: 1000, noNaN: true }),
  );

  it('every true amount lies in the inversion of every declaration that it may be given', () => {
    fc.assert(
      fc.property(fc.constantFrom(...nutrients), amount, (nutrient, trueValue) => {
        const declared = declareUs(nutrient, trueValue);
        expect(declared.length).toBeGreaterThan(0);
        for (const text of declared) {
          const interval = labelInterval('us', nutrient, cell(text));
          expect(interval).not.toBeNull();
          expect(interval?.low).toBeLessThanOrEqual(trueValue);
          expect(interval?.high).toBeGreaterThanOrEqual(trueValue);
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('the inversion is no wider than it must be: its ends may be declared so, or just inside them', () => {
    fc.assert(
      fc.property(fc.constantFrom(...nutrients), amount, (nutrient, trueValue) => {
        for (const text of declareUs(nutrient, trueValue)) {
          if (text.startsWith('<')) continue;
          const interval = labelInterval('us', nutrient, cell(text));
          if (!interval) throw new Error(`no interval for ${text}`);
          const inside = (interval.high - interval.low) * 1e-6;
          expect(declareUs(nutrient, interval.low + inside)).toContain(text);
          expect(declareUs(nutrient, interval.high - inside)).toContain(text);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('holds for the EU rounding too, in steps of a thousandth', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<Nutrient>('energyKj', 'fat', 'saturated', 'salt'),
        fc.integer({ min: 0, max: 40_000 }),
        (nutrient, thousandths) => {
          const trueValue = thousandths / 1000;
          for (const text of declareEu(nutrient, trueValue)) {
            const interval = labelInterval('eu', nutrient, cell(text));
            expect(interval?.low).toBeLessThanOrEqual(trueValue + 1e-12);
            expect(interval?.high).toBeGreaterThanOrEqual(trueValue - 1e-12);
          }
        },
      ),
      { numRuns: 2000 },
    );
  });
});

describe('the mass of a serving', () => {
  const serving = (rule: FoodVersion['rule'], massMg: number, decimals: number) => {
    const interval = servingInterval(
      labelVersion({
        rule,
        serving: { massMg, volumeMl: null, decimals, text: '1 piece', perPack: null },
      }),
    );
    return interval && [interval.low, interval.high];
  };

  // Source: 21 CFR 101.9(b)(7), from memory, section number given.
  it('on a US label follows 101.9(b)(7)', () => {
    expect(serving('us', 30_000, 0)).toEqual([29_500, 30_500]);
    expect(serving('us', 3_500, 1)).toEqual([3_250, 3_750]);
    expect(serving('us', 5_000, 0)).toEqual([4_750, 5_500]);
    expect(serving('us', 1_400, 1)?.map(Math.round)).toEqual([1_350, 1_450]);
  });

  it('elsewhere is half a unit of the last place', () => {
    expect(serving('eu', 30_000, 0)).toEqual([29_500, 30_500]);
    expect(serving('eu', 12_500, 1)).toEqual([12_450, 12_550]);
  });

  it('is unknown where the label prints none', () => {
    expect(servingInterval(labelVersion({ serving: null }))).toBeNull();
  });
});

describe('two columns of one label', () => {
  const eq = (text: string) => cell(text);

  it('share what both allow: 3 g in 30 g beside 11 g in 100 g', () => {
    const version = labelVersion({
      rule: 'us',
      serving: { massMg: 30_000, volumeMl: null, decimals: 0, text: '', perPack: null },
      values: { protein: eq('3') },
      secondColumn: { basis: 'per100g', values: { protein: eq('11') } },
    });
    // The serving: 2.5 to 3.5 g; the column: 10.5 to 11.5 g per 100 g times 29.5 to 30.5 g.
    const interval = cellInterval(version, 'protein');
    expect(interval?.low).toBeCloseTo(10.5 * 0.295, 10);
    expect(interval?.high).toBeCloseTo(3.5, 10);
  });

  it('that share nothing leave the first as it stands', () => {
    const version = labelVersion({
      rule: 'us',
      serving: { massMg: 30_000, volumeMl: null, decimals: 0, text: '', perPack: null },
      values: { protein: eq('3') },
      secondColumn: { basis: 'per100g', values: { protein: eq('21') } },
    });
    expect(cellInterval(version, 'protein')).toEqual({ low: 2.5, value: 3, high: 3.5 });
  });
});
