import type { Page } from '@playwright/test';
import { remarkedEpisode } from '../support/remarked-episode';
import { bringIn } from './bring-in';
import { demo } from './demo';
import { expect, expectAccessible, test } from './fixtures';
import { freshEpisode } from './fresh-episode';
import { EMPTY, enterState, PRINTED, REMARKED, tooWide, unfold, WITH_DEMO } from './page-states';

/** Pages of what would be printed, counted in the file itself. */
async function printedPages(page: Page): Promise<number> {
  const pdf = (await page.pdf({ format: 'A4', preferCSSPageSize: false })).toString('latin1');
  return pdf.match(/\/Type \/Page\b(?!s)/g)?.length ?? 0;
}

/** At 320 px, and at 640 px as 1280 px are at 200 % zoom, nothing scrolls sideways, all unfolded. */
async function expectFitsNarrow(page: Page): Promise<void> {
  await unfold(page);
  const screen = await page.context().newCDPSession(page);
  for (const [width, deviceScaleFactor] of [
    [320, 1],
    [640, 2],
  ] as const) {
    const size = { width, height: 512, deviceScaleFactor, mobile: false };
    await screen.send('Emulation.setDeviceMetricsOverride', size);
    await expect
      .poll(() => page.evaluate(() => [innerWidth, devicePixelRatio]))
      .toEqual([width, deviceScaleFactor]);
    expect(await tooWide(page), `at ${width} px`).toBe(0);
  }
  await screen.detach();
}

for (const [width, theme] of [
  [1440, 'day'],
  [390, 'night'],
] as const) {
  test.describe(`${width} px wide, ${theme}`, () => {
    test.use({
      viewport: { width, height: 900 },
      colorScheme: theme === 'night' ? 'dark' : 'light',
    });
    for (const state of WITH_DEMO.filter(({ byDay }) => theme === 'day' || !byDay)) {
      test(`${state.name} is accessible and fits`, async ({ page, pageErrors }) => {
        // The demo's own page is by far the largest; all of it is looked at.
        if (state.path === '.') test.slow();
        await enterState(page, state, await demo(page));
        await expectAccessible(page);
        expect(await tooWide(page)).toBe(0);
        if (theme === 'day') await expectFitsNarrow(page);
        // A page that is not there is told as an error by the browser itself.
        if (!state.name.startsWith('no such')) expect(pageErrors).toEqual([]);
      });
    }
  });
}

test.describe('with an empty database', () => {
  test.use({ empty: true, viewport: { width: 390, height: 844 } });

  test('every page is accessible, fits, and says what to do first', async ({
    page,
    pageErrors,
  }) => {
    test.slow();
    const episode = await freshEpisode(page, 'Only a title');
    for (const theme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme: theme });
      for (const state of EMPTY) {
        await enterState(page, state, episode);
        await expectAccessible(page);
        expect(await tooWide(page), state.name).toBe(0);
      }
    }
    expect(pageErrors).toEqual([]);
  });
});

test.describe('where numbers are remarked on', () => {
  test.use({ alone: true });

  test('every page and state is accessible and fits, by day and at night', async ({
    page,
    pageErrors,
  }) => {
    test.slow();
    const episode = await bringIn(page, remarkedEpisode());
    for (const state of REMARKED) {
      await enterState(page, state, episode);
      for (const [colorScheme, width] of [
        ['light', 1440],
        ['dark', 390],
      ] as const) {
        await page.emulateMedia({ colorScheme });
        await page.setViewportSize({ width, height: 900 });
        await expectAccessible(page);
        expect(await tooWide(page), state.name).toBe(0);
      }
      await expectFitsNarrow(page);
    }
    expect(pageErrors).toEqual([]);
  });
});

test.describe('by keyboard', () => {
  test('the first stop skips to the page; a closed list gives focus back', async ({ page }) => {
    await page.goto('/');
    await page.keyboard.press('Tab');
    await expect(page.getByRole('link', { name: 'Skip to the page' })).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(page.locator('main')).toBeFocused();
    const keys = page.getByRole('button', { name: 'Keys', exact: true });
    await keys.focus();
    await page.keyboard.press('Enter');
    await expect(page.getByRole('dialog')).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toBeHidden();
    await expect(keys).toBeFocused();
  });

  test('a fault in the list leads to its field', async ({ page }) => {
    const state = WITH_DEMO.find(({ name }) => name === 'food, refused');
    if (!state) throw new Error('the state is gone');
    await enterState(page, state, '');
    const fault = page.locator('#new-lot [role=alert] a').first();
    await fault.focus();
    await page.keyboard.press('Enter');
    await expect(page.locator('#new-lot [aria-invalid=true]').first()).toBeFocused();
  });
});

