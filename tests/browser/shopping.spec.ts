import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true, viewport: { width: 390, height: 844 } });

const EVENTS = /\/shopping\/events(\?|$)/;

const status = (page: Page): Locator => page.getByRole('status').first();
const boxes = (page: Page): Locator => page.getByRole('checkbox', { name: /^In the basket: / });
const CONNECTED = 'Connected: every entry has arrived.';

async function openList(page: Page): Promise<string> {
  const path = `${await demo(page)}/shopping`;
  await page.goto(path);
  await expect(status(page)).toHaveText(CONNECTED);
  await expect(boxes(page).first()).toBeEnabled();
  return path;
}

/** What stands in stock of each food by its name, in milligrams, as the exported file says. */
async function stock(page: Page, path: string): Promise<ReadonlyMap<string, number>> {
  const answer = await page.request.get(path.replace(/\/shopping$/, '/export'));
  const file = (await answer.json()) as {
    foods: { id: string; name: string }[];
    stock: { foodId: string; moves: { deltaMg: number }[] }[];
  };
  const names = new Map(file.foods.map(({ id, name }) => [id, name]));
  const held = new Map<string, number>();
  for (const { foodId, moves } of file.stock) {
    const name = names.get(foodId) ?? foodId;
    held.set(
      name,
      moves.reduce((sum, { deltaMg }) => sum + deltaMg, held.get(name) ?? 0),
    );
  }
  return held;
}

/** Records of a table as RFC 4180 writes it, by the names of its head. */
function readTable(text: string): Record<string, string>[] {
  const records = [...text.matchAll(/((?:"(?:[^"]|"")*"|[^",\r\n]*)(?:,|\r\n))/g)].reduce<
    string[][]
  >(
    (rows, [cell]) => {
      const value = cell.replace(/(,|\r\n)$/, '');
      rows.at(-1)?.push(value.startsWith('"') ? value.slice(1, -1).replaceAll('""', '"') : value);
      if (cell.endsWith('\r\n')) rows.push([]);
      return rows;
    },
    [[]],
  );
  const [head = [], ...rest] = records.filter(({ length }) => length > 1);
  return rest.map((cells) => Object.fromEntries(head.map((name, at) => [name, cells[at] ?? ''])));
}

/** Grams that buying what the list says brings home, by food; null where the list names no amount. */
async function bought(page: Page, path: string): Promise<ReadonlyMap<string, number | null>> {
  const rows = readTable(await (await page.request.get(`${path}/shopping.csv`)).text());
  const grams = new Map<string, number | null>();
  for (const row of rows) {
    const food = row.food ?? '';
    const packs = Number(row.packs);
    const of =
      row.packs === ''
        ? Number(row['to buy (g)']) || null
        : row['pack (g)'] === ''
          ? null
          : packs * Number(row['pack (g)']);
    const before = grams.get(food);
    grams.set(food, before == null || of === null ? of : before + of);
  }
  return grams;
}

