import type { Page } from '@playwright/test';
import type { EpisodeFile } from '../../lib/episode/schema';
import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true });

/** The demo's address. */
async function openDemo(page: Page): Promise<string> {
  await page.goto('/');
  const link = page.getByRole('link', { name: /One oven, three dishes/ }).first();
  const episode = (await link.getAttribute('href')) ?? '';
  await page.goto(`${episode}/edit/timeline`);
  return episode;
}

async function pointsOf(page: Page, episode: string) {
  const file = (await (await page.request.get(`${episode}/export`)).json()) as EpisodeFile;
  return {
    rate: file.episode.rate,
    dropFrame: file.episode.dropFrame,
    perMinute: file.creator.wordsPerMinute,
    points: file.episode.segments.map(({ inFrame, outFrame }) => [inFrame, outFrame]),
  };
}

const HARBOR = 'Good morning from the harbor';
const SKILLET = 'Barley skillet';

test('segments take their beginnings from captions, and a chapter is mended', async ({ page }) => {
  test.slow();
  const episode = await openDemo(page);
  const captions = page.getByRole('region', { name: 'Beginnings from captions' });
  const skillet = captions.getByRole('checkbox', { name: new RegExp(SKILLET) });
  // Offered, never assumed: what has a place already is not ticked.
  await expect(skillet).not.toBeChecked();
  await expect(captions.getByText(/First the barley skillet/)).toBeVisible();
  await skillet.check();
  await captions.getByRole('checkbox', { name: new RegExp(HARBOR) }).check();
  await captions.getByRole('button', { name: 'Take the ticked beginnings' }).click();
  await expect(page.getByText('Take beginnings from rehearsal-thursday.vtt').last()).toBeVisible();
  // 1.2 s and 46.0 s in the captions are frames 30 and 1150 at 25 a second; the first ends where the second begins.
  const { points } = await pointsOf(page, episode);
  expect(points.slice(0, 2)).toEqual([
    [30, 1150],
    [1150, 4875],
  ]);

  const chapters = page.getByRole('region', { name: 'Chapters' });
  await expect(chapters.getByText(/the first chapter must start at 0:00/)).toBeVisible();
  await chapters.getByRole('button', { name: /let .* begin at 0:00/ }).click();
  await expect(chapters.getByText(/They keep the rules/)).toBeVisible();
  expect((await pointsOf(page, episode)).points[0]).toEqual([0, 1150]);

  const lines = await (await page.request.get(`${episode}/edit/timeline/chapters.txt`)).text();
  expect(lines.split('\n').slice(0, 2)).toEqual([`0:00 ${HARBOR}`, `0:46 ${SKILLET}`]);
  const ffmpeg = await page.request.get(`${episode}/edit/timeline/chapters.ffmetadata`);
  expect(await ffmpeg.text()).toMatch(
    /^;FFMETADATA1\n\[CHAPTER\]\nTIMEBASE=1\/1000\nSTART=0\nEND=46000\n/,
  );
  const webVtt = await page.request.get(`${episode}/edit/timeline/chapters.vtt`);
  expect(await webVtt.text()).toContain(`00:00.000 --> 00:46.000\n${HARBOR}`);
  const href = await page.getByRole('link', { name: /as SubRip/ }).getAttribute('href');
  const subRip = await (await page.request.get(href ?? '')).text();
  expect(subRip.slice(0, 40)).toMatch(/^1\r\n00:00:01,200 --> 00:00:04,600\r\n/);
});

test('a cut is nudged by keys and buttons, typed, refused and saved', async ({ page }) => {
  test.slow();
  const episode = await openDemo(page);
  const begins = page.getByRole('textbox', { name: `${SKILLET}: begins at` });
  const before = page.getByRole('textbox', { name: `${HARBOR}: ends before` });
  await expect(begins).toHaveValue('00:00:45:00');
  await begins.focus();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('PageUp');
  await expect(begins).toHaveValue('00:00:46:01');
  // The cut that both share moved for both.
  await expect(before).toHaveValue('00:00:46:01');
  await page.getByRole('button', { name: `−1 f, ${SKILLET}: begins at` }).click();
  await expect(begins).toHaveValue('00:00:46:00');

  await before.fill('00:00:45:30');
  await page.getByRole('button', { name: 'Save the times' }).click();
  const form = page.locator('#cut-points');
  await expect(form.getByRole('alert')).toContainText('frames go up to 24, not 30');
  await expect(before).toHaveValue('00:00:45:30');
  await expectAccessible(page);

  await before.fill('00:00:45:00');
  await expect(form.getByText(/1 s between .* belong to no segment/)).toBeVisible();
  await form.getByRole('button', { name: `Let “${HARBOR}” end where “${SKILLET}” begins` }).click();
  await expect(before).toHaveValue('00:00:46:00');
  await page.getByRole('button', { name: 'Save the times' }).click();
  await expect(form.getByRole('status').first()).toContainText('done');
  expect((await pointsOf(page, episode)).points.slice(0, 2)).toEqual([
    [0, 1150],
    [1150, 4875],
  ]);

  await page.getByText('Another rate').click();
  await page.getByLabel('Frames a second').selectOption('29.97df');
  await page.getByRole('button', { name: 'Count at this rate' }).click();
  await expect(page.locator('#frame-rate').getByRole('alert')).toContainText('say what stays');
  await page.getByLabel('What stays').selectOption('times');
  await page.getByRole('button', { name: 'Count at this rate' }).click();
  await expect(begins).toHaveValue('00:00:45;29');
  const converted = await pointsOf(page, episode);
  expect(converted.rate).toEqual({ num: 30_000, den: 1001 });
  expect(converted.dropFrame).toBe(true);
  // 46 s are 1378.6 frames at 30000/1001: the nearest is 1379 (SMPTE ST 12-1 rate).
  expect(converted.points[1]?.[0]).toBe(1379);

  // Numbered otherwise, the frames stay: frame 1379 is number 29 of second 45 either way, before the first minute ends.
  await page.getByLabel('Frames a second').selectOption('29.97');
  await page.getByRole('button', { name: 'Count at this rate' }).click();
  await expect(begins).toHaveValue('00:00:45:29');
  // Kept with the episode, not with the device.
  await page.context().clearCookies();
  const numbered = await pointsOf(page, episode);
  expect(numbered).toEqual({ ...converted, dropFrame: false });
});

