import type { Page } from '@playwright/test';
import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';
import { tooWide, unfold } from './page-states';

test.use({ alone: true, viewport: { width: 390, height: 844 } });

const openFood = async (page: Page, name: string) => {
  await page.goto(`/pantry?q=${encodeURIComponent(name)}`);
  await page.getByRole('link', { name, exact: true }).first().click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(name);
};

test('on a phone stock is said in one press, and looked up among the foods in use', async ({
  page,
  pageErrors,
}) => {
  // The demo is filmed on a day that is still to come, whenever this is run.
  await page.goto(`${await demo(page)}/day`);
  await page.locator('summary', { hasText: 'Change the day' }).click();
  await page.locator('[name="date"]').first().fill('2099-01-05');
  await page.getByRole('button', { name: 'Save the day' }).click();
  await expect(page.getByText('Change the day: done')).toBeVisible();
  await page.goto('/pantry');
  const foods = page.getByRole('region', { name: 'Foods in use' });
  await expect(
    foods.getByRole('link', { name: 'Barley, pearled, raw', exact: true }),
  ).toBeVisible();
  const out = page.getByRole('region', { name: 'Runs out on planned days' });
  await out.getByText(/foods are short$/).click();
  await expect(out.getByText(/^short of .* \(need/).first()).toBeVisible();
  expect(await tooWide(page)).toBe(0);
  await expectAccessible(page);
  await page.getByRole('searchbox', { name: 'Food' }).fill('garlic');
  await page.getByRole('button', { name: 'Look up' }).click();
  const stock = page.getByRole('group', { name: /^Stock of Garlic/ }).first();
  const answer = (name: string) => stock.getByRole('button', { name, exact: true });
  const box = await answer('not enough').boundingBox();
  expect(box?.height ?? 0).toBeGreaterThanOrEqual(44);
  await answer('not enough').click();
  await expect(answer('not enough')).toHaveAttribute('aria-pressed', 'true');
  await answer('have it').click();
  await expect(answer('have it')).toHaveAttribute('aria-pressed', 'true');
  await page.reload();
  await expect(answer('have it')).toHaveAttribute('aria-pressed', 'true');
  await expect(answer('not enough')).toHaveAttribute('aria-pressed', 'false');
  // A planned day needs it all the same where there is none, and then says how much.
  await answer('don’t have it').click();
  await expect(page.getByText(/^Short of .* for Mon 5 Jan$/).first()).toBeVisible();
  // What the tables have and nobody uses stands under it.
  await expect(page.getByRole('region', { name: 'In the tables' })).toBeVisible();
  await expectAccessible(page);
  expect(pageErrors).toEqual([]);
});

test('lots are put in, opened, used up and counted to nothing, and dates are checked', async ({
  page,
  pageErrors,
}) => {
  await openFood(page, 'Garlic, raw');
  const home = page.getByRole('region', { name: 'At home' });
  await home.getByText('Keep account in grams').click();
  await home.getByLabel('Bought, g').fill('500');
  await home.getByLabel('Place').first().fill('by the stove');
  await home.getByLabel('Use by').first().fill('2020-01-02');
  await home.getByLabel('Opened on').first().fill('2020-01-05');
  await home.getByRole('button', { name: 'Put into stock' }).click();
  await expect(home.getByText('one of the two is mistyped').first()).toBeVisible();
  await home.getByLabel('Opened on').first().fill('');
  await home.getByRole('button', { name: 'Put into stock' }).click();
  const lot = home.getByRole('listitem').filter({ hasText: 'by the stove' }).first();
  await expect(lot).toContainText('500 g');
  await expect(lot).toContainText('Not counted');
  await lot.getByRole('button', { name: /^Opened today/ }).click();
  await expect(lot).toContainText('is past: throw it away');
  await lot.getByRole('button', { name: /^Thrown away/ }).click();
  await expect(home.getByRole('group', { name: /^Stock of/ })).toBeVisible();

  await home.getByText('Keep account in grams').click();
  await home.getByLabel('Bought, g').fill('250');
  await home.getByRole('button', { name: 'Put into stock' }).click();
  await expect(home.getByText('250 g').first()).toBeVisible();
  expect(await tooWide(page)).toBe(0);
  await unfold(page);
  await expectAccessible(page);
  await home.getByLabel('Bought, g').fill('40');
  await home.getByRole('button', { name: 'Put into stock' }).click();
  await expect(home.getByText('40 g').first()).toBeVisible();
  await home.getByRole('button', { name: /^Nothing is left/ }).click();
  const none = home.getByRole('button', { name: 'don’t have it' });
  await expect(none).toHaveAttribute('aria-pressed', 'true');
  expect(pageErrors).toEqual([]);
});

test('packs are typed with their number, shop, day and offer; a wrong digit is told', async ({
  page,
  pageErrors,
}) => {
  await openFood(page, 'Oil, olive, salad or cooking');
  const packs = page.getByRole('region', { name: 'Packs and prices' });
  await packs.getByText('Add a pack').click();
  await packs.getByText('Shop, day, offer, loose by weight, barcode').click();
  const form = packs.locator('form#pack');
  await form.getByLabel('Pack', { exact: true }).fill('Bottle 750 ml');
  await form.getByLabel('or ml').fill('750');
  await form.getByLabel('Price', { exact: true }).fill('12');
  await form.getByLabel('Shop', { exact: true }).fill('Quay market');
  await form.getByLabel('Price is for so many').fill('2');
  // The standard’s own example with another last digit (GS1 General Specifications, 7.9).
  await form.getByLabel('Number under its bars').fill('6291041500214');
  await form.getByRole('button', { name: 'Add the pack' }).click();
  await expect(form.getByText('it would be 3').first()).toBeVisible();
  await form.getByLabel('Number under its bars').fill('6291041500213');
  await expect(form.getByLabel('Currency')).toHaveValue('USD');
  await form.getByRole('button', { name: 'Add the pack' }).click();
  const row = packs.getByRole('listitem').filter({ hasText: 'Bottle 750 ml' }).first();
  await expect(row).toContainText('2 for USD 12.00, Quay market, seen');
  await row.getByText('Note a price, or take out').click();
  await row.getByLabel('Price', { exact: true }).fill('6.49');
  await row.getByRole('button', { name: 'Note the price' }).click();
  await expect(row).toContainText('USD 6.49, seen');
  await row.getByRole('button', { name: /^Take out the price of .*USD 6.49/ }).click();
  await expect(row).not.toContainText('USD 6.49');
  expect(await tooWide(page)).toBe(0);
  await unfold(page);
  await expectAccessible(page);
  expect(pageErrors).toEqual([]);
});
