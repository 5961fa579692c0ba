import type { Locator, Page } from '@playwright/test';
import { expect, expectAccessible, test } from './fixtures';
import { freshEpisode } from './fresh-episode';

/** Adds a dish of pearled barley, 100 g of it: 352 kcal (USDA SR28 20005). */
async function addBarley(page: Page, title: string): Promise<void> {
  const add = page.getByRole('region', { name: 'Add to the running order' });
  const dish = add.getByRole('textbox', { name: 'Dish' });
  if (!(await dish.isVisible())) await add.getByText('Add a dish').click();
  await dish.fill(title);
  await add.getByRole('button', { name: 'Add the dish' }).click();
  const section = sectionOf(page, title);
  await section.getByText('Add one ingredient').click();
  await section
    .getByRole('textbox', { name: 'Ingredient', exact: true })
    .fill('100 g pearl barley');
  await section.getByRole('radio', { name: /Barley, pearled, raw/ }).check();
  await section.getByRole('textbox', { name: 'Amount' }).fill('100');
  await section.getByRole('button', { name: 'Add the ingredient', exact: true }).click();
  await expect(section.getByRole('table', { name: `${title}: ingredients` })).toBeVisible();
}

const sectionOf = (page: Page, title: string): Locator =>
  page.locator('section', {
    has: page.getByRole('heading', { level: 2, name: title, exact: true }),
  });

/** Opens "Add from a dish" and chooses one by its words; its form. */
async function chooseDish(section: Locator, words: string): Promise<Locator> {
  const form = section.locator('form[id^="new-from-dish-"]');
  if (!(await form.isVisible())) await section.getByText('Add from a dish').click();
  await form.getByRole('searchbox', { name: 'Look for a dish' }).fill(words);
  const made = form.getByLabel('Made from');
  const option = made.locator('option', { hasText: words }).first();
  await expect(option).toBeAttached();
  await made.selectOption({ value: (await option.getAttribute('value')) ?? '' });
  return form;
}

test('portions by eye and by grams, and what was eaten off a plate', async ({
  page,
  pageErrors,
}) => {
  await freshEpisode(page, 'Barley in parts');
  await addBarley(page, 'Barley pot');
  const numbers = page.getByRole('table', { name: 'Barley pot: numbers by portion' });
  const portions = page.getByRole('region', { name: 'Portions: Barley pot' });
  await portions.getByText('Add a portion').click();
  const kind = portions.getByLabel('Portions', { exact: true });
  await kind.selectOption('a part taken by eye');
  const part = portions.getByRole('textbox', { name: 'Part of the dish' });
  await part.fill('4/3');
  await portions.getByRole('button', { name: 'Add the portion' }).click();
  await expect(portions.getByRole('alert')).toContainText('Write what part of the dish it is');
  await expect(part).toHaveValue('4/3');
  await expect(portions.getByRole('textbox', { name: 'May miss by' })).toHaveValue('15');
  await expectAccessible(page);
  await part.fill('1/2');
  await portions.getByRole('textbox', { name: 'Said as' }).fill('hers');
  await page.keyboard.press('Enter');
  await expect(portions.getByRole('listitem')).toContainText('hers 1/2 by eye, ± 15 %');
  await expect(numbers.getByRole('row', { name: /^hers/ })).toContainText('176 kcal');

  await kind.selectOption('grams of the finished dish');
  await portions.getByRole('textbox', { name: 'Grams' }).fill('150');
  await page.keyboard.press('Enter');
  // Nobody knows yet what the dish weighs.
  await expect(numbers.getByRole('row', { name: /^150 g/ })).toContainText('open');
  await expect(numbers.getByRole('row', { name: /^100 g, finished/ })).toHaveCount(0);

  const eaten = page.getByRole('region', { name: 'What I ate: Barley pot' });
  await expect(eaten).toContainText('the whole counts to the day');
  await eaten.getByText('Change what I ate').click();
  await eaten.getByLabel('I ate').selectOption('the plate weighed before and after');
  const after = eaten.getByRole('textbox', { name: 'Plate after, g' });
  await eaten.getByRole('textbox', { name: 'Plate before, g' }).fill('600');
  await after.fill('650');
  await eaten.getByRole('button', { name: 'Save what I ate' }).click();
  await expect(eaten.getByRole('alert')).toContainText('must weigh less after than before');
  await after.fill('450');
  await page.keyboard.press('Enter');
  await expect(eaten).toContainText('150 ± 1 g of the finished dish count to the day');
  await expect(eaten).toContainText('Open: weigh the finished dish');
  expect(pageErrors).toEqual([]);
});

