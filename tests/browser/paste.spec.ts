import { expect, expectAccessible, test } from './fixtures';
import { freshEpisode } from './fresh-episode';

// Pasted by the dish's own form, with what a note from a web page brings along.
test('a pasted list is matched, an open amount settled in each of its ways, and words are remembered', async ({
  page,
  pageErrors,
}) => {
  await freshEpisode(page, 'Pasted on the quay');
  const dish = page.locator('#new-dish');
  await dish.getByRole('textbox', { name: 'Dish' }).fill('Morning tray');
  await dish.getByRole('button', { name: 'Add the dish' }).click();
  const section = page.getByRole('region', { name: 'Morning tray', exact: true });
  const list = section.getByRole('textbox', { name: 'Ingredients' });
  await list.fill(
    '<ul><li>180 g egg whites</li><li>2 eggs</li><li>a handful of rocket</li><li>½½ cup milk</li></ul>',
  );
  await section.getByRole('button', { name: 'Add the ingredients' }).click();

  const waiting = section.getByRole('region', { name: 'To confirm: Morning tray' });
  const row = (words: string) => waiting.getByRole('listitem').filter({ hasText: words });
  // Egg, white, raw, fresh: USDA SR28 01124.
  await expect(row('180 g egg whites')).toContainText('SR28 01124');
  await expect(row('½½ cup milk')).toContainText('is no number');
  await expectAccessible(page);

  await row('2 eggs')
    .getByRole('button', { name: /by 1 large, 50 g$/ })
    .press('Enter');
  await expect(section.getByRole('row', { name: /^2 eggs/ })).toContainText('100');
  await row('a handful of rocket')
    .getByRole('textbox', { name: 'Grams, or a range' })
    .fill('15-25');
  await row('a handful of rocket')
    .getByRole('button', { name: /^Save the grams/ })
    .press('Enter');
  await expect(section.getByRole('row', { name: /^a handful of rocket/ })).toContainText('15–25');

  const milk = row('½½ cup milk');
  await milk.getByText('Another food').press('Enter');
  await milk.getByText('I can’t tell which of two').press('Enter');
  await milk.getByRole('searchbox').fill('milk nonfat fluid');
  await expect(milk.getByRole('combobox', { name: 'The second food' })).toContainText(/nonfat/i);
  await milk.getByRole('button', { name: 'Count it as either' }).press('Enter');
  await expect(section.getByRole('row', { name: /^½½ cup milk/ })).toContainText(' or Milk');
  await row('½½ cup milk').getByRole('textbox', { name: 'Grams, or a range' }).fill('120');
  await row('½½ cup milk')
    .getByRole('button', { name: /^Save the grams/ })
    .press('Enter');

  await row('180 g egg whites').getByRole('button', { name: /^Yes/ }).press('Enter');
  await expect(row('180 g egg whites')).toHaveCount(0);
  await waiting.getByRole('button', { name: /^Yes to (?:all|both)/ }).press('Enter');
  await expect(waiting).toHaveCount(0);
  await expect(section.getByText('not confirmed')).toHaveCount(0);

  // Words that were confirmed by themselves mean the same food again, and nobody is asked twice.
  await list.fill('90 g Egg Whites');
  await section.getByRole('button', { name: 'Add the ingredients' }).click();
  await expect(section.getByRole('row', { name: /^90 g Egg Whites/ })).toBeVisible();
  await expect(waiting).toHaveCount(0);
  // Those that were only among all of them are asked again.
  await list.fill('40 g rocket');
  await section.getByRole('button', { name: 'Add the ingredients' }).click();
  await expect(row('40 g rocket')).toContainText('Arugula, raw');
  expect(pageErrors).toEqual([]);
});
