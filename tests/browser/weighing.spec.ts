import type { Locator, Page } from '@playwright/test';
import { expect, expectAccessible, test } from './fixtures';
import { freshEpisode } from './fresh-episode';

test.use({ alone: true });

/** An episode with one dish of these ingredients, their foods confirmed. Returns the dish's section. */
async function dishOf(page: Page, title: string, ingredients: string): Promise<Locator> {
  await freshEpisode(page, `${title}, weighed`);
  const dish = page.locator('#new-dish');
  await dish.getByRole('textbox', { name: 'Dish' }).fill(title);
  await dish.getByRole('button', { name: 'Add the dish' }).click();
  const section = page.getByRole('region', { name: title, exact: true });
  await section.getByRole('textbox', { name: 'Ingredients' }).fill(ingredients);
  await section.getByRole('button', { name: 'Add the ingredients' }).click();
  await section.getByRole('button', { name: /^Yes/ }).first().press('Enter');
  await expect(section.getByText('not confirmed')).toHaveCount(0);
  return section;
}

const rowOf = (section: Locator, words: string) =>
  section
    .locator('tr[data-member]')
    .filter({ has: section.page().getByText(words, { exact: true }) });

/** Opens the scale of an ingredient, at one of its three weights. */
async function openScale(section: Locator, words: string, of?: string): Promise<Locator> {
  const scale = section.getByRole('region', { name: `Weigh: ${words}` });
  await rowOf(section, words)
    .getByRole('link', { name: /^Weigh/ })
    .press('Enter');
  await expect(scale).toBeVisible();
  if (of !== undefined) {
    await scale.getByRole('link', { name: of, exact: true }).press('Enter');
    await expect(scale.getByRole('link', { name: of, exact: true })).toHaveAttribute(
      'aria-current',
      'true',
    );
  }
  return scale;
}

const onScale = (scale: Locator) => scale.getByRole('textbox', { name: 'On the scale, g' });
const keep = (scale: Locator) => scale.getByRole('button', { name: 'Keep the reading' });

