import { readFileSync, writeFileSync } from 'node:fs';
import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true });

const bundleOf = 'All as one zip';

test('an episode goes to another machine in one zip, with its lock, its copied text and all of its pages', async ({
  page,
  elsewhere,
}, info) => {
  test.slow();
  const here = await demo(page);
  await page.goto(`${here}/publish`);
  const lock = page.getByRole('region', { name: 'Numbers lock' });
  await lock.getByRole('button', { name: 'Lock the numbers' }).click();
  await expect(lock).toContainText(/Numbers locked .*Lock 1: /);
  const hash = (await lock.getByText(/SHA-256/).textContent()) ?? '';

  await page.goto(here);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: bundleOf }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('one-oven-three-dishes-a-whole-harbor-day.bundle.zip');
  const path = info.outputPath('bundle.zip');
  await download.saveAs(path);

  // There: nothing of a person yet.
  await page.goto(elsewhere.url);
  await page.getByText('Bring in an episode file').click();
  await page.getByLabel('Episode file').setInputFiles(path);
  await page.getByRole('button', { name: 'Bring it in' }).click();
  await page.waitForURL(/\/episodes\/[0-9a-f-]{36}$/);
  // The very same names of things, so that the lock means the same.
  expect(new URL(page.url()).pathname).toBe(here);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('One oven, three dishes');

  await page.goto(`${elsewhere.url}${here}/publish`);
  await expect(lock).toContainText(/Numbers locked .*Lock 1: /);
  await expect(lock).toContainText('nothing under them has changed');
  await expect(lock).toContainText(hash);

  // Once more into the same place it is a second episode, and its locks are history, in words.
  await page.goto(elsewhere.url);
  await page.getByText('Bring in an episode file').click();
  await page.getByLabel('Episode file').setInputFiles(path);
  await page.getByRole('button', { name: 'Bring it in' }).click();
  await page.waitForURL(/\/episodes\/[0-9a-f-]{36}\/corrections$/);
  expect(page.url()).not.toContain(here);
  await expect(page.getByText('Locks kept as history')).toBeVisible();
  await expectAccessible(page);
  await page
    .getByRole('navigation', { name: 'Episode' })
    .getByRole('link', { name: 'Publish' })
    .click();
  await expect(lock).toContainText('Not locked: a draft');
});

test('a zip that is no bundle is refused in words that say what and where', async ({
  page,
}, info) => {
  const here = await demo(page);
  const bundle = await page.request.get(`${here}/export/bundle`);
  expect(bundle.headers()['content-type']).toBe('application/zip');
  const whole = await bundle.body();
  const path = info.outputPath('other.zip');
  const bring = async (bytes: Buffer) => {
    writeFileSync(path, bytes);
    expect(readFileSync(path).length).toBe(bytes.length);
    await page.goto('/');
    await page.getByText('Bring in an episode file').click();
    await page.getByLabel('Episode file').setInputFiles(path);
    await page.getByRole('button', { name: 'Bring it in' }).click();
  };
  await bring(whole.subarray(0, 5000));
  await expect(page.getByText(/This is no whole zip file/).first()).toBeVisible();
  const renamed = whole.toString('latin1').replaceAll('episode.json', 'episodf.json');
  await bring(Buffer.from(renamed, 'latin1'));
  await expect(page.getByText(/episode\.json: It is not in the zip/).first()).toBeVisible();
  await expectAccessible(page);
});
