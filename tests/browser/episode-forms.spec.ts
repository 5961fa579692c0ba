import { openDemo } from './demo';
import { expect, expectAccessible, test } from './fixtures';
import { freshEpisode } from './fresh-episode';

test.describe('on a database of its own', () => {
  test.use({ alone: true });

  test('an ingredient is weighed by keys alone on a phone, refused, added to and taken back', async ({
    page,
    pageErrors,
  }) => {
    await page.setViewportSize({ width: 390, height: 844 });
    await openDemo(page);
    const row = page.getByRole('row', { name: /250 g button mushrooms.* Edit/ });
    await expect(row).toContainText('weighed 252 g');
    await row.getByRole('link', { name: /^Weigh/ }).press('Enter');
    const panel = page.getByRole('region', { name: /^Weigh: 250 g button mushrooms/ });
    await expect(panel).toContainText('adds to what was weighed: 252 g so far');
    await panel.getByRole('textbox', { name: 'On the scale, g' }).focus();
    await page.keyboard.type('50');
    const container = panel.getByRole('textbox', { name: 'Container, g' });
    // The choice of how it is weighed is one stop, the container used last another.
    await page.keyboard.press('Tab');
    await expect(panel.getByRole('radio', { name: /^Straight/ })).toBeFocused();
    await page.keyboard.press('Tab');
    await expect(panel.getByRole('checkbox', { name: /container used last/ })).toBeFocused();
    await page.keyboard.press('Tab');
    await expect(container).toBeFocused();
    await page.keyboard.type('70');
    await page.keyboard.press('Enter');
    await expect(container).toHaveAttribute('aria-invalid', 'true');
    await expect(container).toHaveValue('70');
    await expect(panel.getByRole('textbox', { name: 'On the scale, g' })).toHaveValue('50');
    await expectAccessible(page);
    await container.fill('20');
    await page.keyboard.press('Enter');
    await expect(row).toContainText('weighed 282 g in 2 readings');
    await expect(panel).toBeHidden();
    await row.getByRole('link', { name: /^Weigh/ }).click();
    await panel.getByRole('button', { name: 'Take the reading back: 30 g' }).press('Enter');
    await expect(page.getByRole('button', { name: /^Undo/ })).toBeVisible();
    await expect(row).toContainText('weighed 252 g,');
    expect(pageErrors).toEqual([]);
  });

  test('a target is added, judged, changed and taken out', async ({ page, pageErrors }) => {
    await openDemo(page);
    const targets = page.getByRole('region', { name: 'Targets' });
    const before = await targets.getByRole('listitem').count();
    await targets.getByText('Add a target').click();
    const form = targets.locator('#new-target');
    await form.getByRole('textbox', { name: 'How much' }).fill('some');
    await form.getByRole('button', { name: 'Add the target' }).click();
    await expect(form.getByRole('textbox', { name: 'How much' })).toHaveValue('some');
    await form.getByRole('textbox', { name: 'How much' }).fill('9000');
    await form
      .getByLabel('In', { exact: true })
      .selectOption({ label: 'Tray-baked turkey meatloaf' });
    await form.getByRole('button', { name: 'Add the target' }).click();
    const added = targets.getByRole('listitem').filter({ hasText: '9000' });
    await expect(added).toContainText('Tray-baked turkey meatloaf: at least 9000 g protein');
    await expect(added).toContainText('missed');
    await expectAccessible(page);
    await added.getByRole('link', { name: /^Edit/ }).click();
    const amount = targets.getByRole('textbox', { name: 'How much' }).first();
    await expect(amount).toHaveValue('9000');
    await amount.fill('12.5');
    await page.keyboard.press('Enter');
    const changed = targets.getByRole('listitem').filter({ hasText: '12.5 g protein' });
    await expect(changed).toContainText('met');
    await changed.getByRole('link', { name: /^Edit/ }).click();
    await targets.getByRole('button', { name: /^Take out the target/ }).click();
    await expect(targets.getByRole('listitem')).toHaveCount(before);
    expect(pageErrors).toEqual([]);
  });
});

test.describe('before any script', () => {
  test.use({ javaScriptEnabled: false, alone: true });

  test('which piece an egg is, is chosen and kept', async ({ page }) => {
    await openDemo(page);
    const row = page.getByRole('row', { name: /1 large egg/ });
    await row.getByRole('link', { name: /^Edit/ }).click();
    const measure = page.getByLabel('Which measure');
    await expect(measure.locator('option:checked')).toContainText('large');
    const small = await measure.locator('option', { hasText: /small/ }).first().textContent();
    await measure.selectOption({ label: small ?? '' });
    await measure.locator('xpath=ancestor::form').getByRole('button', { name: 'Save' }).click();
    await expect(row).toContainText(`a piece by: ${small ?? ''}`);
  });
});

test('the finished dish is weighed, and 100 g of it are there', async ({ page, pageErrors }) => {
  await freshEpisode(page, 'Barley, weighed');
  await page.getByRole('textbox', { name: 'Dish' }).fill('Barley');
  await page.getByRole('button', { name: 'Add the dish' }).click();
  await page.getByText('Add one ingredient').click();
  await page.getByRole('textbox', { name: 'Ingredient', exact: true }).fill('100 g pearl barley');
  await page.getByRole('radio', { name: /Barley, pearled, raw/ }).check();
  await page.getByRole('textbox', { name: 'Amount' }).fill('100');
  await page.getByRole('button', { name: 'Add the ingredient', exact: true }).click();
  const weight = page.getByRole('region', { name: 'Finished weight: Barley' });
  await weight.getByText('Weigh the finished dish').click();
  await weight.getByRole('textbox', { name: 'On the scale, g' }).fill('420');
  await weight.getByRole('textbox', { name: 'Container, g' }).fill('120');
  await weight.getByRole('button', { name: 'Keep the weight' }).click();
  await expect(weight.getByRole('list')).toContainText('300 g');
  await expect(weight.getByRole('list')).toContainText('420 g less 120 g');
  // 352 kcal in 100 g of pearled barley (USDA SR28 20005), now in 300 g: 117 in 100 g.
  const numbers = page.getByRole('table', { name: 'Barley: numbers by portion' });
  await expect(numbers.getByRole('row', { name: /^100 g, finished/ })).toContainText('117 kcal');
  expect(pageErrors).toEqual([]);
});