test('the list is bought with the network cut in between, and put away: the pantry is what arithmetic says', async ({
  page,
  context,
  browser,
  baseURL,
  pageErrors,
}) => {
  test.slow();
  const path = await openList(page);
  const before = await stock(page, path);
  const brings = await bought(page, path);
  const all = await boxes(page).count();
  expect(all).toBeGreaterThan(15);
  const sizes = await boxes(page).evaluateAll((found) =>
    found.map((box) => box.closest('label')?.getBoundingClientRect()),
  );
  for (const size of sizes) {
    expect(size?.width).toBeGreaterThanOrEqual(44);
    expect(size?.height).toBeGreaterThanOrEqual(44);
  }

  await boxes(page).nth(0).check();
  await boxes(page).nth(1).check();
  await expect(status(page)).toHaveText(CONNECTED);

  // Another device hears of it, and goes on by itself while this one has no signal.
  const other = await browser.newContext({ ...(baseURL !== undefined && { baseURL }) });
  const there = await other.newPage();
  await there.goto(path);
  await expect(boxes(there).nth(1)).toBeChecked();
  await context.setOffline(true);
  for (let at = 2; at < all; at++) await boxes(page).nth(at).check();
  await boxes(page).nth(0).uncheck();
  await boxes(page).nth(0).check();
  await expect(status(page)).toHaveText(/^Not connected: \d+ entries wait on this phone\./);
  await expect(page.getByText(`${all} of ${all} in the basket`)).toBeVisible();
  await expectAccessible(page);
  await boxes(there).nth(5).check();
  await expect(status(there)).toHaveText(CONNECTED);
  await boxes(there).nth(2).check();
  await boxes(there).nth(2).uncheck();
  await expect(status(there)).toHaveText(CONNECTED);
  await boxes(page).nth(2).uncheck();
  await boxes(page).nth(2).check();

  // The server can be reached again, but nothing gets through before the page is loaded anew.
  await page.route(EVENTS, (route) => route.abort());
  await context.setOffline(false);
  await page.reload();
  await expect(page.getByText(`${all} of ${all} in the basket`)).toBeVisible();
  await page.unroute(EVENTS);
  await expect(status(page)).toHaveText(CONNECTED, { timeout: 20_000 });
  await expect(there.getByText(`${all} of ${all} in the basket`)).toBeVisible({ timeout: 20_000 });

  // Both put it away, one of them without signal: it is there once.
  await other.setOffline(true);
  await there.getByRole('button', { name: /^Put away: / }).click();
  await page.getByRole('button', { name: /^Put away: / }).click();
  await expect(status(page)).toHaveText(CONNECTED, { timeout: 20_000 });
  await other.setOffline(false);
  await expect(status(there)).toHaveText(CONNECTED, { timeout: 20_000 });
  await expect(page.getByRole('button', { name: /^Put away: / })).toHaveCount(0);

  const after = await stock(page, path);
  for (const [food, grams] of brings) {
    const came = ((after.get(food) ?? 0) - (before.get(food) ?? 0)) / 1000;
    // The table's grams have one decimal.
    expect(came, food).toBeGreaterThan((grams ?? 0) - 0.051);
    expect(came, food).toBeLessThan((grams ?? 0) + 0.051);
  }
  for (const [food, mg] of before) if (!brings.has(food)) expect(after.get(food), food).toBe(mg);
  expect([...brings.values()].filter((grams) => grams !== null).length).toBeGreaterThan(15);

  // What is still on the list has an amount that nobody knows, or does not keep until the filming day and says so.
  await page.goto(path);
  const left = page.getByRole('row').filter({ has: boxes(page) });
  for (const row of await left.all()) await expect(row).toContainText(/amount open|not counted/);
  expect(await left.count()).toBeLessThan(3);
  expect(
    pageErrors.filter((error) => !/ERR_INTERNET_DISCONNECTED|ERR_FAILED|favicon/.test(error)),
  ).toEqual([]);
  await other.close();
});

test('something else is taken without signal: its values say what the dish becomes, and at home it is a food', async ({
  page,
  context,
}) => {
  test.slow();
  const path = await openList(page);
  await page.waitForLoadState('networkidle');
  await context.setOffline(true);
  const row = page.getByRole('row', { name: /Netloft farmhouse cheese/ });
  await row.getByRole('button', { name: /^Not there/ }).click();
  const form = page.getByRole('form', { name: /^Instead of Netloft/ });
  await form.getByRole('button', { name: 'Take it instead' }).click();
  await expect(form.getByText('Say what was taken')).toBeVisible();
  await form.getByLabel('What was taken').fill('Oderwick hill cheese');
  await form.getByLabel('Grams in one').fill('200');
  await form.getByLabel('calories').fill('250');
  await form.getByLabel('protein').fill('31');
  await expect(form.getByText('With this, in One oven')).toBeVisible({ timeout: 20_000 });
  await expect(form.getByText(/protein .* → /).first()).toBeVisible();
  await expectAccessible(page);
  await form.getByRole('button', { name: 'Take it instead' }).click();
  await expect(page.getByText('Instead: Oderwick hill cheese, 200 g')).toBeVisible();

  await context.setOffline(false);
  await expect(status(page)).toHaveText(CONNECTED, { timeout: 20_000 });
  const before = await stock(page, path);
  await page.getByRole('button', { name: /^Make it a food of the pantry/ }).click();
  await page.getByRole('button', { name: 'Put away: 1 food' }).click();
  await expect(page.getByRole('button', { name: /^Put away: / })).toHaveCount(0);
  await expect(status(page)).toHaveText(CONNECTED, { timeout: 20_000 });
  expect((await stock(page, path)).get('Netloft farmhouse cheese, medium aged')).toBe(
    before.get('Netloft farmhouse cheese, medium aged'),
  );
  await page.goto('/pantry');
  await page.getByRole('link', { name: 'Oderwick hill cheese' }).first().click();
  await expect(page.getByText('200 g').first()).toBeVisible();
});

