import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { parse } from 'csv-parse/sync';
import { expect, expectAccessible, test } from './fixtures';

/** The address of the demo's page. */
async function demo(page: Page): Promise<string> {
  await page.goto('/');
  const link = page.getByRole('link', { name: /One oven, three dishes/ }).first();
  const href = await link.getAttribute('href');
  if (href === null) throw new Error('the season does not lead to the demo');
  return href;
}

/** Opens the breakdown of the meatloaf’s calories by the number on the episode page. */
async function loaf(page: Page): Promise<void> {
  await page.goto(await demo(page));
  const dish = page.getByRole('region', { name: 'Tray-baked turkey meatloaf', exact: true });
  await dish.getByRole('link', { name: /kcal likely .* calories, breakdown$/ }).click();
  await expect(page).toHaveURL(/\/breakdown\/whole:[^/]+\/energyKcal$/);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Tray-baked turkey meatloaf');
}

const allowance = (page: Page) => page.getByRole('region', { name: 'What the law allows a label' });

test('one press on a number, by keys, leads to its breakdown and the allowance of the law', async ({
  page,
}) => {
  await page.goto(await demo(page));
  const number = page.getByRole('link', { name: /kcal likely .* calories, breakdown$/ }).first();
  const range = /likely [\d–]+/.exec((await number.textContent()) ?? '')?.[0] ?? 'none';
  await number.focus();
  await page.keyboard.press('Enter');
  await expect(
    page.getByRole('heading', { level: 2, name: 'Ingredient by ingredient' }),
  ).toBeVisible();
  // The same range as was pressed, and what it could be at the end of the law, in the first window.
  await expect(page.getByText(range).first()).toBeVisible();
  await expect(allowance(page)).toContainText('21 CFR 101.9(g)');
  await expect(allowance(page)).toBeInViewport();
});

test('from each page that shows numbers the way leads there', async ({ page, pageErrors }) => {
  const episode = await demo(page);
  for (const part of ['', '/numbers', '/publish']) {
    await page.goto(episode + part);
    const link = page.locator('main a[href*="/breakdown/"]:visible').last();
    const href = (await link.getAttribute('href')) ?? '';
    await link.click();
    await expect(page).toHaveURL(new RegExp(`${href.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`));
    await expect(page.getByRole('table', { name: /^Breakdown: / })).toBeVisible();
  }
  expect(pageErrors).toEqual([]);
});

test('an open number leads there as well, and on to what is missing', async ({ page }) => {
  await page.goto(await demo(page));
  await page.getByText('The whole panel').first().click();
  await page.getByRole('link', { name: 'open sodium, breakdown' }).first().click();
  const missing = page.getByRole('list', { name: 'What is missing' });
  await expect(missing).toContainText('no grams for Salt to taste');
  await missing.getByRole('link', { name: /^Fill it in/ }).click();
  await expect(page.locator('form[id^="line-"]')).toBeVisible();
});

test('other nutrients and amounts are one press away, and the one shown is said to be', async ({
  page,
}) => {
  await loaf(page);
  const others = page.getByRole('navigation', { name: 'Other breakdowns' });
  await others.getByRole('link', { name: 'protein', exact: true }).click();
  await expect(page).toHaveURL(/\/protein$/);
  await others.getByRole('link', { name: '100 g, finished' }).click();
  await expect(page).toHaveURL(/\/per100g:[^/]+\/protein$/);
  await expect(others.locator('[aria-current=page]')).toHaveText(['protein', '100 g, finished']);
  // 127 g in 1053 g of the finished dish, by hand.
  await expect(page.locator('main dl').last()).toContainText('12');
  await expect(page.getByText('the weight of the finished dish')).toBeVisible();
});

