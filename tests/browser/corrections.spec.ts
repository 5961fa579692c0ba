import type { Page } from '@playwright/test';
import { openPromise } from 'yauzl';
import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';
import { tooWide, unfold } from './page-states';

test.use({ alone: true });

/** Types another amount for an ingredient that is not weighed. */
async function cupsOfPeas(page: Page, here: string, cups: string): Promise<void> {
  await page.goto(here);
  const row = page.getByRole('row', { name: /1 cup frozen peas/ });
  const edit = await row.locator('a[href*="edit="]').first().getAttribute('href');
  await page.goto(edit ?? '');
  const form = page.locator('main form[id]:visible').first();
  await form.getByLabel('Amount', { exact: true }).fill(cups);
  await form.getByRole('button', { name: /^Save/ }).first().click();
  await expect(page).not.toHaveURL(/edit=/);
}

async function expectFits(page: Page): Promise<void> {
  for (const [colorScheme, width] of [
    ['light', 1440],
    ['dark', 390],
  ] as const) {
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize({ width, height: 900 });
    await expectAccessible(page);
    expect(await tooWide(page)).toBe(0);
  }
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize({ width: 1440, height: 900 });
}

test('locked, copied, cards downloaded, an input changed: the correction, its texts and the corrected description', async ({
  page,
  pageErrors,
}, info) => {
  test.setTimeout(300_000);
  const here = await demo(page);
  await page.goto(`${here}/publish`);
  const lock = page.getByRole('region', { name: 'Numbers lock' });
  await lock.getByRole('button', { name: 'Lock the numbers' }).click();
  await expect(lock).toContainText(/Numbers locked .*Lock 1: /);

  await page.goto(`${here}/corrections`);
  await expect(page.getByText('Nothing has gone out yet')).toBeVisible();
  await page.goto(`${here}/publish`);
  await page.getByRole('button', { name: /^Copy/ }).first().click();
  await expect(page.getByText(/text is kept/)).toBeVisible();
  const before = (await page.locator('pre').first().textContent()) ?? '';
  expect(before).not.toContain('Correction,');

  // The cards of what went out, as one zip.
  await page.goto(`${here}/cards`);
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 120_000 }),
    page.getByRole('link', { name: 'All cards in one zip' }).click(),
  ]);
  const path = info.outputPath('cards.zip');
  await download.saveAs(path);
  const zip = await openPromise(path, { lazyEntries: true, autoClose: false });
  const names: string[] = [];
  for await (const entry of zip.eachEntry()) names.push(entry.fileName);
  zip.close();
  expect(names.filter((name) => name.endsWith('.png')).length).toBeGreaterThan(5);
  expect(names.some((name) => name.includes('correction'))).toBe(false);

  await page.goto(`${here}/corrections`);
  await expect(page.getByRole('heading', { name: 'Nothing to correct' })).toBeVisible();
  await expectFits(page);

  await cupsOfPeas(page, here, '2');
  await page.goto(`${here}/publish`);
  await expect(lock).toContainText(/Lock of .* broken/);
  await lock.getByRole('link', { name: 'Corrections' }).click();
  const numbers = page.getByRole('table', { name: 'Numbers to put right' });
  const energy = numbers.getByRole('row', { name: /^Barley skillet, the whole dish: calories/ });
  await expect(energy).toBeVisible();
  const [was, is] = (await energy.getByRole('cell').allTextContents()).map(
    (text) => /^\d+ kcal/.exec(text)?.[0] ?? '',
  );
  expect(before).toContain(was ?? 'a number that went out');
  expect(Number.parseInt(is ?? '', 10)).toBeGreaterThan(Number.parseInt(was ?? '', 10));
  await expect(numbers).toContainText(/likely \d+–\d+/);
  const working = energy.getByRole('link', { name: /working of calories, Barley skillet/ });
  await expect(working).toHaveAttribute('href', /\/breakdown\/whole:[^/]+\/energyKcal$/);
  const reason = page.getByLabel('Why it is another number now');
  await expect(reason).toHaveValue(/“1 cup frozen peas”, amount: 2 cup instead of 1 cup/);
  await expectFits(page);

  // By keyboard alone: refused without a reason, then made.
  await reason.fill('');
  await page.getByLabel('Corrected on').press('Enter');
  await expect(reason).toHaveAttribute('aria-invalid', 'true');
  await expectAccessible(page);
  await reason.fill('I wrote down one cup of peas and used two');
  await page.getByLabel('Corrected on').fill('2026-11-30');
  await page.getByLabel('Corrected on').press('Enter');
  const made = page.getByRole('region', { name: 'Corrections made' });
  await expect(made).toContainText(
    `the whole dish: ${is ?? ''} (not ${String(Number.parseInt(was ?? '', 10))})`,
  );
  await expect(made).toContainText('I wrote down one cup of peas and used two.');
  await expect(page.getByRole('heading', { name: 'Nothing to correct' })).toBeVisible();
  const told = page.getByRole('status').filter({ hasText: 'The correction is made' });
  await expect(told).toBeVisible();
  await expect(page.getByRole('button', { name: /^Undo.*The correction is made/ })).toBeVisible();
  const swept = page.getByRole('region', { name: 'What else went out' });
  await expect(swept).toContainText('before the correction: copy it again');
  const piece = swept.getByRole('link', { name: 'The clip “Skyr pots in one minute”' });
  await expect(piece).toHaveAttribute('href', /\/publish#piece-/);
  await expectFits(page);

  // The corrected description, and its card.
  await page.getByRole('link', { name: 'The corrected description' }).click();
  await expect(lock).toContainText(/Numbers locked .*Lock 2: /);
  const after = page.locator('pre').first();
  await expect(after).toContainText('Correction, 30 Nov 2026: I wrote down one cup');
  await expect(after).toContainText(is ?? 'the new number');
  await page.getByRole('button', { name: /^Copy/ }).first().click();
  await expect(page.getByText(/text is kept/)).toBeVisible();
  await page.goto(`${here}/cards`);
  await expect(page.getByRole('link', { name: /^PNG of .*correction/ }).first()).toBeVisible();

  await page.goto(`${here}/corrections`);
  await expect(page.getByRole('region', { name: 'What else went out' })).toContainText('put right');
  await page.getByRole('link', { name: 'Corrections of all episodes' }).click();
  await expect(page.getByRole('main')).toContainText(
    'Correction, 30 Nov 2026: I wrote down one cup',
  );
  await expectFits(page);
  await page
    .getByRole('main')
    .getByRole('link', { name: /One oven, three dishes/ })
    .click();
  await expect(made).toBeVisible();
  expect(pageErrors).toEqual([]);
});

test('where only a range moved no correction is made: the numbers are locked again', async ({
  page,
}) => {
  test.slow();
  const here = await demo(page);
  await page.goto(`${here}/publish`);
  await page.getByRole('button', { name: /^Copy/ }).first().click();
  await expect(page.getByText(/text is kept/)).toBeVisible();
  await page.goto('/kitchen');
  await unfold(page);
  const spoon = page.locator('#spreads [name="spoon"]');
  await spoon.fill(String(Number(await spoon.inputValue()) + 1));
  await page.getByRole('button', { name: 'Save measures by eye' }).click();
  await expect(
    page.locator('#spreads [role=status], [role=status]').filter({ hasText: 'done' }).first(),
  ).toBeVisible();
  await page.goto(`${here}/corrections`);
  await expect(page.getByRole('heading', { name: 'No correction is needed' })).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Lock again' }).click();
  await expect(page.getByText('The numbers are locked again, with lock 2.')).toBeVisible();
});
