import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';

// What goes out by itself: added by keyboard, refused with its typing, locked, broken, changed, taken out and back.
test.use({ alone: true });

test('a piece has its own title and limit and the lock of its episode', async ({
  page,
  pageErrors,
}) => {
  test.slow();
  const here = await demo(page);
  await page.goto(`${here}/publish`);
  const part = page.getByRole('region', { name: 'Pieces' });
  const piece = (title: string) =>
    part.getByRole('listitem').filter({ has: page.getByRole('heading', { name: title }) });
  const skyr = piece('Skyr pots in one minute');
  await expect(skyr).toContainText('Clip of Skyr pots');
  await expect(skyr).toContainText('Not locked: a draft');

  // Nothing says what it is of: refused, and what was typed stands.
  await part.getByText('Add a piece', { exact: true }).click();
  const add = page.locator('#new-piece');
  await add.getByLabel('Title').fill('Loaf in a minute');
  await add.getByLabel('Length at most').fill('900');
  await add.getByRole('button', { name: 'Add the piece' }).press('Enter');
  await expect(add.getByRole('link', { name: /Say what it is of/ })).toBeVisible();
  await expect(add.getByLabel('Title')).toHaveValue('Loaf in a minute');
  await expectAccessible(page);
  await add.getByRole('checkbox', { name: /meatloaf/ }).press('Space');
  await add.getByRole('button', { name: 'Add the piece' }).press('Enter');
  const loaf = piece('Loaf in a minute');
  await expect(loaf).toContainText('Clip of Tray-baked turkey meatloaf');
  await expect(loaf.locator('pre')).toContainText('Loaf in a minute');
  await expect(loaf.locator('pre')).toContainText('74 °C (165 °F) inside');
  await expect(loaf).toContainText('Left out for its length: ingredients');

  // Its numbers are those of the lock.
  await page.getByRole('button', { name: 'Lock the numbers' }).click();
  await expect(loaf).toContainText('Numbers locked');
  const locked = (await loaf.locator('pre').textContent()) ?? '';
  await loaf.getByRole('button', { name: /^Copy Loaf in a minute, / }).click();
  await expect(loaf.getByText(/^(Copied\.|Selected: )/)).toBeVisible();

  // Another amount in another dish breaks it.
  await page.goto(here);
  const row = page.getByRole('row', { name: /1 cup frozen peas/ });
  const edit = await row.locator('a[href*="edit="]').first().getAttribute('href');
  await page.goto(edit ?? '');
  const form = page.locator('main form[id]:visible').first();
  await form.getByLabel('Amount', { exact: true }).fill('2');
  await form.getByRole('button', { name: /^Save/ }).first().click();
  await expect(page).not.toHaveURL(/edit=/);
  await page.goto(`${here}/publish`);
  await expect(loaf).toContainText(/Lock of .* broken/);
  await expect(loaf).toContainText('No dish of this piece has changed');
  expect(await loaf.locator('pre').textContent()).toBe(locked);
  await expect(piece('The harbor day in numbers')).toContainText('Barley skillet: ');

  await loaf.getByText('Change Loaf in a minute').click();
  await loaf.getByLabel('Title').fill('The loaf');
  await loaf.getByRole('button', { name: 'Save the piece' }).click();
  const renamed = piece('The loaf');
  await expect(renamed.locator('pre')).toContainText('The loaf');
  await expectAccessible(page);
  const takeOut = renamed.getByRole('button', { name: 'Take out The loaf' });
  // Where the form was folded by its change, it is opened again.
  if (!(await takeOut.isVisible())) await renamed.getByText('Change The loaf').click();
  await takeOut.click();
  await expect(renamed).toHaveCount(0);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(renamed).toHaveCount(1);
  expect(pageErrors).toEqual([]);
});
