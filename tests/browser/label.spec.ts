import type { Page } from '@playwright/test';
import { expect, expectAccessible, test } from './fixtures';

/** A field of the label form, by its name. */
const field = (page: Page, name: string) => page.locator(`[name="${name}"]`);

/** What a field's range says, found by what describes it. */
async function range(page: Page, name: string): Promise<string> {
  const ids = (await field(page, name).getAttribute('aria-describedby')) ?? '';
  const id = ids.split(' ').find((each) => each.endsWith('-range'));
  return ((await page.locator(`[id="${id}"]`).textContent()) ?? '').trim();
}

/** Types one text after the other, Enter between them, from the field that has focus. */
async function typeDown(page: Page, texts: readonly string[]): Promise<void> {
  for (const text of texts) {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  }
}

async function fits(page: Page): Promise<void> {
  const tooWide = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(tooWide).toBe(0);
}

async function unfoldAll(page: Page): Promise<void> {
  await page.evaluate(() =>
    document.querySelectorAll('details').forEach((part) => (part.open = true)),
  );
}

test.use({ alone: true });

test('on a phone a whole US panel is typed by keys from top to bottom; a slip is put right by one press', async ({
  page,
  pageErrors,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('/pantry/foods/new?rule=us');
  await expect(page.getByText('Enter goes to the next field')).toBeVisible();
  await field(page, 'name').focus();
  // Name, section (kept), serving in words, grams, no millilitres, servings in a pack.
  await typeDown(page, ['Rowan seed bar', '', '1 bar', '60', '', '4']);
  await expect(field(page, 'value-energyKcal')).toBeFocused();
  const top = await page.locator('section[aria-label="US panel"]').boundingBox();
  await typeDown(page, ['230', '8', '1', '0', '<5', '160', '27', '4', '12', '']);
  await expect(field(page, 'value-protein')).toBeFocused();
  await page.keyboard.type('1.4');

  // Each number says what it stands for, 21 CFR 101.9(c); a blank is not zero.
  expect(await range(page, 'value-energyKcal')).toContain('stands for 225–235 kcal');
  expect(await range(page, 'value-fat')).toBe('stands for 7.5–8.5 g');
  expect(await range(page, 'value-saturated')).toBe('stands for 0.75–1.25 g');
  expect(await range(page, 'value-transFat')).toBe('stands for 0–0.5 g');
  expect(await range(page, 'value-cholesterol')).toBe('stands for 0–5 mg');
  expect(await range(page, 'value-sodium')).toBe('stands for 155–165 mg');
  expect(await range(page, 'value-addedSugars')).toBe('not on the label');
  expect(await range(page, 'servingG')).toBe('a serving stands for 59.5–60.5 g');
  // Nothing moved while it was typed.
  const after = await page.locator('section[aria-label="US panel"]').boundingBox();
  expect(after?.height).toBe(top?.height);

  const inShort = page.getByRole('group', { name: 'Remarks in short' });
  await expect(inShort).toContainText('protein 1.4 looks like 14');
  await expect(field(page, 'value-protein')).toHaveAttribute('aria-invalid', 'true');
  await expectAccessible(page);
  await inShort.getByRole('button', { name: 'Use 14' }).click();
  await expect(field(page, 'value-protein')).toHaveValue('14');
  await expect(inShort).toBeHidden();
  await expect(page.getByText('Nothing speaks against these numbers.')).toBeVisible();

  // The last field sends.
  await field(page, 'value-protein').focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Rowan seed bar' })).toBeVisible();
  const row = page.getByRole('row', { name: /^protein/ });
  await expect(row).toContainText('14');
  await expect(row).toContainText('13.5–14.5 g');
  await expect(page.getByRole('row', { name: /^added sugars/ })).toContainText('no value');
  expect(pageErrors).toEqual([]);
});

test('“<” can be put before a number where the keypad has none', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('/pantry/foods/new?rule=us');
  await field(page, 'value-fibre').click();
  await page.keyboard.type('1');
  await page.getByRole('button', { name: 'Less than, for Dietary fibre' }).click();
  await expect(field(page, 'value-fibre')).toHaveValue('<1');
  await expect(field(page, 'value-fibre')).toBeFocused();
  expect(await range(page, 'value-fibre')).toBe('stands for 0–1 g');
});

