import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SwapStep } from '#lib/episode/publish-schema';
import { episodeFigures, type Figures } from '#lib/figures/episode-figures';
import { applySwap } from '#lib/swap/apply-swap';
import { fileDifferences, type Differences } from '#lib/swap/difference';
import { aLine, grams } from '../support/build';
import { FOOD_IDS, kitchen, LINES, swapped, variant } from './kitchen';

const NUTRIENTS = ['energyKcal', 'protein', 'carbohydrate', 'sodium'] as const;
const mg = fc.integer({ min: 1_000, max: 400_000 });
const lineId = fc.constantFrom('curd', 'oats', 'spread');
const foodId = fc.constantFrom(...FOOD_IDS);
const anyStep: fc.Arbitrary<SwapStep> = fc.oneof(
  fc.record({ kind: fc.constant('food' as const), lineId, foodId, massMg: fc.option(mg) }),
  fc.record({ kind: fc.constant('amount' as const), lineId, massMg: mg }),
  fc.record({
    kind: fc.constant('add' as const),
    foodId,
    massMg: mg,
    state: fc.constant('asIs' as const),
  }),
);
const anySwap = fc.array(anyStep, { minLength: 1, maxLength: 4 });
const known = () => LINES.filter(({ id }) => id !== 'salt');

function nothing(differences: Differences) {
  for (const each of Object.values(differences)) {
    expect(each).toMatchObject({ value: 0, missing: [] });
    expect([each.low, each.high].map((end) => (end ?? NaN) + 0)).toEqual([0, 0]);
  }
}

describe('the difference that a swap makes', () => {
  it('is the figure after less the figure before, within their ranges subtracted', () => {
    fc.assert(
      fc.property(anySwap, (steps) => {
        const file = kitchen(known());
        const after = swapped(file, steps);
        const differences = fileDifferences(file, after, 'bowl', NUTRIENTS);
        const [was, becomes] = [file, after].map((each) => episodeFigures(each, NUTRIENTS));
        const check = (old: Figures | undefined, fresh: Figures | undefined, of: Differences) => {
          for (const nutrient of NUTRIENTS) {
            const [a, b, d] = [old?.[nutrient], fresh?.[nutrient], of[nutrient]];
            if (!a || !b || !d) throw new Error('no figure');
            expect(d.value).toBeCloseTo(b.value - a.value, 8);
            if (d.low !== null && b.low !== null && a.high !== null) {
              expect(d.low).toBeGreaterThanOrEqual(b.low - a.high - 1e-7);
            }
            if (d.high !== null && b.high !== null && a.low !== null) {
              expect(d.high).toBeLessThanOrEqual(b.high - a.low + 1e-7);
            }
            // Nothing that both figures know is lost between them.
            if (a.missing.length + b.missing.length === 0) expect(d.missing).toEqual([]);
          }
        };
        check(was?.dishes[0]?.whole, becomes?.dishes[0]?.whole, differences.whole);
        check(was?.day, becomes?.day, differences.day);
        differences.portions.forEach(({ differences: of }, at) =>
          check(
            was?.dishes[0]?.portions[at]?.figures,
            becomes?.dishes[0]?.portions[at]?.figures,
            of,
          ),
        );
      }),
      { numRuns: 60 },
    );
  });

  it('holds what the two figures can be at any true state of the kitchen that both share', () => {
    // 203.4 g ± 0.5 g of curd at 9.8 or 8.9 ± 0.05 g per 100 g, less or more 0 of everything else.
    const file = kitchen(known());
    const after = swapped(file, [{ kind: 'food', lineId: 'curd', foodId: 'rich', massMg: null }]);
    const { protein } = fileDifferences(file, after, 'bowl', NUTRIENTS).whole;
    expect(protein?.value).toBeCloseTo(2.034 * (8.9 - 9.8), 9);
    expect(protein?.low).toBeCloseTo(2.039 * (8.85 - 9.85), 6);
    expect(protein?.high).toBeCloseTo(2.029 * (8.95 - 9.75), 6);
  });

  it('does not rest on what neither side knows of the same ingredient', () => {
    const file = kitchen(LINES);
    expect(episodeFigures(file, NUTRIENTS).dishes[0]?.whole.sodium).toMatchObject({ low: null });
    const after = swapped(file, [{ kind: 'food', lineId: 'curd', foodId: 'rich', massMg: null }]);
    const { whole, day } = fileDifferences(file, after, 'bowl', NUTRIENTS);
    for (const each of [...Object.values(whole), ...Object.values(day)]) {
      expect(each.missing).toEqual([]);
      expect(each.low).not.toBeNull();
    }
    // What is missing of the swapped ingredient itself stays missing.
    const bare = swapped(file, [{ kind: 'food', lineId: 'curd', foodId: 'bare', massMg: null }]);
    const lacks = fileDifferences(file, bare, 'bowl', NUTRIENTS).whole;
    expect(lacks.protein).toMatchObject({ high: null });
    expect(lacks.protein?.low).not.toBeNull();
    expect(lacks.energyKcal?.high).not.toBeNull();
  });

  it('is nothing where a food is swapped and swapped back', () => {
    fc.assert(
      fc.property(lineId, foodId, (line, food) => {
        const file = kitchen(LINES);
        const first = LINES.find(({ id }) => id === line)?.foodId ?? '';
        const there = { kind: 'food' as const, lineId: line, foodId: food, massMg: null };
        const back = { ...there, foodId: first };
        nothing(fileDifferences(file, swapped(file, [there, back]), 'bowl', NUTRIENTS).whole);
        const later = swapped(swapped(file, [there]), [back]);
        nothing(fileDifferences(file, later, 'bowl', NUTRIENTS).day);
      }),
      { numRuns: 30 },
    );
  });

  it('is nothing where an ingredient is left out and as much of it is added', () => {
    const file = kitchen(LINES);
    const again: [string, string, number][] = [
      ['oats', 'oats', 80_000],
      ['curd', 'lean', 203_400],
      ['spread', 'bare', 15_000],
    ];
    for (const [line, food, massMg] of again) {
      const after = swapped(file, [
        { kind: 'leaveOut', lineId: line },
        { kind: 'add', foodId: food, massMg, state: 'asIs' },
      ]);
      nothing(fileDifferences(file, after, 'bowl', NUTRIENTS).whole);
      expect(after).toEqual(file);
    }
  });
});

