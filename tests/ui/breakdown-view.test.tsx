import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { breakdown } from '#lib/figures/breakdown';
import { namedScopes, scopeFrom, scopeText } from '#lib/figures/breakdown-scope';
import { SHOWN_NUTRIENTS } from '#lib/figures/shown-nutrients';
import type { Nutrient } from '#lib/foods/nutrients';
import { BreakdownView } from '../../app/episodes/[id]/breakdown/_components/breakdown-view';
import { breakdownHref, breakdownRowHref } from '../../app/episodes/[id]/breakdown/href';
import { demoFile, words } from './page-support';

vi.mock('next/navigation', () => ({ usePathname: () => '/' }));

const demo = demoFile();

function page(scope: string, nutrient: Nutrient, file: EpisodeFile = demo): string {
  const named = scopeFrom(file, scope);
  const of = named && breakdown(file, named.scope, nutrient);
  if (!of) throw new Error(`the demo has ${scope}`);
  return renderToStaticMarkup(<BreakdownView found={{ file, named, of }} />);
}

/** The cells of a row, read. */
function cells(markup: string, lineId: string): string[] {
  const row = new RegExp(`<tr id="line-${lineId}".*?</tr>`, 's').exec(markup)?.[0] ?? '';
  return [...row.matchAll(/<t[hd].*?<\/t[hd]>/gs)].map(([cell]) => words(cell));
}

describe('the breakdown of the demo’s meatloaf', () => {
  const markup = page('whole:seg-loaf', 'energyKcal');
  const loaf = demo.episode.segments.find(({ id }) => id === 'seg-loaf');
  const lines = loaf?.recipe?.lines ?? [];
  const [turkey] = lines;

  test('has a row for each ingredient, with grams, source, value and what it adds', () => {
    expect(lines.length).toBeGreaterThan(10);
    for (const { id, text } of lines) expect(cells(markup, id)[0]).toContain(text);
    // USDA SR28 05665: 150 kcal in 100 g. 498 g of it by hand: 747 kcal.
    const [what, grams, value, adds] = cells(markup, turkey?.id ?? '');
    expect(what).toContain('USDA SR28 05665');
    expect(grams).toMatch(/^498 g 497–499$/);
    expect(value).toMatch(/^150 kcal in 100 g 149\.5–150\.5 kcal$/);
    expect(adds).toMatch(/^747\.0 kcal 743\.\d–750\.\d$/);
  });

  test('draws a whisker beside everything that is added', () => {
    const rows = markup.match(/<tr id="line-.*?<\/tr>/gs) ?? [];
    expect(rows).toHaveLength(lines.length);
    for (const row of rows) expect(row.match(/<svg/g)).toHaveLength(1);
  });

  test('has rows that add up to its last row to the last digit', () => {
    const tenths = lines.map(({ id }) =>
      Math.round(10 * Number(/^-?[\d.]+/.exec(cells(markup, id)[3] ?? '')?.[0])),
    );
    const last = words(markup.match(/<tr.*?<\/tr>/gs)?.at(-1) ?? '');
    const sum = Number(/(\d+\.\d) kcal$/.exec(last)?.[1]);
    expect(tenths.reduce((all, each) => all + each, 0)).toBe(Math.round(10 * sum));
  });

  test('says what to weigh better, the allowance of the law and where it is written', () => {
    expect(words(markup)).toMatch(/(Weigh|Read|Decide) this better next time|Nothing to weigh/);
    const part = /<section id="allowance".*?<\/section>/s.exec(markup)?.[0] ?? '';
    expect(words(part)).toMatch(/as much as \d+\.\d kcal; downwards there is no limit in law/);
    expect(words(part)).toContain('21 CFR 101.9(g)(5)');
  });

  test('leads to every nutrient of the panel, to every other amount, and to the table as a file', () => {
    for (const nutrient of SHOWN_NUTRIENTS.US) {
      expect(markup).toContain(`/breakdown/whole:seg-loaf/${nutrient}"`);
    }
    for (const { scope } of namedScopes(demo)) {
      expect(markup).toContain(`/breakdown/${scopeText(scope)}/energyKcal"`);
    }
    expect(markup.match(/aria-current="page"/g)).toHaveLength(2);
    expect(markup).toMatch(/<a href="[^"]*\/whole:seg-loaf\/energyKcal\/table\.csv"[^>]* download/);
  });
});

test('an open number shows no number of its own, what it lacks, and the way to fill it in', () => {
  const markup = page('day', 'sodium');
  const [head = ''] = markup.split('<table');
  expect(words(head)).toContain('sodium open no grams for Salt to taste');
  expect(words(head)).not.toMatch(/\d+ mg/);
  const salt = demo.episode.segments
    .flatMap(({ recipe }) => recipe?.lines ?? [])
    .find(({ text }) => text === 'Salt to taste');
  expect(markup).toContain(`?edit=${salt?.id}#row-${salt?.id}`);
  expect(markup).toMatch(new RegExp(`<tr id="line-${salt?.id}" class="[^"]*hatch`));
  const last = words(markup.match(/<tr.*?<\/tr>/gs)?.at(-1) ?? '');
  expect(last).toMatch(/open$/);
});

test('the day names each dish over its ingredients', () => {
  const markup = page('day', 'protein');
  for (const { title } of demo.episode.segments.filter(({ recipe }) => recipe)) {
    expect(markup).toMatch(new RegExp(`<th scope="colgroup"[^>]*>${title}</th>`));
  }
});

test.each(namedScopes(demo).map(({ scope }) => [scopeText(scope)]))(
  '%s is one well-formed page for every nutrient of the panel',
  (scope) => {
    for (const nutrient of SHOWN_NUTRIENTS.US) {
      const markup = page(scope, nutrient);
      expect(markup.match(/<h1/g)).toHaveLength(1);
      const ids = [...markup.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]);
      expect(new Set(ids).size).toBe(ids.length);
      expect(markup).not.toMatch(/NaN|undefined|Infinity/);
    }
  },
);

describe('addresses', () => {
  test('name the amount and the nutrient, whatever stands in an id', () => {
    const scope = { kind: 'whole', segmentId: 'a/b?c:d' } as const;
    expect(breakdownHref('e', scope, 'protein')).toBe(
      '/episodes/e/breakdown/whole:a%2Fb%3Fc%3Ad/protein',
    );
    expect(breakdownRowHref('e', { kind: 'day' }, 'fat', 'l1')).toBe(
      '/episodes/e/breakdown/day/fat#line-l1',
    );
  });
});
