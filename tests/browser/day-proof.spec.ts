import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';

test.describe('on a server that has searched nothing yet', () => {
  test.use({ alone: true });

  test('the demo’s day is followed until it is proven best; a change is searched again', async ({
    page,
    pageErrors,
  }) => {
    const day = `${await demo(page)}/day`;
    await page.goto(day);
    const proven = page.getByText(/^Proven for the steps, times and ties as they are written/);
    await expect(proven).toBeVisible({ timeout: 30_000 });
    await page.getByText('What is proven', { exact: true }).click();
    const levels = page.getByRole('table', { name: /^What is proven of the order/ });
    await expect(levels.getByRole('row')).toHaveCount(5);
    await expect(levels.getByText('the least there is')).toHaveCount(4);
    await expectAccessible(page);

    // The line of the search, as the page hears it: it is over, so it says so and ends.
    const told = await page.request.get(`${day}/search`);
    expect(told.headers()['content-type']).toContain('text/event-stream');
    expect(await told.text()).toMatch(/^event: progress\ndata: .+\n\nevent: over\ndata: \n\n$/);

    await page.getByRole('button', { name: 'Pack it instead' }).click();
    await expect(page.getByRole('button', { name: 'As lived instead' })).toBeVisible();
    await expect(proven).toBeVisible({ timeout: 30_000 });
    expect(pageErrors).toEqual([]);
  });

  test('while it is searched the best order stands there, and can be kept', async ({ page }) => {
    const day = `${await demo(page)}/day`;
    // The line of the search is held back, so that the page stays as it is while one is searched.
    await page.route('**/day/search', () => undefined);
    await page.goto(day);
    const keep = page.getByRole('button', { name: 'Keep this order' });
    const proven = page.getByText(/^Proven for the steps, times and ties as they are written/);
    await expect(keep.or(proven)).toBeVisible();
    const order = page.getByRole('region', { name: 'Shooting order' });
    await expect(
      order.getByText('Weigh and chop for the skillet', { exact: true }).first(),
    ).toBeVisible();
    if (await keep.isVisible()) {
      await expectAccessible(page);
      await keep.click();
      await expect(keep).toBeHidden();
    }
    await expect(order.getByText(/^(Proven for|The best order)/)).toBeVisible();
  });
});

test('an episode without a day has no search to follow', async ({ page }) => {
  const answer = await page.request.get(
    '/episodes/00000000-0000-7000-8000-000000000000/day/search',
  );
  expect(answer.status()).toBe(404);
});