test('the table comes as a file that a spreadsheet reads and takes for no formula', async ({
  page,
}) => {
  await loaf(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'As CSV' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe(
    'tray-baked-turkey-meatloaf-the-whole-dish-calories.csv',
  );
  const text = readFileSync(await download.path(), 'utf8');
  expect(text.startsWith('\uFEFF')).toBe(true);
  const records: Record<string, string>[] = parse(text, { columns: true, bom: true });
  const rows = await page.locator('tr[id^="line-"]').count();
  expect(records).toHaveLength(rows + 1);
  const column = records.slice(0, -1).map((record) => Number(record['calories (kcal)']));
  const sum = column.reduce((all, each) => all + each, 0);
  expect(sum).toBeCloseTo(Number(records.at(-1)?.['calories (kcal)']), 2);
  for (const cell of records.flatMap((record) => Object.values(record))) {
    expect(cell).not.toMatch(/^[=+@\t\r]|^-(?!\d)/);
  }
});

test('the file is text for a spreadsheet and nothing else, and is not there for a wrong address', async ({
  page,
  request,
}) => {
  const episode = await demo(page);
  const found = await request.get(`${episode}/breakdown/day/protein/table.csv`);
  expect(found.headers()['content-type']).toContain('text/csv; charset=utf-8');
  expect(found.headers()['content-disposition']).toMatch(
    /^attachment; filename="[a-z0-9-]+\.csv"$/,
  );
  expect(found.headers()['x-content-type-options']).toBe('nosniff');
  const lost = await request.get(`${episode}/breakdown/day/luck/table.csv`);
  expect(lost.status()).toBe(404);
});

// From memory of what is commonly tried: names of object members, paths, markup, control characters.
for (const address of [
  'day/constructor',
  'day/__proto__',
  'day/Protein',
  'whole:/protein',
  'whole:nobody/protein',
  'portion:day/protein',
  'day:1/protein',
  'eaten:%2E%2E%2Fetc/protein',
  'whole:%3Cscript%3Ealert(1)%3C%2Fscript%3E/protein',
  `${'a'.repeat(3000)}/protein`,
  'day/%00',
]) {
  test(`the address ${address.slice(0, 40)} is told to lead nowhere`, async ({ page }) => {
    const response = await page.goto(`${await demo(page)}/breakdown/${address}`);
    expect(response?.status()).toBe(404);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('There is no such number');
    await expect(page.getByRole('link', { name: 'To the season' })).toBeVisible();
  });
}

test.describe('on paper', () => {
  /** Pages of what would be printed, counted in the file itself. */
  const printed = async (page: Page) => {
    const pdf = (await page.pdf({ format: 'A4' })).toString('latin1');
    return pdf.match(/\/Type \/Page\b(?!s)/g)?.length ?? 0;
  };

  test('the working of a dish takes one page, without navigation and buttons; the picture follows whole', async ({
    page,
  }) => {
    await loaf(page);
    await page.emulateMedia({ media: 'print' });
    await expectAccessible(page);
    for (const name of ['Other breakdowns', 'Main', 'Episode']) {
      await expect(page.getByRole('navigation', { name })).toBeHidden();
    }
    await expect(page.getByRole('link', { name: 'As CSV' })).toBeHidden();
    await expect(allowance(page)).toBeVisible();
    expect(await printed(page)).toBeLessThanOrEqual(2);
    await page.evaluate(() => document.getElementById('picture')?.parentElement?.remove());
    expect(await printed(page)).toBe(1);
  });

  test('a small dish takes one page with its picture', async ({ page }) => {
    await page.goto(await demo(page));
    const dish = page.getByRole('region', { name: 'Skyr pots with oat crumb', exact: true });
    await dish
      .getByRole('link', { name: /protein, breakdown$/ })
      .first()
      .click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Skyr pots with oat crumb');
    expect(await printed(page)).toBe(1);
  });

  test('no letter of the table is smaller than 9 pt', async ({ page }) => {
    await loaf(page);
    await page.emulateMedia({ media: 'print' });
    const smallest = await page.evaluate(() =>
      Math.min(
        ...[...document.querySelectorAll('main table td, main table th, main figure li')].map(
          (element) => parseFloat(getComputedStyle(element).fontSize),
        ),
      ),
    );
    // 9 pt are 12 CSS px (CSS Values and Units 4, section 6.2).
    expect(smallest).toBeGreaterThanOrEqual(12);
  });
});

test('names beside the bars do not lie on one another, wide, on a phone and on paper', async ({
  page,
}) => {
  await loaf(page);
  for (const [width, media] of [
    [1440, 'screen'],
    [390, 'screen'],
    [703, 'print'],
  ] as const) {
    await page.emulateMedia({ media });
    await page.setViewportSize({ width, height: 900 });
    const overlaps = await page.evaluate(
      () =>
        [...document.querySelectorAll('main figure')].flatMap((figure) => {
          const boxes = [...figure.querySelectorAll('li')]
            .map((item) => item.getBoundingClientRect())
            .sort((a, b) => a.top - b.top);
          return boxes.slice(1).filter((box, at) => box.top < (boxes[at]?.bottom ?? 0) - 1);
        }).length,
    );
    expect(overlaps, `${width} px, ${media}`).toBe(0);
  }
});