test('the list as one file works from the files of a phone, and its ticks come back by a code', async ({
  page,
  browser,
}) => {
  const path = await openList(page);
  const name = await boxes(page)
    .nth(3)
    .evaluate((box) => box.closest('label')?.textContent ?? '');
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'The list as a file' }).click();
  const file = await (await download).path();
  const text = readFileSync(file, 'utf8');
  expect(text).not.toMatch(/(?:src|href)=|url\(|@import/);

  const carried = await browser.newContext({
    offline: true,
    viewport: { width: 390, height: 844 },
  });
  const alone = await carried.newPage();
  const problems: string[] = [];
  alone.on('pageerror', (error) => problems.push(error.message));
  await alone.setContent(text);
  const ticks = alone.getByRole('checkbox');
  await expect(ticks).toHaveCount(await boxes(page).count());
  for (const box of await ticks.all()) {
    expect((await box.locator('..').boundingBox())?.height).toBeGreaterThanOrEqual(44);
  }
  await ticks.nth(3).check();
  await ticks.nth(7).check();
  await expect(alone.locator('#count')).toContainText('2 of ');
  const code = (await alone.locator('#code').textContent()) ?? '';
  expect(problems).toEqual([]);
  await carried.close();

  const field = page.getByRole('textbox', { name: 'Code from the file' });
  const bring = page.getByRole('button', { name: 'Bring the ticks back' });
  await field.fill(`${code.slice(0, -1)}${code.endsWith('0') ? '1' : '0'}`);
  await bring.click();
  await expect(page.getByText('A character of this code is wrong')).toBeVisible();
  await field.fill(code.toLowerCase().replaceAll('-', ' '));
  await bring.click();
  await expect(page.getByText('2 ticks came back.')).toBeVisible();
  await expect(page.getByRole('checkbox', { name, exact: true })).toBeChecked();
  await expect(boxes(page).nth(7)).toBeChecked();
  await field.fill(code);
  await bring.click();
  await expect(page.getByText('0 ticks came back; the others were there already')).toBeVisible();
  expect(path).toContain('/shopping');
});

test('what was paid is kept beside what was foreseen, and a span of days has a list of its own', async ({
  page,
}) => {
  const path = await openList(page);
  await page.getByLabel('Sum on the receipt').fill('sixty');
  await page.getByRole('button', { name: 'Keep what was paid' }).click();
  await expect(page.getByText('Write the sum on the receipt')).toBeVisible();
  await page.getByLabel('Sum on the receipt').fill('67.50');
  await page.getByRole('button', { name: 'Keep what was paid' }).click();
  await expect(page.getByText(/^USD 67\.50, USD .* than /)).toBeVisible();
  await expect(status(page)).toHaveText(CONNECTED);
  const table = await (await page.request.get(`${path}/paid.csv`)).text();
  expect(readTable(table)).toMatchObject([{ paid: '67.50', currency: 'USD' }]);

  await page.getByText('One list for several episodes').click();
  await page.getByLabel('Last filming day').fill('2026-12-20');
  await page.getByRole('button', { name: 'Make one list' }).click();
  await expect(page.getByText('For all episodes filmed Sat 12 Dec to Sun 20 Dec.')).toBeVisible();
  await expect(boxes(page).first()).toBeEnabled();
  await boxes(page).first().check();
  await expect(page.getByText(/^1 of \d+ in the basket$/)).toBeVisible();
  await page.getByRole('link', { name: 'This episode alone' }).click();
  await expect(page.getByText(/^0 of \d+ in the basket$/)).toBeVisible();
});
