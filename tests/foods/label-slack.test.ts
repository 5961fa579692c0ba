import { describe, expect, it } from 'vitest';
import { checkLabel } from '#lib/foods/check-label';
import { fromNutrients } from '#lib/foods/check-label-energy';
import { columnsOf } from '#lib/foods/label-column';
import type { Nutrient } from '#lib/foods/nutrients';
import { cell } from '../support/build';
import { labelVersion } from './label-version';

type Panel = Partial<Record<Nutrient, string>>;

function label(printed: Panel) {
  const cells = Object.entries(printed).map(([nutrient, text]) => [nutrient, cell(text)]);
  return labelVersion({ values: Object.fromEntries(cells) });
}

const fits = (printed: Panel) => checkLabel(label(printed)).length === 0;

/** Energy that the panel's nutrients can give, and its own printed calories with their bounds. */
function column(printed: Panel) {
  const version = label(printed);
  const [first] = columnsOf(version);
  const energy = first?.interval('energyKcal');
  if (!first || !energy) throw new Error('a panel with calories');
  return { energy, given: fromNutrients(first, version, 'kcal') };
}

// Derived from 21 CFR 101.9(c): slack = half a step of the calories + 4 × 0.5 g protein + 4 × 0.5 g carbohydrate
// + 9 × half a step of the fat. Fibre may count from 0 to 4 kcal a gram, so below it 4 × fibre goes off as well,
// and fibre is itself rounded: 4 × 0.5 g more.
describe('how far a correct US panel may miss 4-4-9 by rounding alone', () => {
  const FIBRE = 4 * 0.5;
  const cases: [string, Panel, number][] = [
    ['above 50 kcal, 5 g fat or more', { protein: '6', fat: '6', carbohydrate: '10' }, 13.5],
    ['above 50 kcal, less fat', { protein: '6', fat: '2', carbohydrate: '10' }, 11.25],
    ['50 kcal or less', { protein: '3', fat: '1', carbohydrate: '5' }, 8.75],
  ];

  it.each(cases)('%s: %j, %d kcal', (_words, macros, slack) => {
    const [p, f, c] = [Number(macros.protein), Number(macros.fat), Number(macros.carbohydrate)];
    const plain = 4 * p + 9 * f + 4 * c;
    const kcal = slack === 8.75 ? '45' : '100';
    const { energy, given } = column({ ...macros, fibre: '0', energyKcal: kcal });
    const step = energy.high - energy.value;
    expect(given.high + step - plain).toBeCloseTo(slack, 9);
    expect(plain - (given.low - step)).toBeCloseTo(slack + FIBRE, 9);
  });

  it.each(cases)(
    '%s: the panel is told beyond the slack and not within it',
    (_words, macros, slack) => {
      const [p, f, c] = [Number(macros.protein), Number(macros.fat), Number(macros.carbohydrate)];
      const plain = 4 * p + 9 * f + 4 * c;
      const by = slack === 8.75 ? 5 : 10;
      const printed = Array.from({ length: 60 }, (_, n) => n * by).filter(
        (n) => (slack === 8.75 ? n < 50 : n > 50) && n > 0,
      );
      expect(printed.length).toBeGreaterThan(5);
      for (const n of printed) {
        const consistent = n - plain <= slack && plain - n <= slack + FIBRE;
        const panel = { ...macros, fibre: '0', energyKcal: String(n) };
        expect([n, fits(panel)]).toEqual([n, consistent]);
      }
    },
  );

  it('60 kcal, fat 2.5 g, carbohydrate 5 g, fibre 3 g, protein 6 g: 66.5 by 4-4-9, 54.5 without fibre', () => {
    const panel = { fat: '2.5', carbohydrate: '5', fibre: '3', protein: '6' };
    const { energy, given } = column({ ...panel, energyKcal: '60' });
    const step = energy.high - energy.value;
    expect(given.high + step).toBeCloseTo(66.5 + 11.25, 9);
    expect(given.low - step).toBeCloseTo(54.5 - 11.25 - FIBRE, 9);
    expect(fits({ ...panel, energyKcal: '60' })).toBe(true);
    expect(fits({ ...panel, energyKcal: '80' })).toBe(false);
    // 40 kcal stand for 37.5 to 42.5: the half-step below 50 is 2.5.
    expect(fits({ ...panel, energyKcal: '40' })).toBe(false);
  });
});
