import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import { NO_FACTS } from '#lib/claims/edit-facts';
import { saidPlaces } from '#lib/claims/said-places';
import type { EpisodeFile } from '#lib/episode/schema';
import { editStanding } from '#lib/overview/edit-standing';
import { madeOf } from '#lib/overview/made-of';
import { verdictWords } from '#lib/overview/said-rows';
import { stripParts } from '#lib/overview/strip-parts';
import { textStanding } from '#lib/overview/text-standing';
import { aboutChoices } from '../../app/episodes/[id]/edit/about-choices';
import { EditView } from '../../app/episodes/[id]/edit/_components/edit-view';
import { transcriptTexts } from '../../app/episodes/[id]/edit/lines';
import { linkOf } from '../../app/episodes/[id]/edit/link-of';
import { piecesOf, transcriptOf } from '../../app/episodes/[id]/edit/_components/transcript-lines';
import type { EditPage } from '../../app/episodes/[id]/edit/_components/view';
import { demoFile, words } from './page-support';

vi.mock('next/navigation', () => ({
  usePathname: () => '/episodes/e1/edit',
  useSearchParams: () => new URLSearchParams(),
  useRouter: () => ({ push: () => undefined, refresh: () => undefined }),
}));
vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));

function pageOf(file: EpisodeFile, at: string | null = null): EditPage {
  const { texts: _, rows, ...standing } = editStanding(file, NO_FACTS);
  return {
    ...standing,
    rows: rows.map((row) => ({ ...row, link: linkOf('e1', row), mendRev: 1 })),
    episodeId: 'e1',
    title: file.episode.title,
    texts: (file.edit?.texts ?? []).map((text) => ({
      ...text,
      ...textStanding(text),
      ...{ slot: text.id, rev: 1 },
    })),
    made: madeOf(file.episode),
    abouts: aboutChoices(file.episode.segments),
    revs: {},
    last: null,
    version: 'v',
    at,
  };
}

const demo = demoFile();
const page = pageOf(demo);
const markup = renderToStaticMarkup(<EditView page={page} />);

describe('the page of the edit', () => {
  test('says how many stand how, and never that a number is true', () => {
    const told = words(markup);
    expect(told).toContain(`${page.counts.all} statements: ${page.counts.off} are off`);
    expect(told).toContain('never that a number is true');
    expect(page.counts.off).toBeGreaterThan(5);
    expect(page.counts.agrees).toBeGreaterThan(10);
  });

  test('leaves the question of commercial communication to the person and their counsel', () => {
    expect(page.hasClaims).toBe(true);
    expect(words(markup)).toContain('is for you and your counsel to say');
    const { edit: _, ...without } = demo;
    const silent = renderToStaticMarkup(<EditView page={pageOf(without)} />);
    expect(words(silent)).not.toContain('counsel');
  });

  test('has a mark on the strip for each statement, with its place, words and verdict as its name', () => {
    for (const { place, words: said, verdict } of page.rows) {
      const name = `${place}: ${said}, ${verdict}`
        .replaceAll('&', '&amp;')
        .replaceAll('"', '&quot;');
      expect(markup).toContain(`aria-label="${name}"`);
    }
  });

  test('prints every statement with what to say instead', () => {
    const table = /<table.*?<\/table>/s.exec(markup)?.[0] ?? '';
    for (const row of page.rows) {
      const printed = words(table);
      expect(printed).toContain(row.words.replace(/\s+/g, ' '));
      if (row.sayInstead !== null) expect(printed).toContain(`Say: ${row.sayInstead}`);
    }
  });

  test('begins with the way to bring a text in where there is none', () => {
    const { edit: _, ...rest } = demo;
    const episode = {
      ...demo.episode,
      segments: demo.episode.segments.map((each) => ({ ...each, talkingPoints: [] })),
    };
    const empty = renderToStaticMarkup(<EditView page={pageOf({ ...rest, episode })} />);
    expect(words(empty)).toContain('Nothing to hold against the numbers yet');
    expect(empty).toContain('id="new-text"');
    expect(empty).not.toContain('result.png');
  });

  test('shows a chosen statement opened: sentence, why, what to say, how it was read', () => {
    const off = page.rows.find(({ ways }) => ways.card !== null);
    if (!off) throw new Error('the demo has something off with a time');
    const opened = words(renderToStaticMarkup(<EditView page={pageOf(demo, off.id)} />));
    for (const part of [
      off.sentence,
      off.why,
      off.sayInstead ?? '',
      'A correction card',
      'How it was read',
    ]) {
      expect(opened).toContain(part);
    }
    expect(opened).toContain(`from ${off.ways.card?.from ?? ''} to ${off.ways.card?.to ?? ''}`);
  });
});

