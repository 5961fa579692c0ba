import type { Page } from '@playwright/test';
import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true, viewport: { width: 390, height: 844 } });

const METHOD =
  'Preheat the oven to 180 °C. Mix for 5 minutes.\nBake for 40–50 minutes, then rest for 10 minutes.';

async function openMethod(page: Page): Promise<void> {
  await page.goto('/');
  const demo = page.getByRole('link', { name: /One oven, three dishes/ }).first();
  await page.goto(`${(await demo.getAttribute('href')) ?? ''}/day`);
  const link = page.locator('main a', { hasText: 'Add steps from the method to Barley skillet' });
  await page.goto((await link.getAttribute('href')) ?? '');
}

/** The way to the form of a step by its title, once it is there. */
const step = (page: Page, title: string) =>
  page.getByRole('link', { name: `Edit ${title}`, exact: true });

test('a method becomes steps: read, put right, added and undone', async ({ page, pageErrors }) => {
  test.slow();
  await openMethod(page);
  const text = page.getByLabel('Method', { exact: true });
  await expect(
    page.getByText('This dish has 8 steps already: what you add comes after.'),
  ).toBeVisible();
  // What the dish has as its text stands there already.
  await expect(text).toHaveValue(/^Toast the barley/);
  await text.fill('The batter is thin.');
  await page.getByRole('button', { name: 'Read the method' }).click();
  await expect(text).toHaveAttribute('aria-invalid', 'true');
  await expect(text).toHaveValue('The batter is thin.');

  await text.fill(METHOD);
  await page.getByRole('button', { name: 'Read the method' }).click();
  const bake = page.getByRole('group', { name: 'Bake', exact: true });
  await expect(bake).toContainText('(“40–50 minutes”)');
  await expect(bake.getByLabel('Usual', { exact: true })).toHaveValue('45');
  await expect(page.getByText('Heating the oven: nothing is added.')).toBeVisible();
  await bake.getByLabel('Usual', { exact: true }).fill('soon');
  await page.getByRole('group', { name: 'Mix' }).getByRole('checkbox').uncheck();
  await page.getByRole('button', { name: 'Add these steps' }).click();
  await expect(bake.getByLabel('Usual', { exact: true })).toHaveAttribute('aria-invalid', 'true');
  await expect(bake.getByLabel('Usual', { exact: true })).toHaveValue('soon');
  await expect(page.getByRole('group', { name: 'Mix' }).getByRole('checkbox')).not.toBeChecked();
  await expectAccessible(page);

  await bake.getByLabel('Usual', { exact: true }).fill('48');
  await page.getByRole('button', { name: 'Add these steps' }).click();
  await expect(page.getByRole('button', { name: 'Add these steps' })).toHaveCount(0);
  await expect(step(page, 'Look in halfway: bake')).toBeVisible();
  await expect(step(page, 'Mix')).toHaveCount(0);
  const added = page.getByRole('listitem').filter({ has: step(page, 'Bake') });
  await expect(added).toContainText('40–48–50 min');
  await expect(added).toContainText('356 °F');
  const day = page.url();
  await page.goto(new URL('.', day).href.replace(/\/$/, ''));
  const undo = page.getByRole('button', { name: /^Undo/ });
  await expect(undo).toContainText('Bake');
  await undo.click();
  await expect(undo).not.toHaveText(/^Undo: Added/);
  await page.goto(day);
  await expect(step(page, 'Bake')).toHaveCount(0);
  expect(pageErrors).toEqual([]);
});

test.describe('without script', () => {
  test.use({ javaScriptEnabled: false });

  test('a method is read and added, and faults stand beside their fields', async ({ page }) => {
    test.slow();
    await openMethod(page);
    await page.getByLabel('Method', { exact: true }).fill(METHOD);
    await page.getByRole('button', { name: 'Read the method' }).click();
    const bake = page.getByRole('group', { name: 'Bake', exact: true });
    await bake.getByLabel(/^Oven/).fill('');
    await page.getByRole('button', { name: 'Add these steps' }).click();
    await expect(bake.getByLabel(/^Oven/)).toHaveAttribute('aria-invalid', 'true');
    await bake.getByLabel(/^Oven/).fill('180 C');
    await page.getByRole('button', { name: 'Add these steps' }).click();
    for (const title of ['Mix', 'Bake', 'Look in halfway: bake', 'Rest']) {
      await expect(step(page, title)).toBeVisible();
    }
  });
});
