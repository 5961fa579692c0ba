import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true });

/** The demo as a file whose labels were read long ago and whose dishes were weighed. */
function oldFile(): { readonly name: string; readonly mimeType: string; readonly buffer: Buffer } {
  const text = readFileSync('seed/demo.episode.json', 'utf8')
    .replaceAll('"dateRead": "2026-12-05"', '"dateRead": "2025-03-01"')
    .replace('One oven, three dishes, a whole harbor day', 'An older day');
  return { name: 'old.json', mimeType: 'application/json', buffer: Buffer.from(text) };
}

async function bringInOld(page: Page): Promise<void> {
  await page.goto('/');
  await page.getByText('Bring in an episode file').click();
  await page.getByLabel('Episode file').setInputFiles(oldFile());
  await page.getByRole('button', { name: 'Bring it in' }).click();
  await page.waitForURL(/\/episodes\//);
}

/** The keys to a control, pressed until it has the focus. */
async function tabTo(page: Page, name: RegExp, role: 'button' | 'link' = 'button'): Promise<void> {
  const wanted = page.getByRole(role, { name }).first();
  await wanted.focus();
  await expect(wanted).toBeFocused();
}

test('a dish of another episode is added by two presses, with its weights, and its labels are asked about once', async ({
  page,
  pageErrors,
}) => {
  await bringInOld(page);
  await page.goto('/');
  await page.getByText('Begin an episode with its title').click();
  await page.getByRole('textbox', { name: 'Title' }).fill('Skyr week');
  await page.getByRole('button', { name: 'Begin the episode' }).click();
  await page.waitForURL(/\/episodes\/[0-9a-f-]{36}$/);

  const folded = page.getByText('Again, from …', { exact: true });
  await expect(page.getByRole('button', { name: /^Add again, from/ })).toHaveCount(0);
  await folded.focus();
  await page.keyboard.press('Enter');
  await tabTo(page, /^Add again, from Skyr pots/);
  await page.keyboard.press('Enter');
  await page.waitForURL(/\?copied=/);
  const dish = page.getByRole('region', { name: 'Skyr pots with oat crumb', exact: true });
  await expect(dish).toContainText('Again, from');
  await expect(dish.getByText('Not as it was:')).toBeVisible();
  await expect(dish).toContainText('The tie from');
  await expectAccessible(page);

  // Its labels were read long ago: asked about, and answered for good in one press.
  const question = dish.getByRole('heading', { name: 'Same label as last time?' });
  await expect(question).toBeVisible();
  await tabTo(page, /^Same label: Fjordlea plain skyr/);
  await page.keyboard.press('Enter');
  await expect(question).toHaveCount(0);
  await page.reload();
  await expect(dish).toBeVisible();
  await expect(question).toHaveCount(0);
  expect(pageErrors).toEqual([]);
});

test('a dish is found by typing, and taken as planned', async ({ page }) => {
  await bringInOld(page);
  await page.getByText('Again, from …', { exact: true }).click();
  const address = new URL(page.url()).pathname;
  await page.goto(`${address}?again=meatloaf+older#again`);
  const list = page.getByRole('list', { name: 'Dishes to begin from' });
  await expect(list.getByRole('listitem')).toHaveCount(1);
  await page.goto(`${address}?again=zzz#again`);
  await expect(page.getByText('Nothing fits “zzz”')).toBeVisible();
  await page.getByRole('searchbox', { name: /Words of the dish/ }).fill('SKILLET older');
  await page.keyboard.press('Enter');
  await expect(list.getByRole('listitem')).toHaveCount(1);
  await page.getByRole('button', { name: /^As planned, again, from Barley skillet/ }).click();
  await page.waitForURL(/\?copied=/);
  await expect(page.getByRole('heading', { name: 'Barley skillet', level: 2 })).toHaveCount(2);
});

test('an episode is begun from another in one press, its title ready to change', async ({
  page,
}) => {
  await page.goto('/');
  const row = page.getByRole('listitem').filter({ hasText: 'harbor' }).first();
  await row.getByRole('button', { name: /^Again from this/ }).click();
  await page.waitForURL(/\?edit=.*&copied=/);
  const title = page.getByRole('textbox', { name: 'Title' });
  await expect(title).toHaveValue(/ \(again\)$/);
  await expect(page.getByText('portions by grams wait until')).toBeVisible();
  await expectAccessible(page);
});

test.describe('without a script', () => {
  test.use({ javaScriptEnabled: false, viewport: { width: 390, height: 844 } });

  test('a dish and an episode are copied too, at the width of a phone', async ({ page }) => {
    await page.goto('/');
    await page
      .getByRole('button', { name: /^Again from this/ })
      .first()
      .click();
    await expect(page).toHaveURL(/\?edit=.*&copied=/);
    await page.getByText('Again, from …', { exact: true }).click();
    const add = page.getByRole('button', { name: /^Add again, from Barley skillet/ }).first();
    await add.click();
    await expect(page).toHaveURL(/\?copied=[0-9a-f-]+#row-/);
    await expect(page.getByRole('heading', { name: 'Barley skillet', level: 2 })).toHaveCount(2);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(390);
  });
});
