import type { Locator, Page } from '@playwright/test';
import { openDemo } from './demo';
import { expect, expectAccessible, test } from './fixtures';
import { freshEpisode } from './fresh-episode';

const DISH = 'Barley skillet';

/** A dish with three ingredients in an episode of its own. Returns the episode's path. */
async function skillet(page: Page, title: string): Promise<string> {
  const path = await freshEpisode(page, title);
  await page.getByRole('textbox', { name: 'Dish' }).fill(DISH);
  await page.getByRole('button', { name: 'Add the dish' }).click();
  await expect(page.getByRole('heading', { name: DISH })).toBeVisible();
  await page
    .getByRole('textbox', { name: 'Ingredients' })
    .fill('200 g pearl barley\n20 g olive oil\n3 g salt');
  await page.getByRole('button', { name: 'Add the ingredients' }).click();
  await expect(page.locator('tr[data-member]')).toHaveCount(3);
  return path;
}

const rows = (page: Page) => page.locator('tr[data-member]');
const row = (page: Page, words: string) => rows(page).filter({ hasText: words });
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });

async function expectOrder(page: Page, ...words: readonly string[]): Promise<void> {
  await expect(rows(page)).toHaveCount(words.length);
  for (const [index, each] of words.entries())
    await expect(rows(page).nth(index)).toContainText(each);
}

/** Opens the form of an ingredient by keys: Enter on its row. */
async function openRow(page: Page, words: string): Promise<Locator> {
  const form = page.locator('form[id^="line-"]');
  // A page that is still being written may take the focus once more for what was done last.
  await expect(async () => {
    if (!(await form.isVisible())) await row(page, words).press('Enter', { timeout: 2_000 });
    await expect(form).toBeVisible({ timeout: 4_000 });
  }).toPass({ timeout: 20_000 });
  return form;
}

