import type { Page } from '@playwright/test';
import { expect, expectAccessible, test } from './fixtures';
import { tooWide } from './page-states';

test.use({ alone: true, viewport: { width: 390, height: 844 } });

const openFood = async (page: Page, name: string) => {
  await page.goto(`/pantry?q=${encodeURIComponent(name)}`);
  await page.getByRole('link', { name, exact: true }).first().click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(name);
};

test('on a phone two foods become one, the dishes that change are named first, and one press undoes it', async ({
  page,
  pageErrors,
}) => {
  await openFood(page, 'Brinkleaf grainy mustard');
  const uses = page.getByRole('region', { name: 'Where it is used' });
  const ingredient = uses.getByRole('listitem').first();
  const words = (await ingredient.getByRole('link').first().textContent()) ?? '';
  await page.getByRole('link', { name: /^The same food twice/ }).click();
  await page.waitForURL(/\/merge$/);

  // Itself is nonsense, told in words.
  const own = new URL(page.url()).pathname.split('/').at(-2) ?? '';
  await page.goto(`/pantry/foods/${own}/merge?into=${own}`);
  await expect(page.getByText('cannot become part of itself')).toBeVisible();
  await page.getByLabel('The food that stays').fill('mustard prepared yellow');
  await page.getByRole('button', { name: 'Look up' }).click();
  await page
    .getByRole('link', { name: /^Mustard, prepared, yellow/ })
    .first()
    .click();

  // The dish that uses it comes out otherwise, with both numbers.
  await expect(page.getByRole('heading', { name: 'Dishes that come out otherwise' })).toBeVisible();
  await expect(page.getByText(/\d → .*\d/).first()).toBeVisible();
  await expect(page.getByText('mustard', { exact: false }).first()).toBeVisible();
  expect(await tooWide(page)).toBe(0);
  await expectAccessible(page);
  await page.getByRole('button', { name: /^Make it part of Mustard, prepared/ }).click();

  await expect(page.getByRole('heading', { level: 1 })).toContainText('Mustard, prepared, yellow');
  await expect(page.getByText('is part of this food since')).toBeVisible();
  await expect(uses.getByRole('link', { name: words })).toBeVisible();
  expect(await tooWide(page)).toBe(0);
  await expectAccessible(page);

  // The food that is part of another is out of the list, and says where it went.
  await page.goto(`/pantry/foods/${own}`);
  await expect(page.getByText('This is part of')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Packs' })).toHaveCount(0);
  await page.goBack();
  await page.getByRole('button', { name: /^Undo: take Brinkleaf/ }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Brinkleaf grainy mustard');
  await expect(uses.getByRole('link', { name: words })).toBeVisible();
  await uses.getByRole('link', { name: words }).click();
  await expect(page).toHaveURL(/\/episodes\/.*#row-/);
  expect(pageErrors).toEqual([]);
});

test('readings of a label stand beside each other, and what changed is said', async ({
  page,
  pageErrors,
}) => {
  await openFood(page, 'Brinkleaf grainy mustard');
  await page.getByRole('link', { name: 'Read the label again' }).click();
  await page.locator('[name="value-sodium"]').fill('130');
  await page.getByRole('button', { name: 'Keep this reading' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Brinkleaf grainy mustard');
  await page.getByText('Earlier readings of its label').click();
  await page.getByRole('link', { name: 'Beside each other: what changed' }).click();
  const table = page.getByRole('table', { name: /^Readings of/ });
  await expect(table.getByRole('row', { name: /^sodium/ })).toContainText('130changed');
  await expect(table).toContainText('one thing changed');
  expect(await tooWide(page)).toBe(0);
  await expectAccessible(page);
  expect(pageErrors).toEqual([]);
});
