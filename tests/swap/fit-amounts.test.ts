import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeOf, fitAmounts, meets, type FitAmount, type FitLimit } from '#lib/swap/fit-amounts';
import { STIGLER_FOODS } from '../optimise/stigler-foods';
import { byGreed, everyCombination } from './fit-peers';

const amount = (start: number, step: number | null, more: Partial<FitAmount> = {}): FitAmount => ({
  ...{ start, low: start / 2, high: start * 2, step, against: start },
  ...more,
});
const limit = (base: number, per: number[], from: number | null, to: number | null): FitLimit => ({
  ...{ base, per, from, to, size: Math.max(1, from ?? to ?? 1) },
});

describe('amounts that meet limits', () => {
  const cases = fc.record({
    starts: fc.array(fc.integer({ min: 20, max: 300 }), { minLength: 1, maxLength: 4 }),
    step: fc.constantFrom(20, 25, 40),
    limits: fc.array(
      fc.record({
        per: fc.array(
          fc.integer({ min: 0, max: 40 }).map((each) => each / 10),
          { minLength: 4, maxLength: 4 },
        ),
        by: fc.integer({ min: -40, max: 60 }),
        wide: fc.integer({ min: 1, max: 20 }),
        kind: fc.constantFrom('from', 'to', 'both'),
      }),
      { minLength: 1, maxLength: 3 },
    ),
  });

  it('have the least change of all combinations, never more than a greedy search', async () => {
    let [fits, clashes, greedier] = [0, 0, 0];
    await fc.assert(
      fc.asyncProperty(cases, async ({ starts, step, limits: asked }) => {
        const amounts = starts.map((start) => amount(start, step));
        const limits = asked.map(({ per, by, wide, kind }) => {
          const base = starts.reduce((sum, start, at) => sum + start * (per[at] ?? 0), 0);
          const goal = base * (1 + by / 100);
          const band = (base * wide) / 100;
          return limit(
            base,
            per.slice(0, starts.length),
            kind === 'to' ? null : goal - band,
            kind === 'from' ? null : goal + band,
          );
        });
        const found = await fitAmounts(amounts, limits);
        const all = everyCombination(amounts, limits);
        if (all === null) {
          clashes += 1;
          expect(found.status).toBe('clash');
          return;
        }
        if (found.status !== 'fits') throw new Error(found.status);
        fits += 1;
        // Places weigh up to a ten-thousandth, so that is how much a like change may differ by.
        expect(found.change).toBeGreaterThanOrEqual(all.change - 1e-9);
        expect(found.change).toBeLessThanOrEqual(all.change * (1 + 1e-4) + 1e-6);
        for (const each of limits) expect(meets(each, amounts, found.amounts)).toBe(true);
        const greedy = byGreed(amounts, limits);
        if (greedy && greedy.change > found.change + 1e-6) greedier += 1;
        if (greedy) expect(found.change).toBeLessThanOrEqual(greedy.change * (1 + 1e-4) + 1e-6);
      }),
      { numRuns: 60, seed: 7 },
    );
    // The cases are of both kinds, and greed is not enough for some.
    expect(fits).toBeGreaterThan(10);
    expect(clashes).toBeGreaterThan(5);
    expect(greedier).toBeGreaterThan(0);
  });

  it('stay as they are where they meet all limits, on no step too', async () => {
    const amounts = [amount(203.4, 5), amount(81, null)];
    const found = await fitAmounts(amounts, [limit(500, [1, 2], 450, 550)]);
    expect(found).toEqual({ status: 'fits', amounts: [203.4, 81], change: 0 });
  });

  it('change later in the list where changes are alike', async () => {
    const found = await fitAmounts(
      [amount(100, 10), amount(100, 10)],
      [limit(200, [1, 1], 220, null)],
    );
    expect(found).toMatchObject({ status: 'fits', amounts: [100, 120] });
  });

  it('that cannot be found name the smallest set of limits that clash, and the nearest miss', async () => {
    const amounts = [amount(100, 10, { low: 0 }), amount(100, 10)];
    const limits = [
      limit(300, [1, 2], 250, null),
      limit(200, [1, 1], null, 180),
      limit(500, [2, 3], 520, null),
      limit(100, [0, 1], null, 110),
    ];
    // 2a + 3b ≥ 520 with a + b ≤ 180 needs b ≥ 160, and b may be 110 at most: any two of the three can be met.
    const found = await fitAmounts(amounts, limits);
    expect(found).toMatchObject({ status: 'clash', clashing: [1, 2, 3], smallest: true });
    if (found.status !== 'clash') return;
    for (const left of [1, 2, 3]) {
      const rest = [1, 2, 3].filter((each) => each !== left).flatMap((at) => limits[at] ?? []);
      expect(everyCombination(amounts, rest)).not.toBeNull();
    }
    expect(found.nearest).not.toBeNull();
    expect(changeOf(amounts, found.nearest ?? [])).toBeGreaterThan(0);
  });

  it('of no food at all at the start are the cheapest diet of 1945', async () => {
    // G. J. Stigler, "The Cost of Subsistence", Journal of Farm Economics 27(2), 1945; optimum as GLPK's stigler.mod prints.
    const LEAST = [3, 70, 0.8, 12, 5, 1.8, 2.7, 18, 75];
    const diet = STIGLER_FOODS.map(([, grams]): FitAmount => {
      return { start: 0, low: 0, high: grams, step: null, against: grams };
    });
    const needs = LEAST.map((from, nutrient): FitLimit => {
      const per = STIGLER_FOODS.map(([, grams, ...of]) => (of[nutrient] ?? NaN) / grams);
      return { base: 0, per, from, to: null, size: from };
    });
    const found = await fitAmounts(diet, needs);
    if (found.status !== 'fits') throw new Error(found.status);
    // Dollars a day; the weight of places may cost a ten-thousandth of it.
    expect(found.change).toBeGreaterThan(0.1086622782 - 1e-6);
    expect(found.change).toBeLessThan(0.1086622782 * 1.0001);
    const eaten = STIGLER_FOODS.flatMap(([name], at) =>
      (found.amounts[at] ?? 0) > 0.01 ? [name] : [],
    );
    expect(eaten.sort()).toEqual([
      'Cabbage',
      'Liver (Beef)',
      'Navy Beans, Dried',
      'Spinach',
      'Wheat Flour (Enriched)',
    ]);
  });
});
