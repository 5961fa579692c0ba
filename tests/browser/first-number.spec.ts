import { expect, test } from './fixtures';
import { freshEpisode } from './fresh-episode';

// From nothing to the description: one dish, one ingredient with grams, and the number is there.
test('a first dish gets its calories, its list and its description, and copying locks them', async ({
  page,
}) => {
  const path = await freshEpisode(page, 'Whites on the quay');
  const dish = page.locator('#new-dish');
  await dish.getByRole('textbox', { name: 'Dish' }).fill('Plain omelette');
  await dish.getByRole('button', { name: 'Add the dish' }).click();
  await expect(page.getByRole('heading', { name: 'Plain omelette' })).toBeVisible();

  await page.getByText('Add one ingredient').click();
  const line = page.locator('form[id^="new-line-"]');
  await line.getByLabel('Ingredient', { exact: true }).fill('180 g egg white raw');
  await line.getByRole('radio', { name: /^Egg, white, raw, fresh/ }).check();
  await line.getByRole('textbox', { name: 'Amount' }).fill('180');
  await line.getByRole('button', { name: 'Add the ingredient' }).click();

  // USDA SR28 01124: 52 kcal and 10.90 g protein in 100 g, so 93.6 kcal and 19.6 g in 180 g.
  const section = page.getByRole('region', { name: 'Plain omelette' });
  await expect(section.getByText(/^94$/).first()).toBeVisible();
  await page.goto(`${path}/publish`);
  const text = page.locator('pre').first();
  await expect(text).toContainText('The whole dish: 94 kcal · 20 g protein · 0 g fat · 1 g carbo');
  await expect(text).toContainText('180 g egg white raw (about 3/4 cup, raw)');
  await page.getByRole('button', { name: /^Copy, / }).click();
  await expect(
    page.getByText(/^Numbers locked .*nothing under them has changed\.$/).first(),
  ).toBeVisible();
  await page.goto(`${path}/shopping`);
  await expect(page.getByRole('rowheader', { name: /^Egg, white, raw, fresh/ })).toBeVisible();
});
