import type { Page } from '@playwright/test';
import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true });

async function openDay(page: Page): Promise<void> {
  await page.goto(`${await demo(page)}/day`);
}

test('a step is moved by keys, what that costs is told first, and then it is tied to the time', async ({
  page,
  pageErrors,
}) => {
  await openDay(page);
  const block = page.locator('[data-step]').filter({ hasText: 'Say hello' });
  await block.focus();
  await page.keyboard.press('Alt+ArrowDown');
  await page.keyboard.press('Alt+ArrowDown');
  const start = Number(await block.getAttribute('data-start'));
  await expect(page.getByText(/^To \d\d:\d\d\. Let go, or press Enter/)).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByText(/^To move a step, drag it/)).toBeVisible();
  await page.keyboard.press('Alt+ArrowDown');
  await page.keyboard.press('Enter');
  const offer = page.getByRole('region', { name: /^Say hello at the quay window not before/ });
  await expect(offer).toContainText(/The day (still wraps|wraps) at \d\d:\d\d/);
  expect(new URL(page.url()).searchParams.get('to')).toBe(String(start + 5));
  await expectAccessible(page);
  await offer.getByRole('link', { name: 'What about at?' }).click();
  const at = page.getByRole('region', { name: /^Say hello at the quay window at / });
  await at.getByRole('button', { name: 'Tie it to this time' }).click();
  await expect(at).toBeHidden();
  const entry = page.getByRole('listitem').filter({ hasText: 'Say hello at the quay window' });
  await expect(entry.filter({ hasText: 'as pinned' }).first()).toBeAttached();
  expect(pageErrors).toEqual([]);
});

test('a step is dragged to another time', async ({ page }) => {
  await openDay(page);
  const block = page.locator('[data-step]').filter({ hasText: 'Say hello' });
  await block.scrollIntoViewIfNeeded();
  const box = await block.boundingBox();
  if (box === null) throw new Error('the block is not drawn');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y + 40, { steps: 4 });
  await page.mouse.move(x, y + 80, { steps: 4 });
  await page.mouse.up();
  await expect(page.getByRole('region', { name: /not before \d\d:\d\d\?$/ })).toBeVisible();
});

test.describe('before any script', () => {
  test.use({ javaScriptEnabled: false });

  test('the list beside the picture ties a step too', async ({ page }) => {
    await openDay(page);
    await page.getByText('why then? Say hello at the quay window').click();
    await page.getByRole('link', { name: 'Tie it to a time Say hello at the quay window' }).click();
    const offer = page.getByRole('region', { name: /^Say hello at the quay window at / });
    await offer.getByRole('button', { name: 'Tie it to this time' }).click();
    await expect(page.getByText('as pinned').first()).toBeAttached();
  });
});
