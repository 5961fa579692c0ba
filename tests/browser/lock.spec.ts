import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true });

test('numbers are locked by hand, a changed ingredient breaks the lock and is told, and they are locked again', async ({
  page,
}) => {
  test.slow();
  await page.goto('/');
  const href = await page.locator('a[href*="/episodes/"]').first().getAttribute('href');
  const [here = ''] = /\/episodes\/[0-9a-f-]{36}/.exec(href ?? '') ?? [];

  await page.goto(`${here}/publish`);
  const lock = page.getByRole('region', { name: 'Numbers lock' });
  await expect(lock).toContainText('Not locked: a draft');
  await lock.getByRole('button', { name: 'Lock the numbers' }).click();
  await expect(lock).toContainText(/Numbers locked .*Lock 1: /);
  await expect(lock).toContainText(/SHA-256 [0-9a-f]{12}…/);
  await expect(lock).toContainText('nothing under them has changed');
  await expectAccessible(page);

  // Another amount of an ingredient that is not weighed.
  await page.goto(here);
  const row = page.getByRole('row', { name: /1 cup frozen peas/ });
  const edit = await row.locator('a[href*="edit="]').first().getAttribute('href');
  await page.goto(edit ?? '');
  const form = page.locator('main form[id]:visible').first();
  await form.getByLabel('Amount', { exact: true }).fill('2');
  await form.getByRole('button', { name: /^Save/ }).first().click();
  await expect(page).not.toHaveURL(/edit=/);

  await page.goto(`${here}/publish`);
  await expect(lock).toContainText(/Lock of .* broken\. .*Lock 1: /);
  const causes = lock.getByRole('table', { name: /^What changed since/ });
  await expect(causes).toContainText('Barley skillet: “1 cup frozen peas”, amount');
  await expect(causes).toContainText('2 cup');
  const numbers = lock.getByRole('table', { name: 'Numbers that changed', exact: true });
  await expect(numbers).toContainText('Barley skillet, the whole dish: calories');
  await expect(numbers).toContainText('the dishes shown: calories');
  await expectAccessible(page);

  await page.goto(`${here}/evidence`);
  await expect(page.getByRole('main')).toContainText('The numbers are those of now, not locked.');
  await expectAccessible(page);

  await page.goto(`${here}/publish`);
  await lock.getByRole('button', { name: 'Lock again' }).click();
  await expect(lock).toContainText(/Numbers locked .*Lock 2: /);

  await lock.getByRole('link', { name: 'Evidence' }).click();
  await expect(page.getByRole('heading', { name: 'The working' })).toBeVisible();
  await expect(page.getByRole('main')).toContainText('nothing under them has changed');
  await expect(page.getByRole('table', { name: 'Barley skillet' })).toContainText('268');
  const said = page.getByRole('table', { name: /^Statements and what/ });
  await expect(said).toContainText('fourteen hundred and nine calories');
  await expectAccessible(page);

  const data = (await (await page.request.get(`${here}/evidence/evidence.json`)).json()) as {
    readonly lock: { readonly seq: number; readonly holds: boolean };
    readonly statements: readonly object[];
  };
  expect(data.lock).toMatchObject({ seq: 2, holds: true });
  expect(data.statements.length).toBeGreaterThan(10);

  // In print the navigation and the buttons are gone, and what is said is there.
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('button', { name: 'Print the evidence' })).toBeHidden();
  await expect(said).toBeVisible();
});
