import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import type { EpisodeFile } from '#lib/episode/schema';
import { bringIn } from './bring-in';
import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true });

const TITLE = 'Quick suppers';

/** An episode of the demo's shortest dish alone, in its kitchen, without a day of its own. */
function supper(): EpisodeFile {
  const all = JSON.parse(readFileSync('seed/demo.episode.json', 'utf8')) as EpisodeFile;
  // Swaps and pieces are of the other dishes too.
  const { publish: _, ...file } = all;
  const dishes = file.episode.segments.filter(({ recipe, steps }) => recipe && steps.length > 0);
  const [dish] = [...dishes].sort((a, b) => a.steps.length - b.steps.length);
  if (!dish) throw new Error('the demo has a dish with steps');
  const steps = new Set(dish.steps.map(({ id }) => id));
  return {
    ...file,
    day: null,
    said: [],
    episode: {
      ...file.episode,
      title: TITLE,
      segments: [dish],
      targets: [],
      links: file.episode.links.filter((l) => steps.has(l.fromStepId) && steps.has(l.toStepId)),
    },
  };
}

const address = (page: Page): string => {
  const { pathname, search } = new URL(page.url());
  return pathname + search;
};

test('a second episode comes to a day, stands on its sheet and its live page, and what is done shows on both', async ({
  page,
  pageErrors,
}) => {
  const other = await bringIn(page, supper());
  const day = `${await demo(page)}/day`;
  await page.goto(day);
  await page.getByText('Another day, or another episode on this one').click();
  await page.getByRole('link', { name: TITLE }).click();
  await page.waitForURL(/[?&]with=/);
  await page.getByRole('button', { name: 'Film it on this day' }).click();
  await expect(page.getByText('Choose what of it is filmed that day.').first()).toBeVisible();
  await expectAccessible(page);
  const dish = supper().episode.segments[0]?.title ?? '';
  await page.getByRole('combobox', { name: dish, exact: true }).selectOption('all of it');
  await page.getByRole('button', { name: 'Film it on this day' }).click();
  const also = page.getByRole('region', { name: 'Filmed on this day too' });
  await expect(also.getByRole('link', { name: TITLE })).toBeVisible();
  await expectAccessible(page);

  const named = `${dish} (${TITLE})`;
  const order = page.getByRole('list', { name: 'In the order of doing' });
  await expect(order.getByText(`(${TITLE})`).first()).toBeVisible();
  const sheet = await page.request.get(`${day}/day-sheet.txt`);
  expect(await sheet.text()).toContain(`Wash up ${named}`);

  await also.getByRole('link', { name: TITLE }).click();
  await page.waitForURL((url) => url.pathname === `${other}/day`);
  const theirs = address(page);
  await page.getByRole('link', { name: 'On the day', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'On the day' })).toBeVisible();
  const now = page.getByRole('region', { name: 'Now' });
  const button = now.getByRole('button', { name: /^Done / }).first();
  const title = ((await button.textContent()) ?? '').replace('Done ', '');
  await button.click();
  const back = { name: `Not done after all ${title}` };
  await expect(page.getByRole('button', back).first()).toBeVisible();
  const status = page.getByRole('status').first();
  await expect(status).toHaveText('Connected: every entry has arrived.');
  await page.goto(`${day}/live`);
  await expect(page.getByRole('button', back).first()).toBeVisible();

  await page.goto(theirs);
  await page.getByRole('button', { name: `Take ${TITLE} off this day` }).click();
  await page.waitForURL((url) => url.pathname === `${other}/day` && url.search === '');
  await page.goto(day);
  await expect(page.getByRole('region', { name: 'Filmed on this day too' })).toBeHidden();
  expect(pageErrors).toEqual([]);
});

test('an episode gets a second day, and each segment says on which it is done', async ({
  page,
}) => {
  const day = `${await demo(page)}/day`;
  await page.goto(day);
  await page.getByText('Another day, or another episode on this one').click();
  await page.getByRole('button', { name: 'Make another day' }).click();
  await page.waitForURL(/[?&]day=/);
  const days = page.getByRole('navigation', { name: 'Filming days' });
  await expect(days.getByRole('link')).toHaveCount(2);
  await expect(days.getByRole('link').nth(1)).toHaveAttribute('aria-current', 'page');
  await expectAccessible(page);
  await days.getByRole('link').first().click();
  await expect(page.getByText('this day: all of it').first()).toBeVisible();
});
