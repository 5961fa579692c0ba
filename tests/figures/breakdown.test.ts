import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { breakdown, type Breakdown } from '#lib/figures/breakdown';
import { breakdownAdvice } from '#lib/figures/breakdown-advice';
import { figureParts } from '#lib/figures/breakdown-parts';
import { pictureBars } from '#lib/figures/breakdown-picture';
import { namedScopes, scopeFrom, scopeText } from '#lib/figures/breakdown-scope';
import { uncertaintyOf } from '#lib/figures/breakdown-uncertainty';
import { addingUp, printBreakdown, rowStep } from '#lib/figures/breakdown-words';
import { episodeFigures } from '#lib/figures/episode-figures';
import type { Figure } from '#lib/figures/figure';
import type { NumberScope } from '#lib/figures/published-numbers';
import { tally } from '#lib/figures/tally';
import type { Nutrient } from '#lib/foods/nutrients';
import { variancePieces } from '#lib/units/bounds';
import { printTo, roundTo } from '#lib/units/print';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';
import { demoFile } from '../ui/page-support';
import { knownEpisode } from './breakdown-arbitrary';

const demo = demoFile();
const NUTRIENTS_TRIED = ['protein', 'energyKcal', 'carbohydrate'] as const;

function tableOf(file: EpisodeFile, scope: NumberScope, nutrient: Nutrient): Breakdown {
  const table = breakdown(file, scope, nutrient);
  if (!table) throw new Error(`no breakdown for ${scopeText(scope)}`);
  return table;
}

/** The episode's own figure, looked up without the breakdown. */
function figureIn(file: EpisodeFile, scope: NumberScope, nutrient: Nutrient): Figure | undefined {
  const { day, dishes } = episodeFigures(file, [nutrient]);
  if (scope.kind === 'day') return day[nutrient];
  if (scope.kind === 'portion') {
    return dishes.flatMap((dish) => dish.portions).find((p) => p.portionId === scope.portionId)
      ?.figures[nutrient];
  }
  const dish = dishes.find(({ segmentId }) => segmentId === scope.segmentId);
  return dish?.[scope.kind]?.[nutrient];
}

const eachTable = (check: (table: Breakdown, file: EpisodeFile) => void) => {
  fc.assert(
    fc.property(knownEpisode, fc.constantFrom(...NUTRIENTS_TRIED), (file, nutrient) => {
      for (const { scope } of namedScopes(file)) check(tableOf(file, scope, nutrient), file);
    }),
    { numRuns: 60 },
  );
};

