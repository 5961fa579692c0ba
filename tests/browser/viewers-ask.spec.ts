import { episodeFigures } from '#lib/figures/episode-figures';
import { demoFile } from '../ui/page-support';
import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';

const skillet = episodeFigures(demoFile(), ['energyKcal']).dishes.find(
  ({ title }) => title === 'Barley skillet',
);
/** What comes of counting the whole skillet twice. */
const TWICE = Math.round(2 * (skillet?.whole.energyKcal?.value ?? NaN));

test.describe('what viewers ask', () => {
  test.use({ alone: true, viewport: { width: 1440, height: 900 } });

  test('a comment with another number, the step that gives it, and the reply that is kept', async ({
    page,
    pageErrors,
  }) => {
    test.slow();
    const episode = await demo(page);
    await page.goto(`${episode}/publish`);
    await page.getByRole('link', { name: 'I get a different number' }).click();
    const comment = page.getByLabel('The viewer’s comment');
    await page.getByRole('button', { name: 'Look for what gives their number' }).click();
    await expect(comment).toHaveAccessibleDescription(/Say what the viewer wrote/);

    await comment.fill('<img src=x onerror=alert(1)> I get 9999 calories for the whole skillet!');
    await page.getByRole('button', { name: 'Look for what gives their number' }).press('Enter');
    await expect(page.getByText(/Read as 9999 calories, of Barley skillet/)).toBeVisible();
    await expect(page.locator('#comment')).toBeFocused();
    await expect(page.getByText('<img src=x onerror=alert(1)>').first()).toBeVisible();
    await expect(page.getByText(/No single difference gives theirs/)).toBeVisible();
    const reply = page.getByLabel('Your reply');
    await expect(reply).toHaveValue(/couldn’t find the one difference that gives 9999 calories/);
    await expect(reply).not.toHaveValue(/wrong|mistake/i);

    const number = page.getByLabel('Their number', { exact: true });
    await number.fill('twice as much');
    await page.getByRole('button', { name: 'Look again' }).click();
    await expect(number).toHaveAccessibleDescription(/Write the viewer’s number as/);
    await expect(number).toHaveValue('twice as much');
    await number.fill(String(TWICE));
    await number.press('Enter');
    await expect(page.getByText('with twice as much of it:')).toBeVisible();
    await expect(page.locator('#comment')).toBeFocused();
    const told = page.getByRole('listitem').filter({ hasText: 'with twice as much of it' });
    const answer = told.getByRole('link', { name: /^Answer with/ });
    if ((await answer.count()) > 0) await answer.click();
    await expect(reply).toHaveValue(/with twice as much of it it comes to/);
    await expect(told.getByText(/^= \d+ kcal$/)).toBeVisible();
    await expectAccessible(page);

    await reply.fill('Thank you! I think yours is for two.');
    await page.getByRole('button', { name: 'Save the reply' }).click();
    const kept = page.getByRole('region', { name: 'Comments and replies' });
    await expect(kept).toContainText('I think yours is for two.');
    await kept.getByRole('link', { name: /^Open the comment/ }).click();
    await expect(reply).toHaveValue('Thank you! I think yours is for two.');

    // What was written stays when another draft is asked for, until that is taken.
    await number.fill('9999');
    await page.getByRole('button', { name: 'Look again' }).click();
    await expect(page.getByText(/No single difference gives theirs/)).toBeVisible();
    await expect(reply).toHaveValue('Thank you! I think yours is for two.');
    await page.getByRole('button', { name: 'Take this draft' }).click();
    await expect(reply).toHaveValue(/the one difference that gives 9999 calories/);
    await expect(reply).toBeFocused();
    await page.getByRole('button', { name: 'Back to my words' }).click();
    await expect(reply).toHaveValue('Thank you! I think yours is for two.');
    expect(pageErrors).toEqual([]);
  });

  test('a swap tried, said in a sentence, saved, and told in the table', async ({
    page,
    pageErrors,
  }) => {
    test.slow();
    const episode = await demo(page);
    await page.goto(`${episode}/publish`);
    await page.getByRole('link', { name: /Swaps$/ }).click();
    await page.getByRole('link', { name: 'Skyr pots with oat crumb' }).click();
    await page.getByRole('link', { name: 'Swap 25 g blanched almonds, chopped' }).click();
    await page.getByLabel(/^Another food in place of/).fill('walnuts english');
    await expect(page.getByLabel('The other food')).toContainText(/walnuts/i);
    await page.getByRole('button', { name: 'Try it', exact: true }).press('Enter');
    await expect(page.getByRole('heading', { name: 'What it does' })).toBeVisible();
    await expect(page.locator('#told')).toBeFocused();
    const sentence = page.locator('#swap-sentence');
    await expect(sentence).toContainText(/^With “.*walnut/i);
    await expect(page.getByRole('table', { name: 'What changes' })).toContainText('likely');
    await page.getByLabel('Save it as').fill('walnuts for almonds');
    await page.getByRole('button', { name: 'Save the swap' }).click();
    const table = page.getByRole('table', { name: 'Saved swaps and what they change' });
    await expect(table).toContainText('walnuts for almonds');
    await expect(page.locator('#swaps-text')).toContainText('walnuts for almonds (Skyr pots');
    await expectAccessible(page);

    await page.getByRole('link', { name: 'Change the swap walnuts for almonds' }).click();
    await page.getByRole('link', { name: 'Swap 2 tablespoons unsalted butter' }).click();
    await page.getByLabel('Another amount', { exact: true }).fill('1');
    await page.getByLabel('Another amount', { exact: true }).press('Enter');
    await expect(page.getByText(/unsalted butter: .* instead of/)).toBeVisible();
    await expect(page.locator('#told')).toBeFocused();
    await page.getByRole('button', { name: 'Save the change' }).click();
    const saved = table.getByRole('row').filter({ hasText: 'walnuts for almonds' });
    await expect(saved).toHaveCount(1);
    await saved.getByRole('button', { name: /^Take out/ }).click();
    await expect(saved).toHaveCount(0);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect(saved).toHaveCount(1);
    expect(pageErrors).toEqual([]);
  });

  test('a dish fitted to a target, put into the recipe, and undone', async ({
    page,
    pageErrors,
  }) => {
    test.slow();
    const episode = await demo(page);
    await page.goto(episode);
    await page.getByRole('link', { name: 'Fit it to a target: Skyr pots with oat crumb' }).click();
    await page.getByLabel('protein, g, at least').fill('a lot');
    await page.getByRole('button', { name: 'Find the amounts' }).click();
    await expect(page.getByLabel('protein, g, at least')).toHaveAccessibleDescription(
      /Write a number/,
    );
    await expect(page.getByLabel('protein, g, at least')).toHaveValue('a lot');
    await page.getByLabel('protein, g, at least').fill('110');
    for (const box of await page.getByRole('checkbox', { name: /, all dishes$/ }).all()) {
      await box.uncheck();
    }
    await page.getByRole('button', { name: 'Find the amounts' }).press('Enter');
    await expect(page.getByText(/Proven: nothing else meets it with less change/)).toBeVisible();
    await expect(page.locator('#found')).toBeFocused();
    const amounts = page.getByRole('table', { name: 'Amounts now and new' });
    await expect(amounts).toBeVisible();
    await expectAccessible(page);
    await page.getByRole('link', { name: 'Keep them as a swap' }).click();
    await expect(page.getByRole('heading', { name: 'What it does' })).toBeVisible();
    await page.goBack();
    await page.getByRole('button', { name: 'Put them into the recipe' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toContainText('One oven, three dishes');
    const asBefore = page.getByRole('row', { name: /^600 g plain skyr/ });
    await expect(asBefore).toHaveCount(0);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect(asBefore.first()).toBeVisible();
    expect(pageErrors).toEqual([]);
  });
});
