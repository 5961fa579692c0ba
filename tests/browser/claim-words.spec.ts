import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';

test.describe('a claim word that nobody can judge yet', () => {
  test.use({ alone: true, viewport: { width: 1440, height: 900 } });

  // 20 % of the Daily Value of 50 g in 140 g (21 CFR 101.54(b)(1), 101.12(b)), of the protein that counts (101.9(c)(7)).
  test('leads to what its dish is judged by, and has a verdict with its working once that is said', async ({
    page,
    pageErrors,
  }) => {
    test.slow();
    const episode = await demo(page);
    await page.goto(`${episode}/edit`);
    const statement = page
      .getByRole('region', { name: 'Statements' })
      .getByRole('button', { name: /high protein/ });
    await page
      .getByRole('navigation', { name: 'Strip of the episode' })
      .getByRole('link', { name: /high protein/ })
      .click();
    await expect(statement).toContainText('can’t say');
    await statement.click();
    const share = page.getByLabel('Share of its protein that counts, in %');
    await page
      .getByLabel('How much of it is customarily eaten')
      .selectOption('mixed dishes not measured with a cup');
    await share.fill('ninety-two');
    await page.getByRole('button', { name: 'Judge it by this' }).click();
    await expect(share).toHaveAccessibleDescription(/Write percent as/);
    await expect(share).toHaveValue('ninety-two');
    await share.fill('92');
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Judge it by this' }).click();
    await expect(statement).toContainText('agrees with your breakdown');
    const working = page.getByRole('table', { name: 'What 21 CFR 101.54(b)(1) asks for' });
    await expect(working.getByRole('row').last()).toContainText('140 g');
    await expect(page.getByText(/is for you and your counsel to say/).first()).toBeVisible();

    await page.getByLabel('Judged as').selectOption('meal');
    await page.getByRole('button', { name: 'Judge it by this' }).click();
    await expect(statement).toContainText('can’t say');
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect(statement).toContainText('agrees with your breakdown');
    await expectAccessible(page);
    expect(pageErrors).toEqual([]);
  });
});
