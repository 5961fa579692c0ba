import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';

test.describe('read to camera', () => {
  test.use({ alone: true, viewport: { width: 1440, height: 900 } });

  test('goes by keys and pedal, stops at shots, and says what is left', async ({ page }) => {
    await page.goto(`${await demo(page)}/reading`);
    const current = page.getByRole('region', { name: 'What is said' }).locator('[aria-current]');
    const place = page.getByText(/^(Sentence|Shot) /).first();
    await expect(current).toHaveCount(1);
    const first = await current.textContent();
    await page.keyboard.press('PageDown');
    await expect(current).not.toHaveText(first ?? '');
    await page.keyboard.press('End');
    await expect(place).toContainText(/of \d+|after all sentences/);
    await page.keyboard.press('Home');
    await expect(current).toHaveText(first ?? '');
    await expect(page.getByText(/^\d+:\d\d left to read$/)).toBeVisible();
    await page.keyboard.press('Space');
    await expect(page.getByRole('button', { name: 'Stop', exact: true })).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(page.getByRole('button', { name: 'Go', exact: true })).toBeVisible();
    await expectAccessible(page);
  });

  test('is moved by a pedal when a tick has the focus, which keeps the space bar', async ({
    page,
  }) => {
    await page.goto(`${await demo(page)}/reading`);
    const current = page.getByRole('region', { name: 'What is said' }).locator('[aria-current]');
    const first = (await current.textContent()) ?? '';
    for (const tick of ['Mirrored', 'Kitchen night']) {
      await page.getByLabel(tick).check();
      await expect(page.getByLabel(tick)).toBeFocused();
      await page.keyboard.press('PageDown');
      await expect(current).not.toHaveText(first);
      await page.keyboard.press('Home');
      await expect(current).toHaveText(first);
      await page.keyboard.press('Space');
      await expect(page.getByLabel(tick)).not.toBeChecked();
      await expect(page.getByRole('button', { name: 'Go', exact: true })).toBeVisible();
    }
  });

  test('has the numbers filled in, mirrored and at another speed if wished, kept on the device', async ({
    page,
  }) => {
    await page.goto(`${await demo(page)}/reading`);
    const text = page.getByRole('region', { name: 'What is said' });
    await expect(text).toContainText(/\d+ kcal/);
    await expect(text).not.toContainText('[energy, whole]');
    await page.getByLabel('Mirrored').check();
    await page.getByRole('button', { name: 'Faster' }).click();
    await expect(page.getByText('160 words a minute')).toBeVisible();
    await page.reload();
    await expect(page.getByLabel('Mirrored')).toBeChecked();
    await expect(page.getByText('160 words a minute')).toBeVisible();
    await expect(text.locator('ol')).toHaveCSS('scale', '-1 1');
  });

  test('is moved by a second device, which sees where it is', async ({ page, context }) => {
    test.slow();
    const episode = await demo(page);
    await page.goto(`${episode}/reading`);
    const current = page.getByRole('region', { name: 'What is said' }).locator('[aria-current]');
    const before = (await current.textContent()) ?? '';
    const remote = await context.newPage();
    await remote.goto(`${episode}/reading?remote`);
    await expect(remote.getByText(/Looking for the program|Nothing is read yet/)).toHaveCount(0);
    await expect(remote.locator('ol [aria-current]')).toHaveText(before);
    await remote.getByRole('button', { name: 'Next' }).click();
    await expect(current).not.toHaveText(before);
    await expect(remote.locator('ol [aria-current]')).toHaveText(
      (await current.textContent()) ?? '',
    );
    await remote.getByRole('button', { name: 'Slower' }).click();
    await expect(page.getByText('140 words a minute')).toBeVisible();
    await expectAccessible(remote);
  });

  test('steps instead of gliding where motion is to be reduced', async ({ page }) => {
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.goto(`${await demo(page)}/reading`);
    const pane = page.getByRole('region', { name: 'What is said' });
    await page.keyboard.press('PageDown');
    await page.keyboard.press('PageDown');
    await page.keyboard.press('Space');
    // From one place to the next, and nowhere between: a glide would be seen at many.
    const places = await pane.evaluate(async (element) => {
      const seen = new Set<number>();
      for (let frame = 0; frame < 30; frame += 1) {
        await new Promise(requestAnimationFrame);
        seen.add(element.scrollTop);
      }
      return seen.size;
    });
    expect(places).toBeLessThanOrEqual(2);
    await expect(page.getByRole('button', { name: 'Stop', exact: true })).toBeVisible();
    await page.keyboard.press('Escape');
  });
});
