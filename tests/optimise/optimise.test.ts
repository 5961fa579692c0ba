import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { optimise } from '#lib/optimise/optimise';
import type { Program } from '#lib/optimise/program';
import { choosePacks, type PackOption } from '#lib/shopping/choose-packs';
import { STIGLER_FOODS } from './stigler-foods';

const free = { low: 0, high: null, whole: false };

describe('the cheapest diet of 1945', () => {
  // Requirements of the National Research Council, 1943, as in Stigler (1945): a day's least.
  const LEAST = [3, 70, 0.8, 12, 5, 1.8, 2.7, 18, 75];
  const program: Program = {
    goal: 'least',
    variables: STIGLER_FOODS.map(() => ({ ...free, cost: 1 })),
    rows: LEAST.map((low, nutrient) => ({
      terms: STIGLER_FOODS.map(([, , ...per], variable) => ({
        variable,
        times: per[nutrient] ?? NaN,
      })),
      low,
      high: null,
    })),
  };

  it('costs 0.1086622782 dollars a day, of five foods', async () => {
    // The optimum as the GLPK 5.0 example `stigler.mod` prints it; amounts and dual prices by HiGHS and GLPK alike.
    const solved = await optimise(program);
    if (solved.status !== 'optimal') throw new Error(solved.status);
    expect(solved.value).toBeCloseTo(0.1086622782, 10);
    expect(solved.value * 365).toBeCloseTo(39.66, 2);
    expect(solved.value * 365.25).toBeCloseTo(39.69, 2);
    const eaten = STIGLER_FOODS.flatMap(([name, grams], at) => {
      const dollars = solved.variables[at] ?? 0;
      return dollars > 1e-9 ? [[name, dollars, dollars * grams] as const] : [];
    });
    const expected = [
      ['Wheat Flour (Enriched)', 0.02951906, 371.9],
      ['Liver (Beef)', 0.00189256, 3.2],
      ['Cabbage', 0.01121444, 100.4],
      ['Spinach', 0.00500766, 23.0],
      ['Navy Beans, Dried', 0.06102856, 469.2],
    ] as const;
    expect(eaten.map(([name]) => name).sort()).toEqual(expected.map(([name]) => name).sort());
    for (const [name, dollars, grams] of expected) {
      const found = eaten.find(([each]) => each === name);
      expect(found?.[1]).toBeCloseTo(dollars, 8);
      expect(found?.[2]).toBeCloseTo(grams, 1);
    }
  });

  it('is bound by energy, calcium, vitamin A, riboflavin and vitamin C, at their dual prices', async () => {
    const solved = await optimise(program);
    if (solved.status !== 'optimal') throw new Error(solved.status);
    const intake = [3, 147.41, 0.8, 60.47, 5, 4.12, 2.7, 27.32, 75];
    const duals = [0.00876515, 0, 0.03173771, 0, 0.00040023, 0, 0.01635803, 0, 0.00014412];
    intake.forEach((amount, at) => expect(solved.rows[at]).toBeCloseTo(amount, 2));
    duals.forEach((dual, at) => expect(solved.duals?.[at]).toBeCloseTo(dual, 8));
    const dualValue = LEAST.reduce((sum, least, at) => sum + least * (solved.duals?.[at] ?? 0), 0);
    expect(dualValue).toBeCloseTo(solved.value, 10);
  });
});

describe('a program', () => {
  it('has its optimum with duals, to the least and to the most', async () => {
    const rows = [
      {
        terms: [
          { variable: 0, times: 1 },
          { variable: 1, times: 1 },
        ],
        low: 4,
        high: 6,
      },
    ];
    const variables = [
      { ...free, cost: 2, high: 3 },
      { ...free, cost: 3 },
    ];
    const least = await optimise({ goal: 'least', variables, rows });
    expect(least).toMatchObject({ status: 'optimal', value: 9, variables: [3, 1], duals: [3] });
    const most = await optimise({ goal: 'most', variables, rows });
    expect(most).toMatchObject({ status: 'optimal', value: 18, rows: [6], duals: [3] });
  });

  it('says where it has none, and refuses what is no program', async () => {
    const one = (low: number | null, high: number | null) => ({
      terms: [{ variable: 0, times: 1 }],
      low,
      high,
    });
    const variables = [{ ...free, cost: 1 }];
    const solve = (goal: Program['goal'], rows: Program['rows']) =>
      optimise({ goal, variables, rows });
    expect(await solve('least', [one(5, null), one(null, 4)])).toEqual({ status: 'infeasible' });
    expect(await solve('most', [one(1, null)])).toEqual({ status: 'unbounded' });
    expect(await optimise({ goal: 'least', variables: [], rows: [] })).toMatchObject({ value: 0 });
    await expect(solve('least', [one(NaN, null)])).rejects.toThrow(/row 0 has a bound/);
    const wrong = { terms: [{ variable: 3, times: 1 }], low: 0, high: null };
    await expect(solve('least', [wrong])).rejects.toThrow(/row 0 names variable 3/);
  });

  it('with whole variables has the cost of the choice of packs, on larger cases than can be tried out', async () => {
    const cases = fc.sample(
      fc.record({
        need: fc.integer({ min: 1000, max: 9000 }),
        packs: fc.array(
          fc.record({
            holds: fc.integer({ min: 90, max: 1500 }),
            minor: fc.integer({ min: 50, max: 900 }),
          }),
          { minLength: 3, maxLength: 6 },
        ),
      }),
      { numRuns: 40, seed: 19 },
    );
    for (const { need, packs } of cases) {
      const options = packs.map(({ holds, minor }, at): PackOption => {
        return { id: `p${at}`, holds, minor, packs: 1, priceFor: holds, most: null };
      });
      const solved = await optimise({
        goal: 'least',
        variables: packs.map(({ minor }) => ({ ...free, cost: minor, whole: true })),
        rows: [
          {
            terms: packs.map(({ holds }, variable) => ({ variable, times: holds })),
            low: need,
            high: null,
          },
        ],
      });
      if (solved.status !== 'optimal') throw new Error(solved.status);
      expect(choosePacks(options, { need, laterUse: 0 })?.minor).toBe(Math.round(solved.value));
      expect(solved.duals).toBeNull();
    }
  });
});