describe('what the texts became', () => {
  const shown = (file: EpisodeFile, drafted: { left: number } | null) =>
    renderToStaticMarkup(<EditView page={pageOf(file)} drafted={drafted} />);
  const proposed: EpisodeFile = {
    ...demo,
    episode: {
      ...demo.episode,
      segments: demo.episode.segments.map((each) => ({
        ...each,
        recipe: each.recipe && {
          ...each.recipe,
          lines: each.recipe.lines.map((line) => ({ ...line, match: 'provisional' as const })),
        },
      })),
    },
  };

  test('is told right after it was made of them, with what was left out', () => {
    const { dishes, ingredients } = madeOf(demo.episode);
    const markup = shown(demo, { left: 4 });
    expect(words(markup)).toContain(
      `The episode has ${dishes} dishes, ${ingredients} ingredients and`,
    );
    expect(words(markup)).toContain('4 lines became no part of it: see which');
    expect(markup).toContain('href="/episodes/e1/edit/draft#left-out"');
    expect(words(shown(demo, { left: 0 }))).not.toContain('became no part');
    expect(words(shown(demo, null))).not.toContain('The episode has');
  });

  test('asks for a yes to proposed foods as long as one waits, where it is said', () => {
    const { toConfirm, confirmIn } = madeOf(proposed.episode);
    expect(toConfirm).toBeGreaterThan(10);
    const markup = shown(proposed, null);
    expect(words(markup)).toContain(`Confirm the ${toConfirm} foods`);
    expect(markup).toContain(`href="/episodes/e1#confirm-${confirmIn ?? ''}"`);
    expect(words(shown(demo, null))).not.toContain('only proposed');
  });
});

test('each answer to a food that is named and not counted is explained before it is pressed', () => {
  const { named } = page;
  expect(named.length).toBeGreaterThan(0);
  for (const told of [
    'It was eaten: it goes into the ingredients',
    'bought, cooked or shown, and not eaten',
    'only talked about, or an ingredient with another name is it',
  ]) {
    expect(words(markup)).toContain(told);
    expect(words(renderToStaticMarkup(<EditView page={{ ...page, named: [] }} />))).not.toContain(
      told,
    );
  }
});

describe('a price that was said', () => {
  const title = demo.episode.segments.find(({ recipe }) => recipe)?.title ?? '';
  const textOf = (text: string): EpisodeFile => ({
    ...demo,
    edit: {
      texts: [{ id: 't', kind: 'description', name: '', text }],
      mends: [],
      named: [],
    },
  });
  const linkWords = (text: string) =>
    pageOf(textOf(text)).rows.filter((row) => row.link?.words === 'Enter the prices');

  test('leads to where prices are entered while none is known', () => {
    const [row, ...more] = linkWords(`${title}\n\nThe whole dish costs 7 dollars.`);
    expect(more).toEqual([]);
    expect(row?.standing).toBe('unknown');
    expect(row?.link?.href).toBe('/episodes/e1/shopping#no-price');
  });

  test('does not where no price would decide it', () => {
    expect(linkWords('I paid 7 dollars for it.')).toEqual([]);
  });
});

describe('the transcript', () => {
  const texts = transcriptTexts(saidPlaces(demo));
  const { lines, lineOf } = transcriptOf(texts, page.rows);

  test('has every statement at the line in which its words begin', () => {
    for (const row of page.rows) {
      const line = lines[lineOf.get(row.id) ?? -1];
      if (line?.kind !== 'line') throw new Error(`${row.words} stands nowhere`);
      expect(line.text.id).toBe(row.textId);
      expect(row.start).toBeGreaterThanOrEqual(line.start);
      expect(row.start).toBeLessThan(line.end);
    }
  });

  test('loses no letter and says none twice', () => {
    for (const text of texts) {
      const own = lines.filter((line) => line.kind === 'line' && line.text.id === text.id);
      const all = own.flatMap((line) => (line.kind === 'line' ? piecesOf(line) : []));
      expect(all.map((piece) => piece.words).join('')).toBe(text.text);
    }
  });
});

test.each([
  ['38 calories more than your breakdown', 'off by 38 calories'],
  ['28 g less than on your scale', 'off by 28 g'],
  ['about 4 g of protein more than your breakdown', 'off by 4 g of protein'],
  [null, 'off'],
])('%s is told as %s', (difference, told) => {
  expect(verdictWords({ verdict: 'off', difference })).toBe(told);
});

test('segments stand on the strip from their first frame to their last, one without an end until the next', () => {
  const [first, second] = demo.episode.segments;
  if (!first || !second) throw new Error('the demo has segments');
  const segments = [
    { ...first, inFrame: 0, outFrame: null },
    { ...second, inFrame: 2997, outFrame: 5994 },
  ];
  const parts = stripParts({ segments, rate: { num: 30_000, den: 1001 } }, 300_000);
  // 2997 frames at 30000/1001 a second are 99.9999 s (SMPTE ST 12-1 counts them as 00:01:40;01 less a frame).
  expect(parts.map(({ fromMs, toMs }) => [fromMs, toMs])).toEqual([
    [0, 99_999.9],
    [99_999.9, 199_999.8],
  ]);
});
