import { readFileSync } from 'node:fs';
import { PNG } from 'pngjs';
import { fromBufferPromise } from 'yauzl';
import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true });

/** Pictures of the page before are still drawn when the next is asked for. */
const WHILE_DRAWN = { timeout: 60_000 } as const;

test('cards are looked at, asked for otherwise, and taken away one by one and all in one zip', async ({
  page,
}) => {
  test.slow();
  await page.goto('/');
  const href = await page.locator('a[href*="/episodes/"]').first().getAttribute('href');
  const [here = ''] = /\/episodes\/[0-9a-f-]{36}/.exec(href ?? '') ?? [];

  await page.goto(`${here}/publish`);
  await page.getByRole('link', { name: 'Cards with these numbers' }).click();
  await expect(page).toHaveURL(new RegExp(`${here}/cards`));
  const main = page.getByRole('main');
  await expect(main).toContainText('Each card says “not locked”');
  const skillet = page.getByRole('region', { name: 'Barley skillet' });
  const numbers = skillet.getByRole('img', {
    name: /^numbers: the whole dish; Barley skillet; \d+ kcal/,
  });
  await numbers.scrollIntoViewIfNeeded();
  await expect(numbers).toBeVisible();
  await expect(numbers).toHaveJSProperty('complete', true, WHILE_DRAWN);
  await expect
    .poll(() => numbers.evaluate((image: HTMLImageElement) => image.naturalWidth), WHILE_DRAWN)
    .toBe(1920);
  await expect(skillet).toContainText('00:00:45:00 to 00:00:50:00');
  await expect(skillet).toContainText('no place yet');
  await expectAccessible(page);

  // Printed, no picture is left blank for not having been scrolled to.
  await page.reload();
  await page.emulateMedia({ media: 'print' });
  const pictures = main.getByRole('img');
  const drawnPictures = () =>
    pictures.evaluateAll(
      (all) =>
        all.filter((each) => each instanceof HTMLImageElement && each.naturalWidth > 0).length,
    );
  await expect.poll(drawnPictures, WHILE_DRAWN).toBe(await pictures.count());
  const last = PNG.sync.read(await pictures.last().screenshot());
  expect(new Set(last.data).size).toBeGreaterThan(20);
  await page.emulateMedia({ media: null });

  // By keyboard: another size and ground, kept in the address.
  await page
    .getByRole('navigation', { name: 'Size' })
    .getByRole('link', { name: /upright/ })
    .focus();
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/size=1080x1920/, WHILE_DRAWN);
  await page.getByRole('link', { name: /letters with an edge/ }).click();
  await expect(page).toHaveURL(/ground=outline/, WHILE_DRAWN);
  await expect(page.getByRole('link', { name: /upright/ })).toHaveAttribute('aria-current', 'true');

  const png = page.waitForEvent('download');
  await skillet.getByRole('link', { name: /^PNG of 01-/ }).click();
  const picture = await png;
  expect(picture.suggestedFilename()).toBe('01-barley-skillet-macros-1080x1920.png');
  const { width, height } = PNG.sync.read(readFileSync(await picture.path()));
  expect([width, height]).toEqual([1080, 1920]);

  const zip = page.waitForEvent('download');
  await page.getByRole('link', { name: 'All cards in one zip' }).click();
  const all = await zip;
  const entries: string[] = [];
  const opened = await fromBufferPromise(readFileSync(await all.path()));
  for await (const { fileName } of opened.eachEntry()) entries.push(fileName);
  expect(entries[0]).toBe('01-barley-skillet-macros-1080x1920.png');
  expect(entries.slice(-3)).toEqual(['cards.vtt', 'cards.csv', 'cards.otio']);
  await expect(page.getByRole('status').filter({ hasText: 'All' })).toContainText(
    /All \d+ cards are drawn/,
  );

  const list = await page.request.get(`${here}/cards/cards.csv`);
  expect(await list.text()).toContain('01-barley-skillet-macros-1920x1080.png');
  expect((await page.request.get(`${here}/cards/99-none-1920x1080.png`)).status()).toBe(404);

  // Locked, the mark is gone.
  await page.goto(`${here}/publish`);
  await page.getByRole('button', { name: 'Lock the numbers' }).click();
  await expect(page.getByRole('region', { name: 'Numbers lock' })).toContainText(
    /Numbers locked .*Lock 1: /,
  );
  await page.goto(`${here}/cards`);
  await expect(main).toContainText('Numbers locked');
  await expect(skillet.getByRole('img').first()).not.toHaveAttribute('alt', /not locked/);
  expect((await page.request.get(`${here}/cards/cards.otio`)).status()).toBe(200);
});
