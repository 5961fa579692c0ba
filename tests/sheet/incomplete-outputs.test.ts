import { describe, expect, it } from 'vitest';
import { breakdown } from '#lib/figures/breakdown';
import { breakdownCsv } from '#lib/figures/breakdown-csv';
import { namedScopes, scopeText } from '#lib/figures/breakdown-scope';
import { episodeFigures, type Figures } from '#lib/figures/episode-figures';
import { figureStatus } from '#lib/figures/figure';
import { outputs } from '#lib/sheet/outputs';
import { incompleteEpisode } from '../support/incomplete-episode';
import { openNumbers, places, telling } from '../support/number-tokens';

const CLOCK = { now: '2026-03-07T18:00:00.000Z', seed: 1 };

describe.each(['US', 'EU'] as const)(
  'an episode with an open and an incomplete dish, %s',
  (region) => {
    const file = incompleteEpisode(region);
    const figures = episodeFigures(file);
    const [open, part] = figures.dishes;
    if (!open || !part) throw new Error('two dishes');
    const files = [...outputs(file, CLOCK)];
    const csv = namedScopes(file).flatMap(({ scope, title }) =>
      (['energyKcal', 'fibre', 'fat'] as const).flatMap((nutrient) => {
        const of = breakdown(file, scope, nutrient);
        const name = `${scopeText(scope)} ${nutrient}.csv`;
        return of ? [[name, breakdownCsv(of, title)] as const] : [];
      }),
    );
    const all = [...files, ...csv];
    const hidden = openNumbers(figures);

    it('is what it is said to be', () => {
      expect(Object.values(open.whole).map(figureStatus)).toEqual(
        figures.nutrients.map(() => 'open'),
      );
      expect(part.whole.protein && figureStatus(part.whole.protein)).toBe('atLeast');
      expect(all.length).toBeGreaterThan(20);
    });

    it.each(all)('%s has no number of what is open', (_, text) => {
      expect(hidden.length).toBeGreaterThan(50);
      const figuresOnly = withoutInputs(text);
      for (const number of hidden) expect(places(figuresOnly, number)).toEqual([]);
    });

    it('figures.json gives an open figure no number, and says of an incomplete one that it is', () => {
      const data: unknown = JSON.parse(new Map(files).get('figures.json') ?? '');
      const seen: string[] = [];
      walk(data, (each) => {
        const status = figureStatus({ low: each.low ?? null, high: each.high ?? null });
        seen.push(status);
        expect(each.status).toBe(status);
        if (status === 'known') return;
        expect(each.missing).not.toEqual([]);
        if (status === 'open') {
          const { value, low, high, likelyLow, likelyHigh } = each;
          expect([value, low, high, likelyLow, likelyHigh].filter((end) => end !== null)).toEqual(
            [],
          );
          expect([each.shown ?? 'open', each.published ?? 'open']).toEqual(['open', 'open']);
        } else {
          const words = status === 'atLeast' ? /^at least / : /^at most /;
          for (const text of [each.shown, each.published]) if (text) expect(text).toMatch(words);
        }
      });
      expect(new Set(seen)).toEqual(new Set(['open', 'atLeast', 'known']));
    });

    it('the description calls the open one open, and the incomplete one at least', () => {
      const text = new Map(files).get('description.txt') ?? '';
      expect(text).toContain('protein open');
      for (const figure of incomplete(part.whole)) {
        for (const number of telling(figure)) {
          for (const place of places(text, number)) expect(place).toMatch(/at least [\d,.]+$/);
        }
      }
      expect(text).toMatch(/at least \d+ g protein/);
    });

    it('a table for other programs says so in each record that lacks something', () => {
      for (const [name, text] of csv) {
        const sum = text.trimEnd().split('\r\n').at(-1) ?? '';
        const cells = sum.split(',');
        const value = cells[9];
        if (value === '') expect(sum, name).toMatch(/(open|at least|at most): /);
      }
    });
  },
);

function incomplete(figures: Figures) {
  return Object.values(figures).filter((figure) => figureStatus(figure) === 'atLeast');
}

interface Told {
  readonly status?: string;
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly likelyLow: number | null;
  readonly likelyHigh: number | null;
  readonly missing: readonly unknown[];
  readonly shown?: string;
  readonly published?: string;
}

/** Every figure in the data. */
function walk(data: unknown, see: (figure: Told) => void): void {
  if (data === null || typeof data !== 'object') return;
  if ('likelyLow' in data && 'missing' in data) see(data as Told);
  for (const each of Object.values(data)) walk(each, see);
}

/** Evidence without what goes into its figures: weights and values of foods are known, and may be the same number. */
function withoutInputs(text: string): string {
  if (!text.includes('"scale-and-slate/evidence"')) return text;
  const inputs = new Set(['grams', 'gramsRange', 'foods']);
  return JSON.stringify(
    JSON.parse(text),
    (key, value: unknown) => (inputs.has(key) ? undefined : value),
    1,
  );
}