describe('a swap', () => {
  it('is by piece where the other food has that piece, else by weight', () => {
    const slice = (massMg: number) => ({
      ...{ id: 'm', name: 'slice', qtyNum: 1, qtyDen: 1, massMg, digits: 0, source: 'the pack' },
    });
    const two = { low: { num: 2, den: 1 }, high: { num: 2, den: 1 } };
    const bread = aLine('bread', 'loaf', { quantity: two, unit: 'piece', measureName: 'slice' });
    const file = kitchen([bread]);
    const [lean] = file.foods;
    if (!lean) throw new Error('no food');
    const foods = [
      { ...lean, id: 'loaf', measures: [slice(40_000)] },
      { ...lean, id: 'rye', measures: [slice(55_000)] },
      { ...lean, id: 'bun', measures: [] },
    ];
    const shop = { ...file, foods };
    const eaten = (foodId: string) =>
      episodeFigures(swapped(shop, [{ kind: 'food', lineId: 'bread', foodId, massMg: null }]), [
        'protein',
      ]).dishes[0]?.lines[0]?.eatenMg?.value;
    expect(eaten('rye')).toBeCloseTo(110_000, 6);
    expect(eaten('bun')).toBeCloseTo(80_000, 6);
  });

  it('takes out a finished weight that no longer holds, and keeps it where the grams stay', () => {
    const file = kitchen([grams('oats', 'oats', 80)]);
    const { recipe } = file.episode.segments[0] ?? {};
    if (!recipe) throw new Error('no recipe');
    const reading = { ...recipe.weighings[0], id: 'f', kind: 'finished' as const, shares: [] };
    const weighed = structuredClone(file);
    weighed.episode.segments[0]?.recipe?.weighings.push(reading as (typeof recipe.weighings)[0]);
    const kinds = (steps: SwapStep[]) =>
      swapped(weighed, steps).episode.segments[0]?.recipe?.weighings.map(({ kind }) => kind);
    const food = { kind: 'food' as const, lineId: 'oats', foodId: 'bare', massMg: null };
    expect(kinds([food])).toContain('finished');
    expect(kinds([{ kind: 'amount', lineId: 'oats', massMg: 90_000 }])).not.toContain('finished');
  });

  it('that names what is gone says so and changes nothing', () => {
    const file = kitchen(LINES);
    const applied = applySwap(
      file,
      variant([
        { kind: 'leaveOut', lineId: 'gone' },
        { kind: 'food', lineId: 'oats', foodId: 'nobody', massMg: null },
      ]),
    );
    expect(applied.ok ? [] : applied.problems.map(({ path }) => path)).toEqual([
      'variant.steps[0]',
      'variant.steps[1]',
    ]);
  });
});
