import type { Locator, Page } from '@playwright/test';
import { remarkedEpisode } from '../support/remarked-episode';
import { bringIn } from './bring-in';
import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true });

/** A nutrient of the whole dish in its panel, which is unfolded for it. */
async function inPanel(page: Page, nutrient: string): Promise<Locator> {
  const pot = page.getByRole('region', { name: 'Barley pot', exact: true });
  const panel = pot.locator('details', { hasText: 'The whole panel' });
  await panel.evaluate((each: HTMLDetailsElement) => (each.open = true));
  const table = pot.getByRole('table', { name: 'Barley pot: the whole panel' });
  const heads = await table.getByRole('columnheader').allTextContents();
  const whole = table.getByRole('row', { name: /^the whole dish/ });
  // The head of the row is a cell too, but of another role.
  return whole.getByRole('cell').nth(heads.indexOf(nutrient) - 1);
}

const row = (page: Page, words: string) =>
  page.locator('tr[data-member]').filter({ hasText: words });

test('what a source does not state is counted from 0 by one press: no more "at least", until it is undone', async ({
  page,
  pageErrors,
}) => {
  await bringIn(page, remarkedEpisode());
  const offers = page.getByRole('region', { name: 'Too small to matter: Barley pot' });
  // 0.6 g (and half a milligram) of a food with 53.99 (and half a hundredth) g of carbohydrate in 100 g.
  await expect(offers.getByRole('listitem')).toHaveText([/ fibre/, / sugars/]);
  await expect(offers).toContainText('no value for 0.6 g paprika');
  await expect(offers).toContainText('it can hold at most 0.33 g');
  // 72.3 g with 15.55 g in 100 g, and 3.5 g of a label that says 4.
  await expect(await inPanel(page, 'fibre')).toContainText('at least 14 g');
  await expectAccessible(page);

  const count = offers.getByRole('button', { name: /^Count it as 0 to 0.33 g fibre: 0.6 g/ });
  await count.press('Enter');
  await expect(row(page, '0.6 g paprika')).toContainText('counted as 0 to 0.33 g fibre');
  await expect(offers.getByRole('listitem')).toHaveText([/ sugars/]);
  await expect(await inPanel(page, 'fibre')).toContainText('15 g');
  await expect(await inPanel(page, 'fibre')).not.toContainText('at least');
  await expectAccessible(page);

  await page.getByRole('button', { name: /^Undo/ }).press('Enter');
  await expect(offers.getByRole('listitem')).toHaveCount(2);
  await expect(await inPanel(page, 'fibre')).toContainText('at least 14 g');

  await offers.getByRole('button', { name: 'Count all 2 as ranges' }).press('Enter');
  await expect(offers).toBeHidden();
  const back = row(page, '0.6 g paprika').getByRole('button', {
    name: 'Leave it missing: sugars of 0.6 g paprika',
  });
  await back.press('Enter');
  await expect(offers.getByRole('listitem')).toHaveText([/ sugars/]);
  await expect(await inPanel(page, 'sugars')).toContainText('at least');

  // Where the person knows better, in the ingredient's own form; more than 100 g in 100 g is refused.
  await row(page, '0.6 g paprika').getByRole('link', { name: /^Edit/ }).press('Enter');
  const most = page.getByLabel('At most in 100 g, g').first();
  await expect(most).toHaveValue(/^5/);
  await most.fill('101');
  await most.press('Enter');
  await expect(most).toHaveAttribute('aria-invalid', 'true');
  await expect(most).toHaveValue('101');
  await expectAccessible(page);
  await most.fill('40');
  await most.press('Enter');
  await expect(row(page, '0.6 g paprika')).toContainText('counted as 0 to 0.25 g');
  expect(pageErrors).toEqual([]);
});

test('a lot of what is labelled 0 is remarked on, and so is a likely slip: taken, it mends the label and the number', async ({
  page,
  pageErrors,
}) => {
  const path = await bringIn(page, remarkedEpisode());
  const remarks = page.getByRole('region', { name: 'Remarks: Barley pot' });
  // Less than 5 kcal and less than 0.5 g of fat in each serving, 21 CFR 101.9(c)(1) and (2).
  const zero = remarks.getByRole('listitem').filter({ hasText: 'pan spray: its label says 0' });
  await expect(zero).toContainText('20 servings of it may hold up to 100 kcal, 10 g fat');
  const slip = remarks.getByRole('listitem').filter({ hasText: 'Rowan seed bar:' });
  await expect(slip).toContainText('protein 1.4 looks like 14');
  await expect(await inPanel(page, 'protein')).toContainText('9 g');
  await slip.getByRole('link', { name: 'Read the label again' }).press('Enter');

  await expect(page.getByRole('heading', { level: 1, name: 'Rowan seed bar' })).toBeVisible();
  await page.getByRole('button', { name: 'Use 14' }).first().press('Enter');
  await expect(page.locator('[name="value-protein"]')).toHaveValue('14');
  await expect(page.getByText('Nothing speaks against these numbers.')).toBeVisible();
  await page.getByRole('button', { name: 'Keep this reading' }).press('Enter');
  await expect(page.getByText('Earlier readings of its label')).toBeVisible();

  await page.goto(path);
  await expect(slip).toBeHidden();
  await expect(await inPanel(page, 'protein')).toContainText('21 g');
  await zero.getByRole('link').press('Enter');
  await expect(page.getByRole('textbox', { name: 'Ingredient', exact: true }).first()).toHaveValue(
    'pan spray',
  );
  expect(pageErrors).toEqual([]);
});

test('net carbs are named, derived and led to; what calories are written to changes the description', async ({
  page,
  pageErrors,
}) => {
  const path = await bringIn(page, remarkedEpisode());
  await page.getByRole('button', { name: 'Count all 2 as ranges' }).press('Enter');
  await expect(row(page, '0.6 g paprika')).toContainText('counted as');
  await page.goto(`${path}/numbers`);
  const pot = page.getByRole('region', { name: 'Barley pot', exact: true });
  await pot.getByText('Net carbs', { exact: true }).press('Enter');
  await expect(pot).toContainText('Worked out: carbohydrate less fibre');
  // 72.3 g with 77.72 less 15.6 g in 100 g, 0.6 g of paprika with 54 less what it may be, and 27 less 4 g.
  const net = pot.getByRole('link', { name: /net carb.*breakdown/i }).last();
  await expect(net).toContainText(/^68g/);
  await expectAccessible(page);

  const text = page.locator('#short-description');
  const step = page.getByRole('group', { name: 'Calories written' });
  const written = async () =>
    /the whole dish: (?:about )?(\d+) kcal/i.exec((await text.textContent()) ?? '')?.[1];
  // 72.3 g with 352 kcal in 100 g, 0.6 g with 282, and 230.
  await expect.poll(written).toBe('486');
  for (const [kcal, shown] of [
    [5, '485'],
    [10, '490'],
    [1, '486'],
  ] as const) {
    await step.getByRole('button', { name: `Write calories to ${kcal} kcal` }).press('Enter');
    await expect(step.locator('[aria-current]')).toHaveText(
      kcal === 1 ? 'to 1 kcal' : `to ${kcal}`,
    );
    await expect.poll(written).toBe(shown);
  }
  await net.press('Enter');
  await expect(page).toHaveURL(/\/breakdown\/whole:[^/]+\/netCarbohydrate$/);
  await expect(page.getByRole('main')).toContainText(/carbs less fibre/);
  expect(pageErrors).toEqual([]);
});