test('before and after, a running total, what is left of two in one pan, and a cooked weight that is kept', async ({
  page,
  pageErrors,
}) => {
  test.slow();
  await page.setViewportSize({ width: 390, height: 844 });
  const section = await dishOf(
    page,
    'Pan',
    '20 g olive oil\n60 g tomato puree\n500 g ground turkey, raw\n100 g onion, raw',
  );

  // A jar, read before and read again after.
  let scale = await openScale(section, '20 g olive oil');
  await expect(onScale(scale)).toBeFocused();
  await scale.getByRole('radio', { name: 'Before and after it is taken' }).check();
  await onScale(scale).fill('410');
  await expect(scale.getByRole('status').filter({ hasText: 'kept until' })).toBeVisible();
  await expectAccessible(page);
  await keep(scale).press('Enter');
  await expect(rowOf(section, '20 g olive oil')).toContainText('410 g read once, to be read again');
  scale = await openScale(section, '20 g olive oil');
  await expect(scale).toContainText('410 g before');
  await onScale(scale).fill('420');
  await keep(scale).press('Enter');
  await expect(onScale(scale)).toHaveAttribute('aria-invalid', 'true');
  await expect(onScale(scale)).toHaveValue('420');
  await onScale(scale).fill('395');
  await expect(scale).toContainText('410 g before, 395 g after: 15 g taken');
  await keep(scale).press('Enter');
  await expect(rowOf(section, '20 g olive oil')).toContainText('weighed 15 g');

  // On one scale, one on top of the other.
  scale = await openScale(section, '60 g tomato puree');
  await onScale(scale).fill('372');
  await scale.getByRole('textbox', { name: 'Container, g' }).fill('312');
  await scale.getByRole('button', { name: /^Keep, then weigh 500 g ground turkey/ }).press('Enter');
  scale = section.getByRole('region', { name: 'Weigh: 500 g ground turkey, raw' });
  await scale.getByRole('radio', { name: 'On top of what is on the scale' }).check();
  await expect(scale).toContainText('372 g on the scale: after 60 g tomato puree');
  await onScale(scale).fill('872');
  await expect(scale).toContainText('872 g on the scale, 500 g more than before');
  // Wet hands: all that is touched here is 56 px high.
  const low = await scale.evaluate((element) =>
    [...element.querySelectorAll('button, nav a, summary, label:has(input), input, select, form a')]
      .map((each) => each.closest('label') ?? each)
      .filter((each) => each.getBoundingClientRect().width > 0)
      .filter((each) => each.getBoundingClientRect().height < 55.5)
      .map((each) => each.textContent),
  );
  expect(low).toEqual([]);
  await keep(scale).press('Enter');
  await expect(rowOf(section, '500 g ground turkey, raw')).toContainText('weighed 500 g');
  scale = await openScale(section, '100 g onion, raw');
  // A total that runs is gone on with unless another way is chosen.
  await expect(scale.getByRole('radio', { name: 'On top of what is on the scale' })).toBeChecked();
  await scale.getByRole('link', { name: 'Close' }).press('Enter');
  await expect(scale).toBeHidden();

  // One pan, two ingredients in what is left in it.
  scale = await openScale(section, '20 g olive oil', 'what is left');
  await onScale(scale).fill('905');
  await scale.getByRole('textbox', { name: 'Container, g' }).fill('900');
  await scale.getByText('Other ingredients are left in there with it').press('Enter');
  await expect(scale.getByRole('textbox', { name: 'Part of 20 g olive oil' })).toHaveValue('15');
  await expect(scale.getByRole('textbox', { name: 'Part of 60 g tomato puree' })).toHaveValue('60');
  await scale.getByRole('checkbox', { name: '60 g tomato puree' }).check();
  await expectAccessible(page);
  await keep(scale).press('Enter');
  await expect(rowOf(section, '20 g olive oil')).toContainText('1 g left in the pan, weighed');
  await expect(rowOf(section, '60 g tomato puree')).toContainText('4 g left in the pan, weighed');
  await page.getByRole('button', { name: /^Undo/ }).press('Enter');
  await expect(rowOf(section, '60 g tomato puree')).not.toContainText('left in the pan');

  // Cooked, and kept for next time; an odd one is asked about first.
  scale = await openScale(section, '500 g ground turkey, raw', 'cooked');
  await onScale(scale).fill('36');
  await keep(scale).press('Enter');
  await expect(rowOf(section, '500 g ground turkey, raw')).toContainText('7 % of the raw weight');
  scale = await openScale(section, '500 g ground turkey, raw', 'cooked');
  await scale.getByLabel('Cooked how').fill('pan');
  await scale.getByRole('button', { name: /^Keep it for/ }).press('Enter');
  await expect(scale.getByText('Is that right?').first()).toBeVisible();
  await expectAccessible(page);
  await scale.getByRole('button', { name: 'Take the reading back: 36 g' }).press('Enter');
  await expect(rowOf(section, '500 g ground turkey, raw')).not.toContainText('of the raw weight');
  scale = await openScale(section, '500 g ground turkey, raw', 'cooked');
  await onScale(scale).fill('360');
  await keep(scale).press('Enter');
  await expect(rowOf(section, '500 g ground turkey, raw')).toContainText(
    '360 g cooked from 500 g raw: 72 % of the raw weight',
  );
  scale = await openScale(section, '500 g ground turkey, raw', 'cooked');
  await scale.getByLabel('Cooked how').fill('pan');
  await scale.getByRole('button', { name: /^Keep it for/ }).press('Enter');
  await expect(scale).toContainText('Kept as a cooked weight of Ground turkey, raw');
  expect(pageErrors).toEqual([]);
});

