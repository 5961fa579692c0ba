import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import type { EpisodeFile } from '../../lib/episode/schema';
import type { DayEvent, Entry } from '../../lib/shoot/day-log';
import { pass, setClock } from './day-clock';
import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true });

const SKILLET = 'Barley skillet';

/** The address of the demo's filming day, and the demo as a file. */
async function openDemo(page: Page): Promise<{ path: string; file: EpisodeFile }> {
  await page.goto('/');
  const link = page.getByRole('link', { name: /One oven, three dishes/ }).first();
  const episode = (await link.getAttribute('href')) ?? '';
  const file = (await (await page.request.get(`${episode}/export`)).json()) as EpisodeFile;
  return { path: `${episode}/day`, file };
}

/** Sends entries as a device does, each at its clock time on the filming day. */
async function enter(
  page: Page,
  path: string,
  file: EpisodeFile,
  entries: readonly (readonly [clock: string, entry: Entry])[],
): Promise<void> {
  const events = entries.map(([clock, entry], index): DayEvent => ({
    ...entry,
    id: `sent-${index}`,
    deviceId: 'laptop',
    deviceSeq: index + 1,
    at: new Date(`2026-12-12T${clock}+01:00`).toISOString(),
  }));
  const data = { dayId: file.day?.id, events };
  const answer = await page.request.post(`${path}/events`, { data });
  expect(answer.ok(), await answer.text()).toBe(true);
}

const row = (page: Page, title: string) =>
  page
    .getByRole('region', { name: /^Planned and actual/ })
    .getByRole('row')
    .filter({ hasText: title });

test('what steps took is seen beside the plan, taken as expected, and undone', async ({ page }) => {
  test.slow();
  await setClock(page, '09:00');
  const { path, file } = await openDemo(page);
  await page.goto(`${path}/live`);
  const now = page.getByRole('region', { name: 'Now' });
  await now.getByRole('button', { name: 'Start Weigh and chop' }).click();
  await pass(page, 22);
  await page.reload();
  await now.getByRole('button', { name: /^Done Weigh and chop/ }).click();
  await expect(page.getByRole('status').first()).toHaveText(/every entry has arrived/);

  const dish = file.episode.segments.find(({ title }) => title === SKILLET);
  const stepId = (title: string) => dish?.steps.find((step) => step.title === title)?.id ?? '';
  const mark = (kind: 'started' | 'done' | 'skipped', title: string): Entry => ({
    kind,
    refs: { stepId: stepId(title) },
    payload: {},
  });
  await enter(page, path, file, [
    ['10:00:00', mark('started', 'Toast the barley')],
    ['10:08:00', mark('done', 'Toast the barley')],
    ['10:10:00', mark('started', 'Plate it and show it hot')],
    ['10:10:20', mark('done', 'Plate it and show it hot')],
    ['10:20:00', mark('skipped', 'Say the number over the plate')],
  ]);

  await page.goto(path);
  await page.getByRole('link', { name: 'After the day' }).click();
  await expect(page.getByText('2 of 34 steps have a start and an end')).toBeVisible();
  await expect(row(page, 'Weigh and chop')).toContainText('22 min7 min more');
  await expect(row(page, 'Toast the barley')).toContainText('4–5–7 min8 min3 min more');
  await expect(row(page, 'Plate it and show it hot')).toContainText('was it done so soon');
  await page.getByText('31 steps without a time').click();
  const skipped = page.getByRole('listitem').filter({ hasText: 'Say the number over the plate' });
  await expect(skipped).toContainText('2–4–8 min: skipped');
  await expectAccessible(page);

  await page.getByRole('button', { name: 'Take all 2 as expected minutes' }).click();
  await expect(row(page, 'Toast the barley')).toContainText('4–8–8 min8 minas planned');
  await expect(row(page, 'Weigh and chop')).toContainText('12–22–22 min');
  // The doubtful one is not among them.
  await expect(row(page, 'Plate it and show it hot')).toContainText('4–6–12 min');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(row(page, 'Toast the barley')).toContainText('4–5–7 min');

  await row(page, 'Toast the barley')
    .getByRole('button', { name: /^Expect 8 min/ })
    .click();
  await expect(row(page, 'Toast the barley')).toContainText('4–8–8 min');
  await expect(row(page, 'Weigh and chop')).toContainText('12–15–22 min');

  // A method that says no minutes has them from this day.
  await page.goto(`${path}?edit=new-method-${dish?.id ?? ''}`);
  await page.getByLabel('Method', { exact: true }).fill('Toast the barley.');
  await page.getByRole('button', { name: 'Read the method' }).click();
  await expect(page.getByText('from the last time here: 8 min')).toBeVisible();
});

