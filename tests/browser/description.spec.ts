import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';

// The description in its three forms, in a layout of one's own by keyboard, and what to leave out of one too long.
test.use({ alone: true });

test('the description is laid out by keyboard, shortened to a limit, and copied in each form with its lock', async ({
  page,
  pageErrors,
}) => {
  test.slow();
  const here = `${await demo(page)}/publish`;
  await page.goto(here);
  const text = page.locator('#description-text');
  await expect(text).toContainText('BARLEY SKILLET');

  const forms = page.getByRole('navigation', { name: 'Form of the description' });
  await forms.getByRole('link', { name: 'Markdown' }).click();
  await expect(text).toContainText('## Barley skillet');
  await expect(forms.getByRole('link', { name: 'Markdown' })).toHaveAttribute(
    'aria-current',
    'true',
  );
  await forms.getByRole('link', { name: 'HTML' }).click();
  await expect(text).toContainText('<h2>Barley skillet</h2>');
  await expectAccessible(page);

  // Pasted into a page, the HTML is read as it is meant: the browser is its parser.
  const html = (await text.textContent()) ?? '';
  const headings = await page.evaluate((inner) => {
    const parsed = new DOMParser().parseFromString(inner, 'text/html');
    return [...parsed.querySelectorAll('h1, h2')].map((each) => each.textContent);
  }, html);
  expect(headings).toContain('Barley skillet');
  expect(headings).toHaveLength(4);

  await forms.getByRole('link', { name: 'Plain text' }).click();
  await page.getByText('House layout').click();
  await page.getByRole('button', { name: 'Leave out Sources of the figures' }).press('Enter');
  await expect(text).not.toContainText('Sources of the figures');
  await page.getByRole('button', { name: 'Put in Swaps' }).press('Enter');
  await expect(text).toContainText('SWAPS');
  await expect(page.getByRole('button', { name: 'Leave out Allergens' })).toHaveCount(0);

  // What stands first says so, and who moved it there still stands on the button.
  const up = page.getByRole('button', { name: 'Hook up' });
  await up.press('Enter');
  await expect(up).toHaveAttribute('title', 'It stands first.');
  await expect(up).toBeFocused();
  await up.press('Enter');
  await page.getByRole('button', { name: 'Title up' }).press('Enter');
  await expect(page.getByRole('button', { name: 'Title up' })).toBeFocused();
  await expect(up).not.toHaveAttribute('title');
  await expect(page.getByRole('button', { name: 'Sources of the figures down' })).toHaveAttribute(
    'aria-disabled',
    'true',
  );

  const limit = page.getByLabel('Characters at most');
  await limit.fill('3500');
  await limit.press('Enter');
  await expect(page.getByText(/^Too long\. .* of 3,500/)).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Leave out of this text' }).click();
  await expect(page.getByText(/^Left out of this text:/)).toBeVisible();
  await expect(page.getByText(/^Too long\. /)).toHaveCount(0);
  await expect(text).toContainText('Allergens: contains');

  await page.getByRole('button', { name: /^Copy,/ }).click();
  await expect(page.getByText('The numbers in it are locked')).toBeVisible();
  await forms.getByRole('link', { name: 'Markdown' }).click();
  await expect(text).toContainText('## Barley skillet');
  await page.getByRole('button', { name: /^Copy,/ }).click();
  await expect(page.getByText('The text is kept with lock 1')).toBeVisible();
  await expect(page.getByText(/, Markdown, lock 1/)).toBeVisible();
  expect(pageErrors).toEqual([]);
});