describe('a breakdown', () => {
  it('is of exactly the episode’s figure, in every scope', () => {
    eachTable((table, file) => {
      expect(table.figure).toEqual(figureIn(file, table.scope, table.nutrient));
    });
    for (const { scope } of namedScopes(demo)) {
      for (const nutrient of ['energyKcal', 'sodium', 'fibre'] as const) {
        expect(tableOf(demo, scope, nutrient).figure).toEqual(figureIn(demo, scope, nutrient));
      }
    }
  });

  it('has rows that add up to its sum to the last digit shown, none moved by a whole step', () => {
    const check = (table: Breakdown) => {
      const step = rowStep(table.nutrient);
      const printed = printBreakdown(table);
      const sum = printed.rows.reduce((all, { adds }) => all + Number(adds), 0);
      expect(`${printTo(sum, step)} ${printed.unit}`).toBe(printed.sum.text);
      expect(printTo(table.figure.value, step)).toBe(printTo(sum, step));
      for (const { adds, row } of printed.rows) {
        expect(Math.abs(Number(adds) - row.value)).toBeLessThan(step * (1 + 1e-9));
      }
    };
    eachTable(check);
    for (const { scope } of namedScopes(demo)) {
      for (const nutrient of ['energyKcal', 'protein', 'fat', 'carbohydrate'] as const) {
        check(tableOf(demo, scope, nutrient));
      }
    }
  });

  it('shares out all of the total and all of the uncertainty', () => {
    eachTable(({ rows, figure, finishedShare }) => {
      const total = rows.reduce((sum, { shareOfTotal }) => sum + (shareOfTotal ?? 0), 0);
      if (figure.value > 0) expect(total).toBeCloseTo(1, 9);
      const shares = rows.map(({ shareOfUncertainty }) => shareOfUncertainty);
      if (shares.some((share) => share !== null)) {
        const uncertain = shares.reduce<number>((sum, share) => sum + (share ?? 0), 0);
        expect(uncertain + (finishedShare ?? 0)).toBeCloseTo(1, 9);
        expect(Math.min(...shares.map((share) => share ?? 0))).toBeGreaterThanOrEqual(0);
      }
    });
  });

  // MODEL: u² = Σ w²/3 over sources and the product term; half-width 2u (JCGM 100:2008, from memory).
  it('an ingredient that shares nothing, made exact, lowers the likely variance by its share', () => {
    let seen = 0;
    fc.assert(
      fc.property(knownEpisode, (file) => {
        for (const { scope } of namedScopes(file)) {
          const parts = figureParts(file, scope, 'protein');
          if (!parts) throw new Error('the scope is there');
          const { rows, total, divisors } = parts;
          const shares = uncertaintyOf(
            rows.map((row) => row.parts),
            total,
            divisors,
          );
          if (!shares) continue;
          const variance = (sources: typeof total.sources) =>
            variancePieces(total.terms, sources).reduce((sum, piece) => sum + piece.variance, 0);
          const before = variance(total.sources);
          rows.forEach((row, index) => {
            const own = shares.rows[index];
            if (!own || own.sharedWith.length > 0 || own.share < 1e-6) return;
            const exact = new Map(total.sources);
            const ids = new Set(row.parts.terms.flatMap(({ up, down }) => [...up, ...down]));
            for (const id of ids) {
              const interval = total.sources.get(id);
              if (!interval || divisors.has(id)) continue;
              const middle = (interval.low + interval.high) / 2;
              exact.set(id, { low: middle, value: middle, high: middle });
            }
            // A scale's accuracy divides the whole dish too: it is then an error of all of its rows.
            expect(variance(exact) / before).toBeCloseTo(1 - own.share, 9);
            seen += 1;
          });
        }
      }),
      { numRuns: 60 },
    );
    expect(seen).toBeGreaterThan(50);
  });

  it('has pieces of variance that make the likely width that the figure shows', () => {
    const lines = [grams('a', 'x', 120), grams('b', 'y', 80), grams('c', 'x', 40)];
    const foods = [aFood('x', { protein: '8.5' }), aFood('y', { protein: '11.2' })];
    const file = aFile([aDish('d', aRecipe('r', lines))], foods);
    const whole: NumberScope = { kind: 'whole', segmentId: 'd' };
    const parts = figureParts(file, whole, 'protein');
    if (!parts) throw new Error('the dish is there');
    const u = Math.sqrt(
      variancePieces(parts.total.terms, parts.total.sources).reduce((s, p) => s + p.variance, 0),
    );
    const { figure } = tableOf(file, whole, 'protein');
    expect((figure.likelyHigh ?? 0) - (figure.likelyLow ?? 0)).toBeCloseTo(4 * u, 9);
  });
});

