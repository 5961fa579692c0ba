import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { namedScopes, scopeFrom, scopeText } from '#lib/figures/breakdown-scope';
import { episodeFigures } from '#lib/figures/episode-figures';
import { confirmedOnly, publishedNumbers } from '#lib/figures/published-numbers';
import { HEADLINE_NUTRIENTS, SHOWN_NUTRIENTS } from '#lib/figures/shown-nutrients';
import { inputsHash } from '#lib/lock/numbers-lock';
import { isNutrient } from '#lib/foods/nutrients';
import { description } from '#lib/publish/description';
import { DEFAULT_LAYOUT } from '#lib/publish/description/layout';
import { structuredData } from '#lib/publish/structured/structured-data';
import { EpisodeView } from '../../app/episodes/[id]/_components/episode-view';
import { NumbersView } from '../../app/episodes/[id]/numbers/_components/numbers-view';
import { PublishView } from '../../app/episodes/[id]/publish/_components/publish-view';
import { demoFile, words } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  usePathname: () => '/',
  useRouter: () => ({ push: () => undefined }),
  redirect: vi.fn(),
}));

const demo = demoFile();

function pages(file: EpisodeFile) {
  const figures = episodeFigures(file);
  const numbers = publishedNumbers(file, figures);
  const view = { file, figures, numbers, revs: {}, others: {}, editing: null };
  const text = description(file, figures);
  const page = {
    ...{ file, figures, numbers: confirmedOnly(numbers), description: text, revs: {} },
    ...{
      lock: null,
      last: null,
      inputsSha256: inputsHash(file),
      copied: [],
      pieces: [],
      said: [],
      promises: [],
    },
    structured: structuredData({ file, figures, numbers }),
    ...{ ofLock: false, putRight: null, changed: [], layout: DEFAULT_LAYOUT },
  };
  return {
    episode: renderToStaticMarkup(
      <EpisodeView view={view} stage="filmingSet" numbers="draft" totalS={1} last={null} />,
    ),
    numbers: renderToStaticMarkup(
      <NumbersView
        view={view}
        description={text}
        lock={{ standing: 'draft', ofLock: false, at: null, reason: null }}
      />,
    ),
    publish: renderToStaticMarkup(<PublishView page={page} />),
  };
}

/** Where the links of a page to breakdowns lead: amount, nutrient, and the ingredient's row. */
function targets(markup: string): { scope: string; nutrient: string; row: string }[] {
  const links = markup.matchAll(
    / href="\/episodes\/[^/"]+\/breakdown\/([^/"]+)\/([^"#]+)#?([^"]*)"/g,
  );
  return [...links].map(([, scope = '', nutrient = '', row = '']) => ({
    scope: decodeURIComponent(scope),
    nutrient,
    row,
  }));
}

describe('the way to breakdowns', () => {
  const shown = pages(demo);

  test.each(Object.entries(shown))(
    'leads from the %s page to breakdowns that are there',
    (_, markup) => {
      const found = targets(markup);
      expect(found.length).toBeGreaterThan(8);
      for (const { scope, nutrient } of found) {
        expect(scopeFrom(demo, scope), scope).not.toBeNull();
        expect(isNutrient(nutrient), nutrient).toBe(true);
      }
    },
  );

  test.each(['episode', 'publish'] as const)(
    'leads from the %s page to every amount that it shows, in every headline nutrient',
    (name) => {
      const found = new Set(
        targets(shown[name]).map(({ scope, nutrient }) => `${scope} ${nutrient}`),
      );
      // The part eaten is not shown by itself: it is one of the portions, or the sum of the day.
      for (const { scope } of namedScopes(demo).filter(({ scope: { kind } }) => kind !== 'eaten')) {
        for (const nutrient of HEADLINE_NUTRIENTS) {
          expect(found).toContain(`${scopeText(scope)} ${nutrient}`);
        }
      }
    },
  );

  test('leads from the whole panel, from each ingredient, from targets and from what is to be said', () => {
    const found = targets(shown.episode);
    for (const nutrient of SHOWN_NUTRIENTS.US) {
      expect(found).toContainEqual({ scope: 'whole:seg-loaf', nutrient, row: '' });
    }
    const loaf = demo.episode.segments.find(({ id }) => id === 'seg-loaf');
    for (const { id } of loaf?.recipe?.lines ?? []) {
      const row = `line-${id}`;
      expect(found).toContainEqual({ scope: 'whole:seg-loaf', nutrient: 'energyKcal', row });
      expect(found).toContainEqual({ scope: 'whole:seg-loaf', nutrient: 'protein', row });
    }
    for (const { id, nutrient } of demo.episode.targets) {
      const row = new RegExp(`<li id="row-${id}".*?</li>`, 's').exec(shown.episode)?.[0] ?? '';
      expect(targets(row)[0]?.nutrient).toBe(nutrient);
    }
    const points = demo.episode.segments.flatMap(({ talkingPoints }) => talkingPoints);
    const bound = points.filter(({ text }) => text.includes('['));
    for (const { id } of bound) {
      const row = new RegExp(`<li id="row-${id}".*?</li>`, 's').exec(shown.episode)?.[0] ?? '';
      expect(targets(row).length).toBeGreaterThan(0);
    }
  });

  test('an open number leads there too, and the link says what it is', () => {
    const links = shown.episode.match(/<a [^>]*\/breakdown\/whole:seg-skillet\/sodium".*?<\/a>/gs);
    expect(words(links?.[0] ?? '')).toBe('open sodium, breakdown');
    const head = shown.episode.match(/<a [^>]*\/breakdown\/whole:seg-loaf\/energyKcal".*?<\/a>/s);
    expect(words(head?.[0] ?? '')).toMatch(/^\d+ kcal likely .* calories, breakdown$/);
  });

  test('no link stands within another', () => {
    for (const markup of Object.values(shown)) {
      for (const [link] of markup.matchAll(/<a .*?<\/a>/gs)) {
        expect(link.match(/<a /g)).toHaveLength(1);
      }
    }
  });
});
