import type { Page } from '@playwright/test';
import { expect, expectAccessible, test } from './fixtures';

test.use({ empty: true });

const NOTE = `500 g ground turkey, raw
2 large eggs
80 g rolled oats
1 tbsp olive oil
60 g part skim mozzarella, shredded
salt to taste`;

/** The keys that a person presses, counted; a pasted text is one. */
class Keys {
  pressed = 0;
  constructor(private readonly page: Page) {}
  async press(key: string, times = 1): Promise<void> {
    for (let time = 0; time < times; time += 1) await this.page.keyboard.press(key);
    this.pressed += times;
  }
  async type(text: string): Promise<void> {
    await this.page.keyboard.type(text);
    this.pressed += text.length;
  }
  async paste(text: string): Promise<void> {
    await this.page.keyboard.insertText(text);
    this.pressed += 1;
  }
}

test('from an empty database to the first number and a copied description, by keys alone', async ({
  page,
  context,
  pageErrors,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto('/');
  const began = Date.now();
  const keys = new Keys(page);
  const list = page.getByRole('textbox', { name: 'Ingredients of one dish' });
  await expect(list).toBeFocused();
  await keys.paste(NOTE);
  await keys.press('Tab');
  await keys.type('4');
  await keys.press('Enter');
  await page.waitForURL(/\/numbers$/);
  const one = page.getByRole('heading', { name: 'One of 4' });
  await expect(one).toBeVisible();
  await expect(page.getByText('not confirmed').first()).toBeVisible();
  const first = { keys: keys.pressed, seconds: (Date.now() - began) / 1000 };
  await expectAccessible(page);

  // What is not confirmed is left out of the description.
  const text = page.locator('#short-description');
  await expect(text).toContainText('not confirmed yet');
  await page.getByRole('button', { name: /^Yes to all/ }).focus();
  await keys.press('Enter');
  await expect(page.getByText('not confirmed')).toHaveCount(0);
  await expect(text).toContainText(/1 tbsp olive oil/);
  await expect(page.getByRole('figure')).toContainText(/One of 4 has .* calories and .* protein/);
  await page.getByRole('button', { name: 'Copy the description' }).focus();
  await keys.press('Enter');
  await expect(page.getByText('Copied.')).toBeVisible();
  const all = { keys: keys.pressed, seconds: (Date.now() - began) / 1000 };
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  expect(copied).toMatch(/1 of 4 portions: \d+ kcal · \d+ g protein/);
  expect(copied).toContain('500 g ground turkey');
  console.log(
    `First numbers: ${first.keys} keys, ${first.seconds.toFixed(1)} s. ` +
      `Description copied: ${all.keys} keys, ${all.seconds.toFixed(1)} s.`,
  );

  // It is an episode already: nothing is typed again.
  await page.getByRole('link', { name: /give it steps, shots/ }).click();
  await expect(page.getByRole('table', { name: /ingredients/ })).toContainText('80 g rolled oats');
  expect(pageErrors).toEqual([]);
});