test('the mark is there by the name that browsers ask for where no page tells them of one', async ({
  page,
}) => {
  const mark = await page.request.get('/favicon.ico');
  expect([mark.status(), mark.headers()['content-type']]).toEqual([200, 'image/svg+xml']);
});

test('with less motion asked for nothing moves', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  for (const path of ['/', '/look']) {
    await page.goto(path);
    const moving = await page.evaluate(() =>
      [...document.querySelectorAll('body *')]
        .map((element) => getComputedStyle(element))
        .filter((s) => s.animationName !== 'none' || parseFloat(s.transitionDuration) > 0)
        .map((s) => s.cssText.slice(0, 40)),
    );
    expect(moving).toEqual([]);
  }
});

test('on a phone everything on the day page that is touched is 56 px high', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(`${await demo(page)}/day`);
  const low = await page.evaluate(() => {
    document.querySelectorAll('details').forEach((part) => (part.open = true));
    const touched = 'button, a, select, summary, input:not([type=hidden])';
    return [...document.querySelectorAll(`main > div :is(${touched})`)]
      .map((element) => element.closest('label') ?? element)
      .filter((element) => element.getBoundingClientRect().width > 0)
      .filter((element) => !element.closest('[role=region]'))
      .filter((element) => element.getBoundingClientRect().height < 55.5)
      .map((element) => element.textContent?.slice(0, 40));
  });
  expect(low).toEqual([]);
});

test.describe('on paper', () => {
  for (const state of PRINTED) {
    test(`${state.name} is accessible as it is printed, from a dark device too`, async ({
      page,
    }) => {
      const episode = await demo(page);
      await page.emulateMedia({ colorScheme: 'dark' });
      // On the screen, since the ways there are not printed.
      await enterState(page, state, episode);
      await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      await expectAccessible(page);
      expect(
        await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor),
      ).toBe('rgb(255, 255, 255)');
    });
  }

  test('the demo’s day sheet and shopping list each take one page', async ({ page }) => {
    const episode = await demo(page);
    for (const part of ['/day', '/shopping']) {
      await page.goto(episode + part);
      expect(await printedPages(page), part).toBe(1);
    }
  });

  test('a shopping list of 40 rows takes one page at 9 pt or more', async ({ page }) => {
    await page.goto(`${await demo(page)}/shopping`);
    const count = await page.evaluate((most) => {
      const rows = [...document.querySelectorAll('main tbody tr:has(> th[scope="row"])')];
      const last = rows.at(-1);
      for (let at = rows.length; at < most; at++) last?.after(last.cloneNode(true));
      return document.querySelectorAll('main tbody tr:has(> th[scope="row"])').length;
    }, 40);
    expect(count).toBe(40);
    expect(await printedPages(page)).toBe(1);
    await page.emulateMedia({ media: 'print' });
    const sizes = await page.evaluate(() =>
      [...document.querySelectorAll('main table td, main table th, main table td *')]
        .filter((element) => element.getClientRects().length > 0)
        .map((element) => parseFloat(getComputedStyle(element).fontSize)),
    );
    // 9 pt are 12 CSS px (CSS Values and Units 4, section 6.2).
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(12);
  });

  test('40 rows take one page at 9 pt or more; beyond, heads repeat and no row is split', async ({
    page,
  }) => {
    await page.goto(`${await demo(page)}/day`);
    const fill = (count: number) =>
      page.evaluate((rows) => {
        const body = document.querySelector('main table tbody');
        const given = [...(body?.children ?? [])];
        body?.replaceChildren(
          ...Array.from(
            { length: rows },
            (_, at) => given[at % given.length]?.cloneNode(true) ?? '',
          ),
        );
      }, count);
    await fill(40);
    expect(await printedPages(page)).toBe(1);
    await page.emulateMedia({ media: 'print' });
    const styles = await page.evaluate(() => {
      const table = document.querySelector('main table');
      const sizes = [...(table?.querySelectorAll('td, th, td *') ?? [])].map((element) =>
        parseFloat(getComputedStyle(element).fontSize),
      );
      const row = table?.querySelector('tbody tr');
      const head = table?.querySelector('thead');
      return {
        smallest: Math.min(...sizes),
        split: row ? getComputedStyle(row).breakInside : '',
        head: head ? getComputedStyle(head).display : '',
      };
    });
    // 9 pt are 12 CSS px (CSS Values and Units 4, section 6.2).
    expect(styles).toEqual({ smallest: 12, split: 'avoid', head: 'table-header-group' });
    await page.emulateMedia({ media: null });
    await fill(90);
    expect(await printedPages(page)).toBeGreaterThan(1);
  });
});