test('every button, link and field of the episode page is reached and seen by keys alone', async ({
  page,
}) => {
  test.slow();
  await openDemo(page);
  const edit =
    (await row(page, 'turkey').first().getByRole('link', { name: /^Edit/ }).getAttribute('href')) ??
    '';
  await page.goto(edit.replace(/#.*/, ''));
  // Everything that is folded away is opened by keys, as a person would.
  const folded = page.locator('details:not([open]) > summary:visible');
  for (let some = await folded.all(); some.length > 0; some = await folded.all()) {
    // From the last one back, so that those before it keep their places.
    for (const each of some.reverse()) await each.press('Enter');
  }
  const listed = await page.evaluate(() => {
    const all = document.querySelectorAll<HTMLElement>(
      'a[href], button, summary, input:not([type=hidden]), select, textarea, [role=button], [tabindex="0"]',
    );
    const seen = [...all].filter((each) => {
      // Of a group of choices one is a stop; the arrows lead to the others.
      if (each instanceof HTMLInputElement && each.type === 'radio' && !each.checked) return false;
      if (each.closest('dialog:not([open])') || each.matches(':disabled')) return false;
      return each.checkVisibility({ visibilityProperty: true });
    });
    for (const [index, each] of seen.entries()) each.dataset.listed = String(index);
    // What looks like it can be pressed must be, or lie in, something that the keys reach.
    const pressed = 'a[href], button, summary, label, select, input, [role=button]';
    const only = [...document.querySelectorAll<HTMLElement>('main *')].filter(
      (each) => getComputedStyle(each).cursor === 'pointer' && !each.closest(pressed),
    );
    return { count: seen.length, only: only.map((each) => each.outerHTML.slice(0, 120)) };
  });
  expect(listed.only).toEqual([]);
  expect(listed.count).toBeGreaterThan(120);
  // What takes the focus is looked at in the page itself, press by press.
  await page.evaluate(() => {
    document.documentElement.style.scrollBehavior = 'auto';
    document.body.tabIndex = -1;
    document.body.focus();
    document.addEventListener('focusin', ({ target }) => {
      if (!(target instanceof HTMLElement)) return;
      const { outlineStyle, boxShadow } = getComputedStyle(target);
      const shown = outlineStyle !== 'none' || boxShadow !== 'none';
      target.dataset.reached = shown ? 'seen' : 'unseen';
    });
  });
  for (let press = 0; press < listed.count + 20; press++) await page.keyboard.press('Tab');
  const { missed, unseen } = await page.evaluate(() => {
    const of = (which: string) =>
      [...document.querySelectorAll<HTMLElement>(which)].map((each) =>
        each.outerHTML.slice(0, 160),
      );
    return {
      missed: of('[data-listed]:not([data-reached])'),
      unseen: of('[data-listed][data-reached=unseen]'),
    };
  });
  expect(missed).toEqual([]);
  expect(unseen).toEqual([]);
});

test('an ingredient’s form opens by Enter in its row, closes by Escape, and the row has the focus again', async ({
  page,
  pageErrors,
}) => {
  await skillet(page, 'In place');
  await row(page, 'pearl barley').focus();
  await page.keyboard.press('ArrowDown');
  await expect(row(page, 'olive oil')).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowUp');
  await expect(row(page, 'olive oil')).toBeFocused();
  const top = async () => (await row(page, 'olive oil').boundingBox())?.y ?? 0;
  const form = await openRow(page, 'olive oil');
  await expect(form.getByRole('textbox', { name: 'Ingredient' })).toBeFocused();
  const opened = await top();
  await page.keyboard.press('Escape');
  await expect(form).toBeHidden();
  await expect(row(page, 'olive oil')).toBeFocused();
  expect(Math.abs((await top()) - opened)).toBeLessThan(2);

  await openRow(page, 'olive oil');
  const before = await top();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('25 g olive oil');
  await page.keyboard.press('Enter');
  await expect(form).toBeHidden();
  const saved = row(page, '25 g olive oil');
  await expect(saved).toBeFocused();
  expect(Math.abs(((await saved.boundingBox())?.y ?? 0) - before)).toBeLessThan(2);
  await expect(page.getByRole('status').filter({ hasText: '→' })).toContainText(
    '20 g olive oil → 25 g olive oil',
  );
  await saved.dblclick({ position: { x: 4, y: 4 } });
  await expect(form).toBeVisible();
  await expectAccessible(page);
  expect(pageErrors).toEqual([]);
});

test('ingredients and dishes change places by keys, told aloud, and undone', async ({
  page,
  pageErrors,
}) => {
  await skillet(page, 'By keys');
  const handle = page.getByRole('button', { name: 'Move 3 g salt' });
  await handle.focus();
  await page.keyboard.press('Enter');
  const told = page.getByRole('status').filter({ hasText: /3 g salt(: place|.* put back)/ });
  await expect(told).toContainText('Picked up. 3 g salt: place 3 of 3.');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await expect(told).toContainText('place 1 of 3');
  await expect(page.locator('[data-drop]')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(told).toContainText('put back');
  await expectOrder(page, 'pearl barley', 'olive oil', 'salt');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Home');
  await page.keyboard.press('Enter');
  await expectOrder(page, 'salt', 'pearl barley', 'olive oil');
  await expect(handle).toBeFocused();
  await undo(page).press('Enter');
  await expectOrder(page, 'pearl barley', 'olive oil', 'salt');
  await expect(undo(page)).toBeFocused();

  await page.getByText('Add talk', { exact: true }).press('Enter');
  await page.getByRole('textbox', { name: 'Talk' }).fill('Good evening');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Good evening' })).toBeVisible();
  await page.getByText('Change the running order').press('Enter');
  await page.getByRole('button', { name: 'Move Good evening' }).focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Enter');
  const titles = page.locator('h2[id^="title-"]');
  await expect(titles.first()).toHaveText('Good evening');
  await page.getByRole('button', { name: 'Move down: Good evening' }).press('Enter');
  await expect(titles.first()).toHaveText(DISH);
  expect(pageErrors).toEqual([]);
});

test('an ingredient is dragged to its place, with the place shown on the way', async ({
  page,
  pageErrors,
}) => {
  await skillet(page, 'By drag');
  await page.getByRole('button', { name: 'Move 200 g pearl barley' }).hover();
  await page.mouse.down();
  const target = await row(page, '3 g salt').boundingBox();
  if (!target) throw new Error('the last row is there');
  await page.mouse.move(target.x + 40, target.y + 2, { steps: 4 });
  await page.mouse.move(target.x + 40, target.y + target.height - 2, { steps: 4 });
  await expect(page.locator('[data-drop]')).toBeVisible();
  await page.mouse.up();
  await expectOrder(page, 'olive oil', 'salt', 'pearl barley');
  await expect(page.locator('[data-drop]')).toBeHidden();
  await page.reload();
  await expectOrder(page, 'olive oil', 'salt', 'pearl barley');
  expect(pageErrors).toEqual([]);
});

test('two tabs put the list in order: the last one wins and nothing is lost', async ({
  page,
  context,
}) => {
  await skillet(page, 'Two orders');
  const other = await context.newPage();
  await other.goto(page.url());
  await other.getByRole('button', { name: 'Move 3 g salt' }).focus();
  await other.keyboard.press('Enter');
  await other.keyboard.press('Home');
  await other.keyboard.press('Enter');
  await expectOrder(other, 'salt', 'pearl barley', 'olive oil');
  await page.getByRole('button', { name: 'Move 20 g olive oil' }).focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Home');
  await page.keyboard.press('Enter');
  await expectOrder(page, 'olive oil', 'pearl barley', 'salt');
  await other.reload();
  await expectOrder(other, 'olive oil', 'pearl barley', 'salt');
});

test('two tabs edit one ingredient: both texts stand side by side, and neither is lost', async ({
  page,
  context,
  pageErrors,
}) => {
  const path = await skillet(page, 'Two tabs');
  const other = await context.newPage();
  await other.goto(path);
  const mine = await openRow(page, 'pearl barley');
  const theirs = await openRow(other, 'pearl barley');
  await theirs.getByRole('textbox', { name: 'Ingredient' }).fill('220 g pearl barley');
  await other.keyboard.press('Enter');
  await expect(row(other, '220 g pearl barley')).toBeVisible();
  const words = mine.getByRole('textbox', { name: 'Ingredient' });
  await words.fill('180 g pearl barley, rinsed');
  await page.keyboard.press('Enter');
  await expect(mine).toContainText('changed elsewhere since you opened it');
  await expect(words).toHaveValue('180 g pearl barley, rinsed');
  await expect(words).toHaveAccessibleDescription(/saved there now\s*220 g pearl barley/i);
  await expectAccessible(page);

  // Left without saving: it is offered on the next visit, beside what stands there.
  await page.goto(path);
  await openRow(page, '220 g pearl barley');
  const offer = page.getByRole('group', { name: 'Not saved' });
  await expect(offer).toContainText('was not saved');
  await expectAccessible(page);
  await offer.getByRole('link', { name: 'Use it' }).press('Enter');
  await expect(words).toHaveValue('180 g pearl barley, rinsed');
  await expect(words).toHaveAccessibleDescription(/saved there now\s*220 g pearl barley/i);
  await words.press('Enter');
  await expect(row(page, '180 g pearl barley, rinsed')).toBeVisible();
  await openRow(page, '180 g pearl barley');
  await expect(offer).toBeHidden();
  await page.goto(`${path}/changes`);
  await expect(page.getByRole('main')).toContainText(
    '220 g pearl barley → 180 g pearl barley, rinsed',
  );
  await expect(page.getByRole('main')).toContainText('200 g pearl barley → 220 g pearl barley');
  const kept = page.getByRole('listitem').filter({ hasText: 'typed and not saved' });
  await expect(kept.first()).toContainText('180 g pearl barley, rinsed');
  await expect(page.getByRole('main')).not.toContainText(/[0-9a-f]{8}-[0-9a-f]{4}/);
  expect(pageErrors).toEqual([]);
});

test('typing that was refused is kept, in the form and for the next visit, until thrown away', async ({
  page,
}) => {
  const path = await skillet(page, 'Refused');
  const form = await openRow(page, 'olive oil');
  await form.getByRole('textbox', { name: 'Amount' }).fill('some');
  await form.getByRole('textbox', { name: 'Ingredient' }).fill('some olive oil');
  await page.keyboard.press('Enter');
  await expect(form.getByRole('textbox', { name: 'Amount' })).toHaveAttribute(
    'aria-invalid',
    'true',
  );
  await expect(form.getByRole('textbox', { name: 'Ingredient' })).toHaveValue('some olive oil');
  await page.goto(path);
  await openRow(page, 'olive oil');
  const offer = page.getByRole('group', { name: 'Not saved' });
  await offer.getByRole('button', { name: 'Throw it away' }).press('Enter');
  await expect(offer).toBeHidden();
  await expect(form.getByRole('textbox', { name: 'Ingredient' })).toHaveValue('20 g olive oil');
});

test('where the server does not answer, the form says so and the text is there after a reload', async ({
  page,
  context,
}) => {
  await skillet(page, 'No answer');
  const form = await openRow(page, 'salt');
  await form.getByRole('textbox', { name: 'Ingredient' }).fill('4 g flaky salt');
  await context.setOffline(true);
  await page.keyboard.press('Enter');
  await expect(form.getByRole('alert')).toContainText('did not answer');
  await expect(form.getByRole('textbox', { name: 'Ingredient' })).toHaveValue('4 g flaky salt');
  await context.setOffline(false);
  await page.reload();
  const offer = page.getByRole('group', { name: 'Not saved' });
  await offer.getByRole('button', { name: 'Use it' }).press('Enter');
  await expect(form.getByRole('textbox', { name: 'Ingredient' })).toHaveValue('4 g flaky salt');
  await form.getByRole('textbox', { name: 'Ingredient' }).press('Enter');
  await expect(row(page, '4 g flaky salt')).toBeVisible();
  await page.reload();
  await openRow(page, '4 g flaky salt');
  await expect(offer).toBeHidden();
});

test('a dish is taken out and brought back with its ingredients and their order, by keys', async ({
  page,
  pageErrors,
}) => {
  const path = await skillet(page, 'There and back');
  await page.getByRole('link', { name: `Edit ${DISH}` }).press('Enter');
  await page.getByRole('button', { name: `Take out of the episode: ${DISH}` }).press('Enter');
  await expect(page.getByRole('heading', { name: DISH })).toBeHidden();
  await expect(undo(page)).toBeFocused();
  await expect(page.getByRole('status').filter({ hasText: 'taken out' })).toContainText(
    `Dish taken out: ${DISH}, with 3 ingredients`,
  );
  await page.keyboard.press('Enter');
  await expectOrder(page, 'pearl barley', 'olive oil', 'salt');

  await page.goto(`${path}/changes`);
  const acts = page.getByRole('main').getByRole('listitem');
  await expect(acts.first()).toContainText(`Dish brought back: ${DISH}`);
  await expectAccessible(page);
  // An undo can be undone, and what later acts rest on says so.
  const made = acts.filter({ hasText: `Dish added: ${DISH}` });
  await made.getByRole('button', { name: /^Undo/ }).press('Enter');
  await expect(made.getByRole('alert')).toContainText('Later changes rest on this. Undo first:');
  await acts.first().getByRole('button', { name: /^Undo/ }).press('Enter');
  await expect(acts.first()).toContainText('Redo');
  await page.goto(path);
  await expect(page.getByRole('heading', { name: DISH })).toBeHidden();
  expect(pageErrors).toEqual([]);
});

test.describe('before any script', () => {
  test.use({ javaScriptEnabled: false, alone: true });

  test('an ingredient moves up by its form’s button, and is undone', async ({ page }) => {
    await openDemo(page);
    const second = (await rows(page).nth(1).getAttribute('data-member')) ?? '';
    await rows(page).nth(1).getByRole('link', { name: /^Edit/ }).click();
    await page
      .getByRole('button', { name: /^Move up: (?!.*segment)/ })
      .first()
      .waitFor();
    await page
      .locator('form')
      .filter({ has: page.locator(`input[name=lineId][value="${second}"]`) })
      .getByRole('button', { name: /^Move up/ })
      .click();
    await expect(rows(page).first()).toHaveAttribute('data-member', second);
    await undo(page).click();
    await expect(rows(page).nth(1)).toHaveAttribute('data-member', second);
  });
});