describe('rows that add up', () => {
  it('are what the tally makes of one level, where no bound binds', () => {
    const values = fc.array(fc.double({ min: 0, max: 50, noNaN: true }), {
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(values, (given) => {
        const children = given.map((value, index) => ({
          id: String(index),
          value,
          low: value - 1,
          high: value + 1,
          fixed: null,
          children: [],
        }));
        const value = given.reduce((sum, each) => sum + each, 0);
        const root = { id: 'sum', value, low: value - 1, high: value + 1, fixed: null, children };
        const { numbers } = tally(root, 0.1);
        const cost = (printed: readonly number[]) =>
          printed.reduce((sum, each, index) => sum + Math.abs(each - (given[index] ?? 0)), 0);
        const ours = addingUp(given, 0.1);
        const theirs = given.map((_, index) => numbers.get(String(index))?.printed ?? NaN);
        expect(
          roundTo(
            ours.reduce((a, b) => a + b, 0),
            0.1,
          ),
        ).toBe(roundTo(value, 0.1));
        expect(cost(ours)).toBeCloseTo(cost(theirs), 9);
      }),
    );
  });
});

describe('what a row says', () => {
  const oats = aFood('oats', { protein: '13.15', fibre: '10.1', energyKcal: '379' });
  const paprika = aFood('paprika', { protein: '14.14', fibre: '', energyKcal: '282' });
  const skyr = aFood(
    'skyr',
    { protein: '17', energyKcal: '100' },
    { kind: 'label' },
    {
      basis: 'serving',
      rule: 'us',
      source: 'package label',
      release: '',
      sourceNo: '',
      dateRead: '2026-03-01',
      serving: { massMg: 170_000, volumeMl: null, decimals: 0, text: '1 pot', perPack: null },
    },
  );
  const fileOf = (...lines: Parameters<typeof aRecipe>[1]) =>
    aFile([aDish('d', aRecipe('r', lines))], [oats, paprika, skyr]);
  const whole: NumberScope = { kind: 'whole', segmentId: 'd' };
  const printedRow = (file: EpisodeFile, nutrient: Nutrient, at = 0) => {
    const row = printBreakdown(tableOf(file, whole, nutrient)).rows[at];
    if (!row) throw new Error('the row is there');
    return row;
  };

  it('names the table with release and number, and the value with its printed digits', () => {
    const [food] = printedRow(fileOf(grams('oats', 'oats', 40)), 'protein').foods;
    expect(food).toMatchObject({
      source: 'test table 1 oats',
      value: '13.15 g in 100 g',
      range: '13.145–13.155 g',
      stated: '',
    });
  });

  it('names a label with the day it was read, what it prints, and what that is in 100 g', () => {
    const [food] = printedRow(fileOf(grams('skyr', 'skyr', 200)), 'protein').foods;
    // 21 CFR 101.9(c)(7): 17 g stand for 16.5 to 17.5 g; (b)(7), from memory: 170 g for 169.5 to 170.5 g.
    // 16.5 / 1.705 and 17.5 / 1.695.
    expect(food).toMatchObject({
      source: 'package label, read 2026-03-01',
      value: '10 g in 100 g',
      stated: 'printed 17 g per serving of 170 g',
    });
    expect(food?.range).toBe('9.68–10.32 g');
  });

  it('says what is missing, keeps the others’ shares of what is known, and never calls it whole', () => {
    const file = fileOf(grams('oats', 'oats', 40), grams('smoked paprika', 'paprika', 2));
    const table = tableOf(file, whole, 'fibre');
    const { rows, sum } = printBreakdown(table);
    expect(sum).toEqual({
      text: 'at least 3.9 g',
      range: expect.any(String),
    });
    expect(rows[1]).toMatchObject({
      range: 'at least: no value for smoked paprika',
      shareOfTotal: '',
    });
    expect(rows[0]?.shareOfTotal).toBe('100 %');
    expect(rows[0]?.shareOfUncertainty).toBe('');
    expect(breakdownAdvice(table)).toBe('Fill this in first: no value for smoked paprika.');
  });

  it('of an open figure has no sum at all', () => {
    const table = tableOf(
      fileOf(grams('oats', 'oats', 40), aLine('sauce', null)),
      whole,
      'protein',
    );
    expect(printBreakdown(table).sum.text).toBe('open');
    expect(table.rows.map(({ shareOfTotal }) => shareOfTotal)).toEqual([null, null]);
    expect(pictureBars(fileOf(aLine('sauce', null)), whole)[0]).toMatchObject({
      parts: [],
      lacks: 'no food chosen for sauce',
    });
  });

  it('says how grams in another state came to those of the food, and nothing where they did not have to', () => {
    const rows = breakdown(demo, { kind: 'whole', segmentId: 'seg-skillet' }, 'protein')?.rows;
    const turned = rows?.filter((row) => row.turned !== '');
    // The demo’s own two cooks, see seed/demo/reference-foods.ts: about 73 % of the raw weight is left.
    expect(turned?.map(({ lineId, turned: words }) => [lineId, words])).toEqual([
      ['line-skillet-turkey', 'cooked to raw by 73 % (72–73 %): browned in a pan, your 2 cooks'],
    ]);
  });

  it('says which rows share an error, and that a food waits for the person’s word', () => {
    const file = fileOf(
      grams('oats, below', 'oats', 40),
      grams('oats, on top', 'oats', 10, { match: 'provisional' }),
    );
    const { rows } = tableOf(file, whole, 'protein');
    expect(rows.map(({ sharedWith }) => sharedWith)).toEqual([['oats, on top'], ['oats, below']]);
    expect(rows.map(({ provisional }) => provisional)).toEqual([false, true]);
  });
});

describe('what to do better', () => {
  const oil = aFood(
    'oil',
    { energyKcal: '884' },
    {
      measures: [
        { id: 'm', name: 'tbsp', qtyNum: 1, qtyDen: 1, massMg: 13_500, digits: 1, source: 's' },
      ],
    },
  );
  const oats = aFood('oats', { energyKcal: '379' });
  const label = aFood('skyr', { energyKcal: '60' }, { kind: 'label' }, { rule: 'us' });
  const spoon = { low: { num: 2, den: 1 }, high: { num: 2, den: 1 } };
  const advice = (lines: Parameters<typeof aRecipe>[1], more: object = {}, scope?: NumberScope) => {
    const file = aFile([aDish('d', aRecipe('r', lines, more))], [oil, oats, label]);
    return breakdownAdvice(tableOf(file, scope ?? { kind: 'whole', segmentId: 'd' }, 'energyKcal'));
  };

  it('is to weigh the spoon of oil, not the gram of oats', () => {
    const line = aLine('2 tbsp oil', 'oil', { quantity: spoon, unit: 'tbsp' });
    expect(advice([grams('oats', 'oats', 80), line])).toMatch(
      /^Weigh this better next time: 2 tbsp oil\. Its spoon, cup or piece makes 9\d %/,
    );
  });

  it('is to read the label again where its rounding is the most', () => {
    expect(advice([grams('skyr', 'skyr', 800), grams('oats', 'oats', 10)])).toMatch(
      /^Read this better next time: skyr\./,
    );
  });

  it('is to weigh the finished dish where that divides most of it', () => {
    const weighings = [aReading('done', 'finished', 20)];
    expect(
      advice([grams('oats', 'oats', 900)], { weighings }, { kind: 'per100g', segmentId: 'd' }),
    ).toMatch(/^Weigh this better next time: the finished dish\./);
  });

  it('is nothing where only a table’s digits are left', () => {
    const exact = {
      kind: 'mass',
      lowMg: 0,
      valueMg: 0,
      highMg: 0,
      where: 'pan',
      made: 'alike',
    } as const;
    expect(advice([grams('oats', 'oats', 100_000, { leftBehind: exact })])).toMatch(/^Nothing to/);
  });
});

describe('scopes', () => {
  it('are found again by their address, and no others are', () => {
    for (const { scope } of namedScopes(demo)) {
      expect(scopeFrom(demo, scopeText(scope))?.scope).toEqual(scope);
    }
    for (const wrong of ['', 'whole', 'whole:nowhere', 'portion:seg-loaf', 'per100g:seg-skillet']) {
      expect(scopeFrom(demo, wrong)).toBeNull();
    }
    expect(breakdown(demo, { kind: 'whole', segmentId: 'nowhere' }, 'fat')).toBeNull();
  });
});

describe('the picture', () => {
  it('names the five largest and the rest together, and is all of the figure', () => {
    const [energy] = pictureBars(demo, { kind: 'whole', segmentId: 'seg-loaf' });
    const parts = energy?.parts ?? [];
    expect(parts).toHaveLength(6);
    expect(parts[5]).toMatchObject({ name: '7 others', rest: true });
    expect(parts.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(
      energy?.figure.value ?? NaN,
      6,
    );
    const shares = parts.slice(0, 5).map(({ share }) => share);
    expect([...shares].sort((a, b) => b - a)).toEqual(shares);
  });

  it('of all dishes is by dish as eaten, against the targets of the day', () => {
    const bars = pictureBars(demo, { kind: 'day' });
    const energy = bars.find(({ nutrient }) => nutrient === 'energyKcal');
    expect(energy?.parts.map(({ name }) => name)).toEqual([
      'Barley skillet',
      'Tray-baked turkey meatloaf',
      'Skyr pots with oat crumb',
    ]);
    expect(energy?.targets).toMatchObject([{ relation: 'atMost', amount: 1650 }]);
    expect(energy?.reach).toBeCloseTo(Math.max(1650, energy?.figure.value ?? NaN), 6);
    const fat = pictureBars(demo, { kind: 'whole', segmentId: 'seg-loaf' }).find(
      ({ nutrient }) => nutrient === 'fat',
    );
    expect(fat?.targets).toMatchObject([{ amount: 60, verdict: 'cannotTell' }]);
  });
});