test.describe('on a database of its own', () => {
  test.use({ alone: true });

  test('copying locks the numbers; without a clipboard the text is selected', async ({ page }) => {
    await page.addInitScript(() => {
      Object.defineProperty(navigator, 'clipboard', { value: undefined });
    });
    await page.goto(`${await demo(page)}/publish`);
    await expect(page.getByText('Copying locks them.')).toBeVisible();
    await page.getByRole('button', { name: /^Copy,/ }).click();
    // What is told is true of a text that is not in the clipboard: it is selected, and kept with its numbers.
    await expect(page.getByText(/^Selected: press Ctrl\+C/)).toBeVisible();
    await expect(page.getByText('Copied.', { exact: true })).toHaveCount(0);
    await expect(page.getByText('The numbers in it are locked')).toBeVisible();
    await expect(
      page.getByText(/^Numbers locked .*nothing under them has changed\.$/).first(),
    ).toBeVisible();
    const selected = await page.evaluate(() => window.getSelection()?.toString());
    expect(selected).toContain('THE DISHES SHOWN');
    await expect(page.getByRole('heading', { name: 'Copied so far' })).toBeVisible();

    await page.getByLabel('Anything else today').selectOption('nothing');
    await page.getByRole('button', { name: 'Save the answer' }).click();
    await expect(page.getByText(/^Lock of .* broken:/).first()).toBeVisible();
    // What went out stands until the person locks again.
    await expect(page.locator('pre').first()).toContainText('THE DISHES SHOWN');
    await page.getByRole('button', { name: 'Lock again' }).click();
    await expect(page.locator('pre').first()).toContainText('THE WHOLE DAY');
  });

  test('a refused step keeps what was typed; two tabs conflict visibly', async ({
    page,
    context,
  }) => {
    const day = `${await demo(page)}/day`;
    await page.goto(day);
    await page.getByText('Barley skillet 8 steps').click();
    await page.getByRole('link', { name: 'Edit Toast the barley', exact: true }).click();
    await page.getByLabel('Usual', { exact: true }).fill('99');
    await page.getByRole('button', { name: 'Save the step' }).click();
    await expect(page.getByLabel('Longest')).toHaveAttribute('aria-invalid', 'true');
    await expect(page.getByText('92 min less').first()).toBeVisible();
    await expect(page.getByLabel('Usual', { exact: true })).toHaveValue('99');

    await page.goto(day);
    const other = await context.newPage();
    await other.goto(day);
    await page.getByRole('button', { name: 'Pack it instead' }).click();
    await expect(page.getByRole('button', { name: 'As lived instead' })).toBeVisible();
    await other.getByRole('button', { name: 'Pack it instead' }).click();
    await expect(other.getByText('changed elsewhere')).toBeVisible();
  });
});

test.describe('without script', () => {
  test.use({ javaScriptEnabled: false, alone: true });

  test('the day is changed and a fault is told, food is looked up', async ({ page }) => {
    await page.goto(`${await demo(page)}/day`);
    const change = page.locator('summary', { hasText: 'Change the day' });
    await change.click();
    await page.getByLabel('Start').fill('noon');
    await page.getByRole('button', { name: 'Save the day' }).click();
    await expect(page.getByLabel('Start')).toHaveValue('noon');
    await expect(page.getByText('Write a clock time as 9:30').first()).toBeVisible();
    await page.getByLabel('Start').fill('10:15');
    await page.getByRole('button', { name: 'Save the day' }).click();
    await expect(page.getByText('Change the day: done')).toBeVisible();

    await page.goto('/pantry');
    await page.getByRole('searchbox', { name: 'Food' }).fill('pearled barley');
    await page.getByRole('button', { name: 'Look up' }).click();
    await page.getByRole('link', { name: 'Barley, pearled, raw' }).first().click();
    // Digits as SR28 prints them for food 20005.
    await expect(page.getByRole('table', { name: /Values of Barley/ })).toContainText(
      'copper0.420mg',
    );
  });
});
