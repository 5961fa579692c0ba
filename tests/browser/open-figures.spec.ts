import type { Page } from '@playwright/test';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { USUAL_RUNS } from '#lib/shoot/likely';
import { incompleteEpisode } from '../support/incomplete-episode';
import { incompleteNumbers, openNumbers, places, telling } from '../support/number-tokens';
import { bringIn } from './bring-in';
import { expect, test } from './fixtures';
import { UNSAID_DAY, UNSAID_DAY_SEGMENT, UNSAID_STEP } from '#lib/episode/unsaid';

test.use({ alone: true });

/** The same with a day on which each dish is cooked, tasted and talked about, so that there is a day sheet. */
function filmed(file: EpisodeFile): EpisodeFile {
  const step = (of: string, role: Step['role']): Step => ({
    id: `${of}-${role}`,
    title: `To ${role} it`,
    role,
    ...{ lowS: 300, usualS: 600, highS: 900, choose: null, hands: true, burners: 0, racks: 0 },
    ...{ oven: null, coreMilliC: null, restS: 0, onCamera: true, daylight: false, note: '' },
    ...UNSAID_STEP,
  });
  const segments = file.episode.segments.map((segment) => ({
    ...segment,
    steps: [step(segment.id, 'cook'), step(segment.id, 'eat')],
  }));
  return {
    ...file,
    episode: { ...file.episode, segments },
    day: {
      id: 'day',
      ...{ date: '2026-12-12', kind: 'packed', mealGapMin: 0, startMin: 540, wrapByMin: 1110 },
      ...{ appointments: [], pins: [], ...UNSAID_DAY },
      segments: segments.map(({ id }) => ({
        ...UNSAID_DAY_SEGMENT,
        id: `day-${id}`,
        segmentId: id,
      })),
    },
  };
}

/** Before a number of which something is missing. */
const SAID = /(at least|at most|what is known adds up to) [\d,.]+$/;

/** What the episode's foods state for 100 g and its portions weigh: numbers of their own beside what is worked out. */
function stated({ foods, episode }: EpisodeFile): ReadonlySet<string> {
  const values = foods.flatMap(({ version }) =>
    Object.values(version.values).flatMap((cell) =>
      cell.kind === 'eq' ? [(cell.mantissa / 10 ** cell.scale).toFixed(cell.scale)] : [],
    ),
  );
  const masses = episode.segments.flatMap(({ recipe }) =>
    (recipe?.portions ?? []).flatMap((each) =>
      each.kind === 'mass' ? [String(each.massMg / 1000)] : [],
    ),
  );
  return new Set([...values, ...masses]);
}

/** All that a page says, folded or not, aloud or in a field: each piece with a space around it. */
async function allWords(page: Page): Promise<string> {
  const said = await page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_ALL);
    const found: string[] = [document.title];
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      if (node instanceof Text && !node.parentElement?.closest('script, style')) {
        found.push(node.data);
      }
      if (!(node instanceof Element)) continue;
      for (const name of ['aria-label', 'title', 'alt', 'placeholder', 'data-copy']) {
        found.push(node.getAttribute(name) ?? '');
      }
      if (node instanceof HTMLInputElement && node.type !== 'hidden') found.push(node.value);
    }
    return found.join(' ');
  });
  return said.replace(/\s+/g, ' ');
}

for (const region of ['US', 'EU'] as const) {
  test(`no page shows a number of what is open, each says of what is incomplete that it is, ${region}`, async ({
    page,
    pageErrors,
  }) => {
    test.slow();
    const file = filmed(incompleteEpisode(region));
    const figures = episodeFigures(file);
    // The day says from how many days made up by chance it knows how likely it is.
    const own = new Set([...stated(file), String(USUAL_RUNS)]);
    const told = (number: string) => !own.has(number) && /[1-9]/.test(number);
    const hidden = openNumbers(figures).filter(told);
    const partial = incompleteNumbers(figures).filter(told);
    expect(hidden.length).toBeGreaterThan(50);
    expect(partial.length).toBeGreaterThan(50);
    const known = figures.dishes.flatMap(({ lines }) =>
      lines.flatMap((line) => (line.figures.energyKcal ? telling(line.figures.energyKcal) : [])),
    );

    const episode = await bringIn(page, file);
    const links = await page
      .locator('main a[href*="/breakdown/"]')
      .evaluateAll((all) => all.map((each) => each.getAttribute('href')?.replace(/#.*/, '') ?? ''));
    const asked = /\/(energyKcal|energyKj|protein|fibre)$/;
    const breakdowns = [...new Set(links)].filter((href) => asked.test(href));
    expect(breakdowns.length).toBeGreaterThan(10);
    const parts = ['', '/numbers', '/publish', '/day', '/day/live', '/shopping', '/changes'];
    const texts = new Map<string, string>();
    for (const path of [...parts.map((part) => episode + part), ...breakdowns]) {
      await page.goto(path);
      await expect(page.getByRole('heading', { level: 1 }).first()).toBeAttached();
      texts.set(path.replace(episode, ''), await allWords(page));
    }

    // One look at each page for all numbers: thousands of them.
    for (const [path, text] of texts) {
      // A breakdown has grams of each ingredient beside: three digits may be those.
      const digits = path.includes('/breakdown/') ? 4 : 3;
      const given = hidden
        .filter((number) => number.replace(/\D/g, '').length >= digits)
        .flatMap((number) => places(text, number));
      expect.soft(given, `open, ${path}`).toEqual([]);
      const bare = partial
        .flatMap((number) => places(text, number))
        .filter((place) => !SAID.test(place));
      expect.soft(bare, `incomplete, ${path}`).toEqual([]);
    }

    // What could be seen is seen: known numbers, the word for the open ones, and "at least" with its number.
    const on = (path: string) => texts.get(path) ?? '';
    expect(known.some((number) => places(on(''), number).length > 0)).toBe(true);
    for (const path of ['', '/numbers', '/publish']) {
      const found = partial.flatMap((number) => places(on(path), number));
      expect(found.length, path).toBeGreaterThan(0);
    }
    expect(on('/day')).toContain('To eat it');
    expect(on('/publish')).toContain('protein open');
    // Its sentences to say: the open dish's have words in the place of their numbers, the other's "at least".
    expect(on('')).toMatch(/All of it: \[\w+ is open\] ?, \[protein is open\]/);
    expect(on('')).toMatch(/All of it: at least [\d,]+/);
    expect(pageErrors).toEqual([]);
  });
}