test('takes have timecodes from one picture of the clock, and come as files for the edit', async ({
  page,
}) => {
  const { path, file } = await openDemo(page);
  const dish = file.episode.segments.find(({ title }) => title === SKILLET);
  const [first, second] = dish?.shots ?? [];
  const stepId = dish?.steps[0]?.id ?? '';
  const take = (shotId = '', good = true): Entry => ({
    kind: 'take',
    refs: { stepId },
    payload: { shotId, good },
  });
  await enter(page, path, file, [
    ['09:05:10', take(first?.id, false)],
    ['09:05:30', { kind: 'note', refs: { stepId }, payload: { text: 'Lid rattles' } }],
    ['09:06:00', take(first?.id)],
    ['09:10:00', take(second?.id)],
  ]);
  const after = `${path}/after`;
  await page.goto(after);
  const takes = page.getByRole('region', { name: 'Takes in the order of the day' });
  await expect(takes.getByRole('row').nth(1)).toContainText('2A take 1');
  await expect(takes.getByRole('row').nth(1)).toContainText('Lid rattles');
  await expect(page.getByRole('link', { name: 'Edit decision list' })).toBeHidden();
  expect((await page.request.get(`${after}/takes.edl`)).status()).toBe(404);

  await page.getByLabel('The clock shows').fill('09:05');
  await page.getByLabel('Timecode of the picture').fill('10:00:00;00');
  await page.getByLabel('Frames a second').selectOption('25');
  await page.getByRole('button', { name: 'Give the takes their timecodes' }).click();
  await expect(page.getByLabel('The clock shows')).toHaveAttribute('aria-invalid', 'true');
  await expect(page.getByLabel('Timecode of the picture')).toHaveAttribute('aria-invalid', 'true');
  await expectAccessible(page);

  await page.getByLabel('The clock shows').fill('09:05:00');
  await page.getByLabel('Frames a second').selectOption('29.97df');
  await page.getByRole('button', { name: 'Give the takes their timecodes' }).click();
  await expect(takes.getByRole('row').nth(1)).toContainText('10:00:10;00');
  await expect(takes.getByRole('row').nth(2)).toContainText('2A take 2');
  await expectAccessible(page);

  const text = async (name: string) => {
    const downloading = page.waitForEvent('download');
    await page.locator('#takes ~ p').getByRole('link', { name }).click();
    const download = await downloading;
    return {
      name: download.suggestedFilename(),
      text: await readFile(await download.path(), 'utf8'),
    };
  };
  const table = await text('Table');
  expect(table.name).toBe('takes.csv');
  expect(table.text).toContain('2A,1,again,');
  expect(table.text).toContain('09:05:10,10:00:10;00,');
  expect(table.text).toContain('Lid rattles');
  const list = await text('Edit decision list');
  expect(list.text).toContain('FCM: DROP FRAME\n');
  expect(list.text).toContain('* FROM CLIP NAME: 2B take 1, good\n');
  const timeline = JSON.parse((await text('Timeline with markers')).text);
  expect(timeline.tracks.markers.map(({ name }: { name: string }) => name)).toEqual([
    '2A take 1, again',
    '2A take 2, good',
    '2B take 1, good',
  ]);
});