test('raw and cooked without a cooked weight: both states are named and settled right there', async ({
  page,
  pageErrors,
}) => {
  const section = await dishOf(page, 'Lentils', '180 g lentils, raw');
  const row = rowOf(section, '180 g lentils, raw');
  await row.getByRole('link', { name: /^Edit/ }).press('Enter');
  const form = section.locator('form[id^="line-"]');
  await form.getByLabel('Weighed', { exact: true }).selectOption('cooked');
  await form.getByRole('button', { name: 'Save' }).press('Enter');
  await expect(row).toContainText(/open: weighed cooked, and “Lentils.*” is listed raw/);
  await row.getByRole('link', { name: /^Settle it/ }).press('Enter');
  const waiting = section.getByRole('region', { name: 'To confirm: Lentils' });
  await expect(waiting.getByRole('button', { name: /^Count .* cooked/ }).first()).toBeVisible();
  await expectAccessible(page);
  const look = waiting.getByRole('link', { name: 'Look for one listed cooked' });
  await expect(look).toHaveAttribute('href', /look=lentils%20cooked/);
  await waiting.getByLabel('Raw, g').fill('250');
  await waiting.getByLabel('Cooked, g').fill('100');
  await waiting.getByLabel('Cooked how').fill('boiled');
  await waiting.getByRole('button', { name: 'Keep the two weights' }).press('Enter');
  await expect(waiting.getByText('the right way round').first()).toBeVisible();
  await expect(waiting.getByLabel('Raw, g')).toHaveValue('250');
  await waiting.getByLabel('Raw, g').fill('100');
  await waiting.getByLabel('Cooked, g').fill('250');
  await waiting.getByRole('button', { name: 'Keep the two weights' }).press('Enter');
  // 180 g cooked, of which 100 g raw make 250 g.
  await expect(row).toContainText('72');
  await expect(waiting).toHaveCount(0);
  await row.getByRole('link', { name: /^Edit/ }).press('Enter');
  await expect(form).toContainText('Turned from cooked to raw by 250 %');
  await expect(form).toContainText('this cook’s own two weights');
  expect(pageErrors).toEqual([]);
});

test('a food keeps its cooked weights, and an own food its peel and trim', async ({
  page,
  pageErrors,
}) => {
  await page.goto('/pantry?q=ground+turkey+raw');
  await page.getByRole('link', { name: 'Ground turkey, raw' }).first().press('Enter');
  const part = page.getByRole('region', { name: 'Cooked weight' });
  await expect(part).toContainText('82 g from 113.4 g raw, 72 %');
  await expect(part.getByRole('button', { name: /^Take out/ })).toHaveCount(0);
  await part.getByText('Add your own raw and cooked weight').press('Enter');
  await part.getByLabel('Raw, g').fill('500');
  await part.getByLabel('Cooked, g').fill('35');
  await part.getByLabel('Cooked how').fill('oven');
  await part.getByRole('button', { name: 'Keep the cooked weight' }).press('Enter');
  const sure = part.getByRole('checkbox', { name: 'Yes, these weights are right' });
  await expect(sure).toBeVisible();
  await expectAccessible(page);
  await part.getByLabel('Cooked, g').fill('350');
  await part.getByRole('button', { name: 'Keep the cooked weight' }).press('Enter');
  await expect(part).toContainText('by 70 % (65–75 %): oven, your last cook');
  await part.getByRole('button', { name: /^Take out the cooked weight oven/ }).press('Enter');
  await expect(part).not.toContainText('your last cook');

  await page.goto('/pantry?q=Brinkleaf');
  await page.getByRole('link', { name: 'Brinkleaf grainy mustard' }).first().press('Enter');
  const refuse = page.getByRole('region', { name: 'Peel and trim' });
  await refuse.getByText('What comes off before it counts').press('Enter');
  await refuse.getByLabel('What it is').fill('bone');
  await refuse.getByRole('button', { name: 'Save peel and trim' }).press('Enter');
  await expect(refuse.getByLabel('Peel and trim, %')).toHaveAttribute('aria-invalid', 'true');
  await refuse.getByLabel('Peel and trim, %').fill('20');
  await refuse.getByRole('checkbox', { name: /as bought, with it/ }).check();
  await refuse.getByRole('button', { name: 'Save peel and trim' }).press('Enter');
  await expect(page.getByText('20 % (bone); the values are for it as bought')).toBeVisible();
  await expectAccessible(page);
  expect(pageErrors).toEqual([]);
});

test.describe('before any script', () => {
  test.use({ javaScriptEnabled: false });

  test('a reading is kept in each of its ways', async ({ page }) => {
    await page.goto('/');
    await page
      .getByRole('link', { name: /One oven, three dishes/ })
      .first()
      .click();
    const row = page.getByRole('row', { name: /250 g button mushrooms.* Edit/ });
    await row.getByRole('link', { name: /^Weigh/ }).click();
    const scale = page.getByRole('region', { name: /^Weigh: 250 g button mushrooms/ });
    await onScale(scale).fill('310');
    await expect(scale.getByRole('textbox', { name: 'After it was taken, g' })).toBeHidden();
    await scale.getByText('Before and after it is taken').click();
    await scale.getByRole('textbox', { name: 'After it was taken, g' }).fill('280');
    await keep(scale).click();
    await expect(row).toContainText('weighed 282 g in 2 readings');
  });
});
