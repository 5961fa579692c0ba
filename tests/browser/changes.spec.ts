import { expect, test } from './fixtures';

test.describe('on a database of its own', () => {
  test.use({ alone: true });

  test('a change in the kitchen is told in words, and undone where it is told', async ({
    page,
    pageErrors,
  }) => {
    await page.goto('/kitchen');
    const name = page.getByRole('textbox', { name: 'Name' }).first();
    const before = await name.inputValue();
    await name.fill('The other galley');
    await page.getByRole('button', { name: 'Save the kitchen' }).press('Enter');
    await expect(page.getByText(/done\.$/).first()).toBeVisible();

    await page.getByRole('link', { name: 'What changed' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'What changed' })).toBeVisible();
    const newest = page.getByRole('listitem').first();
    await expect(newest).toContainText('The other galley');
    await newest.getByRole('button', { name: /^Undo/ }).press('Enter');
    await expect(page.getByRole('listitem').first()).toContainText(before);
    await page.goto('/kitchen');
    await expect(name).toHaveValue(before);
    expect(pageErrors).toEqual([]);
  });
});
