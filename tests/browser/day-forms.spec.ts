import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true });

test('cold food is added by keys alone, with when it stands out, and gets its clock', async ({
  page,
  pageErrors,
}) => {
  test.slow();
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('/');
  const demo = page.getByRole('link', { name: /One oven, three dishes/ }).first();
  await page.goto(`${(await demo.getAttribute('href')) ?? ''}/day`);
  const lots = page.getByRole('table', { name: 'Food out of the refrigerator' });
  await expect(lots.getByRole('row')).toHaveCount(3);

  const press = async (name: string | RegExp, role: 'link' | 'button') => {
    await page.getByRole(role, { name }).focus();
    await page.keyboard.press('Enter');
  };
  await page.locator('summary', { hasText: 'Barley skillet 8 steps' }).focus();
  await page.keyboard.press('Enter');
  const cold = page.locator('details[open] > details > summary', { hasText: 'must stay cold' });
  await cold.focus();
  await page.keyboard.press('Enter');
  await press('Add food that must stay cold to Barley skillet', 'link');
  await expect(page.getByLabel('Out at most')).toHaveValue('120');
  await expect(page.getByText('above 32 °C (90 °F) 60 min (USDA FSIS)')).toBeVisible();
  await page.getByLabel('Out at most').fill('one hour');
  await page.getByLabel('Food', { exact: true }).fill('Cubed feta');
  await press('Add the food', 'button');
  await expect(page.getByLabel('Out at most')).toHaveAttribute('aria-invalid', 'true');
  await expect(page.getByLabel('Out at most')).toHaveValue('one hour');
  await expect(page.getByLabel('Food', { exact: true })).toHaveValue('Cubed feta');
  await expectAccessible(page);
  await page.getByLabel('Out at most').fill('60');
  await press('Add the food', 'button');

  await expect(page.getByRole('heading', { name: /out: Cubed feta/ })).toBeVisible();
  await expect(page.getByText('Its clock does not run yet')).toBeVisible();
  await page
    .getByLabel('Comes out with')
    .selectOption({ label: 'Toast the barley (Barley skillet)' });
  await page
    .getByLabel('Cold, hot or eaten with')
    .selectOption({ label: 'Toast the barley (Barley skillet)' });
  await expectAccessible(page);
  const low = await page.evaluate(() =>
    [
      ...document.querySelectorAll(
        'main details[open] details[open] :is(a, button, select, input:not([type=hidden]), summary)',
      ),
    ]
      .map((element) => element.closest('label') ?? element)
      .filter((element) => element.getBoundingClientRect().height < 55.5)
      .map((element) => element.textContent),
  );
  expect(low).toEqual([]);
  await press('Let its clock run', 'button');
  await expect(
    page.getByRole('link', { name: /^Edit from the start of Toast the barley to the end/ }),
  ).toBeVisible();
  await expect(lots.getByRole('row')).toHaveCount(4);
  await expect(lots.getByRole('row', { name: /Cubed feta .* 1 h/ })).toBeVisible();
  expect(pageErrors).toEqual([]);
});