test('places come from an edit list that was pasted, with what was skipped by line', async ({
  page,
}) => {
  test.slow();
  const episode = await openDemo(page);
  const list = page.getByRole('region', { name: 'Places from an edit list' });
  await list.getByLabel('Edit list').fill('hello');
  await list.getByRole('button', { name: 'Read the list' }).click();
  await expect(list.getByRole('alert')).toContainText('No event of picture');
  await expect(list.getByLabel('Edit list')).toHaveValue('hello');
  await list
    .getByLabel('Edit list')
    .fill(
      [
        'TITLE: HARBOR DAY',
        'FCM: NON-DROP FRAME',
        '001  AX   V C 00:00:00:00 00:00:40:00 01:00:00:00 01:00:40:00',
        '* FROM CLIP NAME: good morning harbor, take 2',
        '002  AX   V C 00:00:00:00 00:02:00:00 01:00:40:00 01:02:40:00',
        '* FROM CLIP NAME: barley skillet wide',
        '003  B041 V C 00:00:00:00 00:00:10:00 01:02:40:00 01:02:50:00',
        '004  AX   V C 00:00:61:00 00:00:10:00 01:02:50:00 01:03:00:00',
      ].join('\n'),
    );
  await list.getByRole('button', { name: 'Read' }).click();
  await expect(list.getByText('2 segments were found in it')).toBeVisible();
  await expect(list.getByRole('listitem').filter({ hasText: 'B041' })).toContainText(
    'line 7, skipped',
  );
  await expect(list.getByRole('listitem').filter({ hasText: 'Seconds go up to 59' })).toContainText(
    'line 8, skipped',
  );
  await list.getByRole('checkbox', { name: new RegExp(SKILLET) }).check();
  await list.getByRole('button', { name: 'Take the ticked places' }).click();
  await expect(page.getByText('Take places from an edit list').last()).toBeVisible();
  // From the list's first picture: 40 s to 2:40 at 25 a second.
  expect((await pointsOf(page, episode)).points[1]).toEqual([1000, 4000]);
  await expect(page.locator('#cut-points')).toContainText(
    '35 s between “Barley skillet” and “Tray-baked turkey meatloaf” belong to no segment.',
  );
});

test('a speaking rate is measured, kept, and planned lengths follow', async ({ page }) => {
  test.slow();
  const episode = await openDemo(page);
  await expect(page.getByText('150 words a minute', { exact: true })).toBeVisible();
  const keep = page.getByRole('button', { name: /^Keep \d+ as mine/ });
  const measured = Number(/\d+/.exec((await keep.textContent()) ?? '')?.[0]);
  await keep.click();
  await expect(page.getByText(`${measured} words a minute`, { exact: true })).toBeVisible();
  expect((await pointsOf(page, episode)).perMinute).toBe(measured);
  await page.getByRole('button', { name: 'Reckon with 150 again' }).click();
  await expect(page.getByText('150 words a minute', { exact: true })).toBeVisible();
});

test('a short chapter is joined with the one before by a press, and taken apart again', async ({
  page,
}) => {
  test.slow();
  const episode = await openDemo(page);
  const chapters = page.getByRole('region', { name: 'Chapters' });
  const listOf = async () =>
    (await (await page.request.get(`${episode}/edit/timeline/chapters.txt`)).text()).split('\n');
  const before = await listOf();
  const points = (await pointsOf(page, episode)).points;
  await page.getByRole('textbox', { name: `${SKILLET}: begins at` }).fill('00:00:05:00');
  await page.getByRole('textbox', { name: `${HARBOR}: ends before` }).fill('00:00:05:00');
  await page.getByRole('button', { name: 'Save the times' }).click();
  await expect(chapters.getByText(/lasts 5 s; a chapter needs 10 s/)).toBeVisible();

  await chapters.getByRole('button', { name: `join “${HARBOR}” with “${SKILLET}”` }).click();
  await expect(chapters.getByText(/They keep the rules/)).toBeVisible();
  const joined = await listOf();
  expect(joined[0]).toBe(`0:00 ${HARBOR}, ${SKILLET}`);
  expect(joined).toHaveLength(before.length - 1);
  // Both segments stay where they are.
  expect((await pointsOf(page, episode)).points.slice(0, 2)).toEqual([
    [0, 125],
    [125, points[1]?.[1]],
  ]);
  const webVtt = await page.request.get(`${episode}/edit/timeline/chapters.vtt`);
  expect(await webVtt.text()).toContain(`\n${HARBOR}, ${SKILLET}\n`);
  await expectAccessible(page);

  await chapters.getByRole('button', { name: `let “${SKILLET}” be its own chapter again` }).click();
  await expect(chapters.getByText(/lasts 5 s; a chapter needs 10 s/)).toBeVisible();
  expect(await listOf()).toHaveLength(before.length);
});
