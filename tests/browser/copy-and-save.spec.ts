import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';

// What was taken away is told as it is: copied, selected, saved whole, or none of it.
test.use({ alone: true });

test('without a clipboard a field’s text is selected, and what cannot be is told so', async ({
  page,
}) => {
  await page.addInitScript(() => {
    Object.defineProperty(navigator, 'clipboard', { value: undefined });
  });
  await page.goto(`${await demo(page)}/publish/replies`);
  await page.getByLabel('The viewer’s comment').fill('I get 9999 calories for the whole skillet!');
  await page.getByRole('button', { name: 'Look for what gives their number' }).click();
  const reply = page.getByLabel('Your reply');
  await expect(reply).toHaveValue(/9999 calories/);
  const copy = page.getByRole('button', { name: 'Copy the reply' });
  await copy.click();
  await expect(page.getByText(/^Selected: press Ctrl\+C/)).toBeVisible();
  await expect(reply).toBeFocused();
  const selected = await reply.evaluate(
    (field: HTMLTextAreaElement) => field.selectionEnd - field.selectionStart,
  );
  expect(selected).toBe((await reply.inputValue()).length);

  await reply.evaluate((field) => field.removeAttribute('id'));
  await copy.click();
  await expect(page.getByText(/^This browser does not let it be copied here/)).toBeVisible();
  await expect(page.getByText(/^Selected: /)).toHaveCount(0);
});

test('a description that the program could not keep is told so, and the page stays', async ({
  page,
}) => {
  await page.goto(`${await demo(page)}/publish`);
  await page.route('**/publish', (route) =>
    route.request().method() === 'POST' ? route.abort() : route.continue(),
  );
  await page.getByRole('button', { name: /^Copy,/ }).click();
  await expect(page.getByText(/^The program did not answer, so nothing was saved/)).toBeVisible();
  await expect(page.locator('#description-text')).toContainText('BARLEY SKILLET');
});

test('a zip that does not come is told on its page, and saved once it does', async ({ page }) => {
  test.slow();
  const here = await demo(page);
  await page.goto(here);
  await page.route('**/export/bundle', (route) => route.fulfill({ status: 500, body: '' }));
  const all = page.getByRole('link', { name: 'All as one zip' });
  await all.click();
  await expect(page.getByText(/could not be made or did not come whole/)).toBeVisible();
  await expectAccessible(page);
  await page.unroute('**/export/bundle');
  await page.route('**/export/bundle', (route) =>
    route.fulfill({
      headers: { 'content-disposition': 'attachment; filename="harbor-day.bundle.zip"' },
      body: 'a zip',
    }),
  );
  const [download] = await Promise.all([page.waitForEvent('download'), all.click()]);
  expect(download.suggestedFilename()).toBe('harbor-day.bundle.zip');
  await expect(page.getByText('Saved.', { exact: true })).toBeVisible();

  await page.goto(`${here}/cards`);
  await page.route('**/cards/progress*', (route) => route.abort());
  await page.getByRole('link', { name: 'All cards in one zip' }).click();
  await expect(page.getByText(/^The program does not answer, so how far it is/)).toBeVisible();
});

test('a link to the lock puts its reader at the lock', async ({ page }) => {
  const here = await demo(page);
  const lock = page.getByRole('heading', { name: 'Numbers lock' });
  for (const path of ['numbers', 'cards', 'evidence', 'publish/captions']) {
    await page.goto(`${here}/${path}`);
    await page.getByRole('main').getByRole('link', { name: 'Lock the numbers' }).click();
    await expect(page).toHaveURL(`${here}/publish#numbers-lock`);
    await expect(lock).toBeFocused();
  }
});