test('an EU panel with two columns: both ranges together, a misread column named and put right', async ({
  page,
  pageErrors,
}) => {
  await page.setViewportSize({ width: 320, height: 700 });
  await page.goto('/pantry/foods/new?rule=eu');
  await field(page, 'name').focus();
  await typeDown(page, ['Oat quark', '', '1 pot', '30', '', '']);
  await expect(field(page, 'basis')).toBeFocused();
  await page.keyboard.press('Enter');
  await typeDown(page, ['1538', '367', '12', '2,1', '45', '20', '7.0', '16']);
  await expect(field(page, 'value-salt')).toBeFocused();
  await page.keyboard.type('0.35');
  expect(await range(page, 'value-saturated')).toBe('stands for 2.05–2.15 g');
  await page.getByText('It has a second column, per serving').click();
  await field(page, 'second-energyKj').focus();
  await typeDown(page, ['461', '110', '3.6', '0.6', '14', '', '', '8.4']);
  await expect(page.locator('#label-remarks + [role=status]')).toContainText(
    'Per 100 g and per serving disagree: for protein',
  );
  // 44.5 to 45.5 g in 100 g, 29.5 to 30.5 g a serving: 13.13 to 13.88 g; 14 g stands for 13.5 to 14.5 g.
  expect(await range(page, 'second-carbohydrate')).toContain('both columns: 13.5–13.88 g');
  await fits(page);
  await unfoldAll(page);
  await fits(page);
  await expectAccessible(page);
  await page
    .getByRole('group', { name: 'Remarks in short' })
    .getByRole('button', { name: 'Use 4.8' })
    .click();
  await expect(page.getByText('Nothing speaks against these numbers.')).toBeVisible();
  await page.getByRole('button', { name: 'Add the food' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Oat quark' })).toBeVisible();
  const cells = page.getByRole('row', { name: /^protein/ }).getByRole('cell');
  await expect(cells.nth(0)).toHaveText('16');
  await expect(cells.nth(1)).toHaveText('4.8');
  // The next label starts from the panel of this one.
  await page.goto('/pantry/foods/new');
  await expect(page.locator('section[aria-label="EU panel"]')).toBeVisible();
  expect(pageErrors).toEqual([]);
});

test('another panel keeps what was typed', async ({ page }) => {
  await page.goto('/pantry/foods/new?rule=us');
  await field(page, 'name').fill('Barley crisps');
  await field(page, 'value-fat').fill('3');
  await page.getByRole('link', { name: 'EU panel' }).click();
  await expect(page.locator('section[aria-label="EU panel"]')).toBeVisible();
  await expect(field(page, 'value-fat')).toHaveValue('3');
  await expect(field(page, 'name')).toHaveValue('Barley crisps');
  await expect(field(page, 'basis')).toHaveValue('per100g');
  await page.getByRole('link', { name: 'No rule, as printed' }).click();
  expect(await range(page, 'value-fat')).toBe('stands for 2.5–3.5 g');
  await unfoldAll(page);
  await expectAccessible(page);
});

test('what cannot be is refused, and kept only with a reason; the same label is read again in one press', async ({
  page,
}) => {
  await page.goto('/pantry/foods/new?rule=us');
  await field(page, 'name').fill('Crowberry oil');
  await field(page, 'servingG').fill('14');
  await field(page, 'value-fat').fill('5');
  await field(page, 'value-saturated').fill('8');
  await page.getByRole('button', { name: 'Add the food' }).click();
  await expect(page.getByText('One thing to put right')).toBeVisible();
  await expect(field(page, 'value-saturated')).toHaveValue('8');
  await field(page, 'keepReason').fill('printed so');
  await page.getByRole('button', { name: 'Add the food' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Crowberry oil' })).toBeVisible();
  await page.getByRole('link', { name: 'Read the label again' }).click();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Same label as last time' }).click();
  await expect(page.getByText('Earlier readings of its label')).toBeVisible();
  await expect(page.getByText(/printed so/)).toBeVisible();
  await page.getByRole('button', { name: 'Take back reading 2' }).click();
  await expect(page.getByText('Earlier readings of its label')).toBeHidden();
});

test.describe('without script', () => {
  test.use({ javaScriptEnabled: false });

  test('the answer has the ranges, the remarks, and a button that puts the slip right', async ({
    page,
  }) => {
    await page.goto('/pantry/foods/new?rule=us');
    await page.getByRole('link', { name: 'EU panel' }).click();
    await page.getByRole('link', { name: 'US panel' }).click();
    await field(page, 'name').fill('Sorrel bar');
    const texts = { servingG: '60', energyKcal: '230', fat: '8', carbohydrate: '27' };
    for (const [name, text] of Object.entries({ ...texts, fibre: '4', protein: '1.4' })) {
      await field(page, name === 'servingG' ? name : `value-${name}`).fill(text);
    }
    await page.getByRole('button', { name: 'Add the food' }).click();
    await expect(page.getByText('2 things to put right')).toBeVisible();
    expect(await range(page, 'value-fat')).toBe('stands for 7.5–8.5 g');
    await page.getByRole('button', { name: 'Use 14' }).last().click();
    await expect(field(page, 'value-protein')).toHaveValue('14');
    await expect(field(page, 'name')).toHaveValue('Sorrel bar');
    await page.getByRole('button', { name: 'Add the food' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Sorrel bar' })).toBeVisible();
    await expect(page.getByRole('row', { name: /^fat/ })).toContainText('7.5–8.5 g');
  });
});
