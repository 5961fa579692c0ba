import { expect, test } from './fixtures';
import { freshEpisode } from './fresh-episode';

// A page that was fixed when the program was built would never show it.
test('an episode begun on the season page is there after a reload, and in the season', async ({
  page,
}) => {
  const path = await freshEpisode(page, 'A tray for the ferry');
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('A tray for the ferry');
  await page.goto('/');
  const link = page.getByRole('link', { name: 'A tray for the ferry' });
  await expect(link).toHaveAttribute('href', path);
});

test('an episode without a title is refused at its field, and nothing is begun', async ({
  page,
}) => {
  await page.goto('/');
  await page.getByText('Begin an episode with its title').click();
  await page.getByRole('button', { name: 'Begin the episode' }).click();
  await expect(page.getByRole('textbox', { name: 'Title' })).toHaveAttribute(
    'aria-invalid',
    'true',
  );
  await expect(page).toHaveURL(/\/$/);
});

test.describe('on a database of its own', () => {
  test.use({ alone: true });

  test('the season of a first start is the demo alone', async ({ page }) => {
    await page.goto('/');
    const list = page.getByRole('region', { name: 'Episodes by date' });
    await expect(list.getByRole('listitem')).toHaveCount(1);
  });
});
