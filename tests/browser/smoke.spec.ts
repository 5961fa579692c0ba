import { expect, expectAccessible, test } from './fixtures';

test('the season page answers, has one heading of the first level, and says no error', async ({
  page,
  pageErrors,
}) => {
  const answer = await page.goto('/');
  expect(answer?.status()).toBe(200);
  await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
  expect(pageErrors).toEqual([]);
});

test('the season page has no violation of WCAG 2.2 AA that axe finds', async ({ page }) => {
  await page.goto('/');
  await expectAccessible(page);
});

test('the program says who it is, and which build it serves', async ({ request }) => {
  const answer = await request.get('/alive');
  expect(answer.headers()['cache-control']).toBe('no-store');
  const said = (await answer.json()) as Record<string, string>;
  expect(said.name).toBe('scale-and-slate');
  expect(said.instance).toMatch(/^[0-9a-f]{16}$/);
});
