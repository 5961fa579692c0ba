import { readFile } from 'node:fs/promises';
import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';

test.describe('structured data', () => {
  test.use({ alone: true, viewport: { width: 1440, height: 900 } });

  test('is shown as it is copied, downloads, and comes back in as a dish with its ticks', async ({
    page,
  }) => {
    test.slow();
    const episode = await demo(page);
    await page.goto(`${episode}/publish`);
    const part = page.getByRole('region', { name: 'Structured data', exact: true });
    await part.getByText('Structured data, for a page of your own').click();
    const shown = (await part.locator('pre').textContent()) ?? '';
    expect(shown).toMatch(/^<script type="application\/ld\+json">\n/);
    await expect(part.getByRole('listitem').first()).toContainText(/: .+\./);
    const [saved] = await Promise.all([
      page.waitForEvent('download'),
      part.getByRole('link', { name: 'Download as JSON-LD' }).click(),
    ]);
    const json = await readFile(await saved.path(), 'utf8');
    expect(shown).toContain(json.trimEnd());

    const renamed = shown.replaceAll(/"name": "Barley[^"]*"/g, '"name": "Copied skillet"');
    expect(renamed).not.toBe(shown);
    await page.goto(`${episode}/edit/recipe`);
    const field = page.getByLabel('Recipe data, or the HTML of its page');
    await field.fill('{"@type": "Recipe",\n "name" "x"}');
    await page.getByRole('button', { name: 'Read the recipe' }).click();
    await expect(field).toHaveAccessibleDescription(/line 2, column 9/);
    await expect(field).toHaveValue(/"name" "x"/);
    await field.fill(renamed);
    await page.getByRole('button', { name: 'Read the recipe' }).click();
    const dish = page.getByRole('group', { name: 'Copied skillet' });
    await expect(dish.getByLabel('A new dish')).toBeChecked();
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Add what is ticked' }).click();
    await page.waitForURL(new RegExp(`${episode}$`));
    await expect(page.getByText('Copied skillet').first()).toBeVisible();
    await page.goto(`${episode}/edit`);
    await expect(page.getByText('Recipe data: Copied skillet').first()).toBeVisible();
  });
});

test.describe('captions with corrections', () => {
  test.use({ alone: true });
  const SRT = '1\n00:00:01,000 --> 00:00:04,000\nBarley skillet. The whole tray is 90 calories.\n';

  test('change where a correction is ticked, and nowhere else', async ({ page }) => {
    test.slow();
    const episode = await demo(page);
    await page.goto(`${episode}/edit`);
    await page.evaluate(() =>
      document.querySelectorAll('details').forEach((part) => (part.open = true)),
    );
    const form = page.locator('form#new-text');
    await form.locator('[name=text]').fill(SRT);
    await form.locator('[name=name]').fill('Short cut');
    await form.locator('[name=kind]').selectOption('captions');
    await form.getByRole('button', { name: 'Bring it in' }).click();
    await expect(page.getByText('Short cut').first()).toBeVisible();
    await page.goto(`${episode}/publish/captions`);
    const captions = page.getByRole('form', { name: 'Short cut' });
    const download = async () => {
      const [saved] = await Promise.all([
        page.waitForEvent('download'),
        captions.getByRole('button', { name: 'Download the captions' }).click(),
      ]);
      return readFile(await saved.path(), 'utf8');
    };
    expect(await download()).toBe(SRT);
    await captions.getByRole('checkbox').first().check();
    const corrected = await download();
    expect(corrected).not.toBe(SRT);
    expect(corrected.split('\n').slice(0, 2)).toEqual(SRT.split('\n').slice(0, 2));
    expect(corrected).toMatch(/^Barley skillet\. The whole tray is .*\d+ calories\.$/m);
    await expectAccessible(page);
  });
});