test('a change of weight that is cited counts until the finished dish is weighed', async ({
  page,
  pageErrors,
}) => {
  await freshEpisode(page, 'Barley, swollen');
  await addBarley(page, 'Barley bowl');
  const cooking = page.getByRole('region', { name: 'Change of weight in cooking: Barley bowl' });
  await cooking.getByText('Change of weight in cooking, from a table').click();
  await cooking.getByRole('textbox', { name: 'Water, %' }).fill('200');
  await page.keyboard.press('Enter');
  await expect(cooking.getByRole('alert')).toContainText('who says so');
  await cooking.getByRole('textbox', { name: 'Who says so' }).fill('my own three pots');
  await page.keyboard.press('Enter');
  await expect(cooking).toContainText('In cooking: water +200 % of the raw weight, ± 5 points');
  await expect(cooking).toContainText('Used, as long as nobody weighs it: 300 g finished');
  // 352 kcal in 100 g of it raw, three times as heavy: 117 in 100 g.
  const numbers = page.getByRole('table', { name: 'Barley bowl: numbers by portion' });
  await expect(numbers.getByRole('row', { name: /^100 g, finished/ })).toContainText('117 kcal');

  const weight = page.getByRole('region', { name: 'Finished weight: Barley bowl' });
  await weight.getByText('Weigh the finished dish').click();
  await weight.getByRole('textbox', { name: 'On the scale, g' }).fill('250');
  await weight.getByRole('button', { name: 'Keep the weight' }).click();
  await expect(cooking).toContainText('Its weight is not used: the finished dish was weighed.');
  await expect(numbers.getByRole('row', { name: /^100 g, finished/ })).toContainText('141 kcal');
  expect(pageErrors).toEqual([]);
});

test('a dish is made from another by words, by weight and by portion, and never from itself', async ({
  page,
  pageErrors,
}) => {
  const path = await freshEpisode(page, 'Barley in barley');
  await addBarley(page, 'Cooked grain');
  await addBarley(page, 'Grain salad');
  const grain = sectionOf(page, 'Cooked grain');
  const salad = sectionOf(page, 'Grain salad');
  const rows = salad.getByRole('table', { name: 'Grain salad: ingredients' });

  const form = await chooseDish(salad, 'Cooked grain');
  await expectAccessible(page);
  await form.getByRole('textbox', { name: 'Amount' }).fill('50');
  await form.getByRole('button', { name: 'Add it from the dish' }).click();
  const row = rows.getByRole('row', { name: /^Cooked grain/ });
  await expect(row).toContainText('a dish: Cooked grain, holds 100 g pearl barley');
  // By grams of a dish that nobody weighed: open, with every way out.
  await expect(row).toContainText('open');
  const open = page.getByRole('region', { name: 'To confirm: Grain salad' });
  await expect(open).toContainText('Nobody knows what Cooked grain weighs when it is done');
  await expectAccessible(page);

  await open.getByRole('link', { name: 'give batches or portions of it' }).click();
  await rows.getByRole('textbox', { name: 'Amount' }).fill('1/2');
  await rows.getByLabel('Unit of amount').selectOption('batch (all of it)');
  await expectAccessible(page);
  await rows.getByRole('button', { name: 'Save' }).click();
  await expect(row).toContainText('1/2 batch');
  await expect(row).toContainText('176 kcal');
  await expect(open).toBeHidden();

  // Its own breakdown stands behind its name.
  await row.getByRole('link', { name: /176/ }).click();
  await expect(page).toHaveURL(/breakdown/);
  await page
    .getByRole('row', { name: /^Cooked grain/ })
    .getByRole('link', { name: 'Cooked grain' })
    .click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Cooked grain');
  await expectAccessible(page);
  await page.goto(path);

  const back = await chooseDish(grain, 'Grain salad');
  await back.getByRole('button', { name: 'Add it from the dish' }).click();
  await expect(grain.getByRole('alert').filter({ hasText: 'from itself' })).toContainText(
    'Cooked grain → Grain salad → Cooked grain',
  );
  await expectAccessible(page);

  // What is bought is bought once: the salad takes from the grain that is cooked here anyway.
  await page.goto(`${path}/shopping`);
  await expect(page.getByRole('row', { name: /Barley, pearled/ })).toContainText('200 g');

  await page.goto(`${path}/publish`);
  await expect(page.getByText('Cooked grain (1/2 batch, see Cooked grain)')).toBeVisible();
  expect(pageErrors.filter((error) => !/favicon/.test(error))).toEqual([]);
});

test('a dish that is taken out is let go of, and comes back with an undo', async ({ page }) => {
  await freshEpisode(page, 'Barley and gone');
  await addBarley(page, 'Base');
  await addBarley(page, 'Top');
  const top = sectionOf(page, 'Top');
  const form = await chooseDish(top, 'Base');
  await form.getByRole('textbox', { name: 'Amount' }).fill('1');
  await form.getByLabel('Unit of amount').selectOption('batch (all of it)');
  await form.getByRole('button', { name: 'Add it from the dish' }).click();
  const row = top.getByRole('row', { name: /^Base/ });
  await expect(row).toContainText('352 kcal');
  await sectionOf(page, 'Base').getByRole('link', { name: 'Edit Base' }).click();
  await page.getByRole('button', { name: 'Take out of the episode: Base' }).click();
  await expect(row).toContainText('open: choose a food');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(row).toContainText('352 kcal');
});

test.describe('before any script', () => {
  test.use({ javaScriptEnabled: false, alone: true });

  test('a part by eye and an ingredient from a dish are kept', async ({ page }) => {
    await page.goto('/');
    await page
      .getByRole('link', { name: /One oven, three dishes/ })
      .first()
      .click();
    const portions = page.getByRole('region', { name: 'Portions: Skyr pots with oat crumb' });
    await portions.getByText('Add a portion').click();
    await portions.getByLabel('Portions', { exact: true }).selectOption('a part taken by eye');
    await portions.getByRole('textbox', { name: 'Into how many' }).fill('1/3');
    await portions.getByRole('textbox', { name: 'Said as' }).fill('a spoonful');
    await portions.getByRole('button', { name: 'Add the portion' }).click();
    await expect(portions).toContainText('a spoonful 1/3 by eye, ± 15 %');
  });
});
