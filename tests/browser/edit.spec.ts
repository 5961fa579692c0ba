import { PNG } from 'pngjs';
import type { Page } from '@playwright/test';
import { demo } from './demo';
import { expect, test } from './fixtures';
import { freshEpisode } from './fresh-episode';

const openEdit = async (page: Page): Promise<string> => {
  const episode = await demo(page);
  await page.goto(`${episode}/edit`);
  await expect(page.getByRole('region', { name: 'Transcript' })).toBeVisible();
  return episode;
};

const statements = (page: Page) => page.getByRole('region', { name: 'Statements' });
/** The statement that is chosen: its button. */
const chosen = (page: Page) => statements(page).locator('button[aria-current]');

test.describe('what was said in the demo', () => {
  test.use({ viewport: { width: 1440, height: 900 } });

  test('is filtered by verdict; a statement shows its words in the transcript, and the other way round', async ({
    page,
    pageErrors,
  }) => {
    await openEdit(page);
    const off = page.getByRole('group', { name: 'Show' }).getByRole('button', { name: /^off/ });
    const count = Number(/\d+/.exec((await off.textContent()) ?? '')?.[0]);
    expect(count).toBeGreaterThan(5);
    await off.click();
    await expect(off).toHaveAttribute('aria-pressed', 'true');
    const first = statements(page).getByRole('listitem').first();
    await expect(first).toHaveAttribute('aria-setsize', String(count));
    await first.getByRole('button').first().click();
    const marked = page.getByRole('region', { name: 'Transcript' }).locator('a[aria-current]');
    await expect(marked.first()).toBeInViewport();
    await expect(first.getByText('How it was read')).toBeVisible();
    // The words of another kind take the filter off again.
    const agrees = page
      .getByRole('region', { name: 'Transcript' })
      .getByRole('link', { name: /agrees/ });
    await agrees.first().click();
    await expect(chosen(page)).toContainText('agrees with your breakdown');
    await expect(chosen(page)).toBeInViewport();
    expect(pageErrors).toEqual([]);
  });

  test('is gone through by keys alone, which the list of keys names', async ({ page }) => {
    await openEdit(page);
    await page.keyboard.press('j');
    await expect(chosen(page)).toBeFocused();
    const first = await chosen(page).getAttribute('id');
    await page.keyboard.press('ArrowDown');
    await expect(chosen(page)).not.toHaveAttribute('id', first ?? '');
    await expect(chosen(page)).toBeFocused();
    await page.keyboard.press('k');
    await expect(chosen(page)).toHaveAttribute('id', first ?? '');
    await page.keyboard.press('o');
    await expect(chosen(page)).toContainText(/off/);
    await expect(chosen(page)).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(chosen(page)).toHaveAttribute('aria-expanded', 'true');
    await page.keyboard.press('u');
    await expect(chosen(page)).toContainText('can’t say');
    await page.keyboard.press('?');
    await expect(page.getByRole('dialog')).toContainText('next that is off');
  });

  test('is marked on a strip whose marks lead to their statements', async ({ page }) => {
    await openEdit(page);
    const strip = page.getByRole('navigation', { name: 'Strip of the episode' });
    const mark = strip.getByRole('link', { name: /off by/ }).last();
    const name = (await mark.getAttribute('aria-label')) ?? '';
    await mark.focus();
    await page.keyboard.press('Enter');
    await expect(chosen(page)).toContainText(name.split(', off')[0]?.split(': ')[1] ?? 'nothing');
    await expect(mark).toHaveAttribute('aria-current', 'true');
  });

  test('is one stop of Tab, whose marks arrow keys lead along, and Enter leads to the statement', async ({
    page,
  }) => {
    await openEdit(page);
    const strip = page.getByRole('navigation', { name: 'Strip of the episode' });
    expect(await strip.getByRole('link').count()).toBeGreaterThan(20);
    await expect(strip.locator('a[tabindex="0"]')).toHaveCount(1);
    await strip.locator('a[tabindex="0"]').focus();
    for (const key of ['End', 'Home', 'ArrowRight', 'ArrowRight', 'ArrowLeft'])
      await page.keyboard.press(key);
    const second = strip.getByRole('link').nth(1);
    await expect(second).toBeFocused();
    const name = (await second.getAttribute('aria-label')) ?? '';
    await page.keyboard.press('Enter');
    await expect(chosen(page)).toBeFocused();
    await expect(chosen(page)).toContainText(name.slice(name.lastIndexOf(', ') + 2));
    // One Tab leaves it.
    await strip.locator('a[tabindex="0"]').focus();
    await page.keyboard.press('Tab');
    await expect(strip.locator(':focus')).toHaveCount(0);
  });

  test('opens and closes where it stands, with its line in view', async ({ page }) => {
    await openEdit(page);
    const line = chosen(page);
    for (let times = 0; times < 4; times += 1) await page.keyboard.press('o');
    await expect(line).toBeFocused();
    const top = async () => (await line.boundingBox())?.y ?? -1000;
    let was = -1000;
    const isStill = async () => was === (was = await top());
    await expect.poll(isStill, { intervals: [200] }).toBe(true);
    await expect(line).toBeInViewport({ ratio: 1 });
    for (const open of ['true', 'false', 'true']) {
      const before = await top();
      await page.keyboard.press('Enter');
      await expect(line).toHaveAttribute('aria-expanded', open);
      await expect(line).toBeInViewport({ ratio: 1 });
      await expect.poll(async () => (await top()) - before).toBeLessThan(3);
      await expect.poll(async () => (await top()) - before).toBeGreaterThan(-3);
    }
  });

  test('is saved as a picture, and printed with every statement', async ({ page }) => {
    const episode = await openEdit(page);
    const downloading = page.waitForEvent('download');
    await page.getByRole('link', { name: 'Save it as a picture' }).click();
    const download = await downloading;
    expect(download.suggestedFilename()).toMatch(/\.edit\.png$/);
    const answer = await page.request.get(`${episode}/edit/result.png`);
    const { width, height } = PNG.sync.read(await answer.body());
    expect([width, height]).toEqual([1080, 1350]);
    await page.emulateMedia({ media: 'print' });
    const rows = page.getByRole('table', { name: /^What was said/ }).getByRole('row');
    expect(await rows.count()).toBeGreaterThan(40);
    await expect(statements(page)).toBeHidden();
  });
});

test.describe('what was said, on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 } });

  test('is scrolled with the page alone, and the line of what is open stays in view', async ({
    page,
  }) => {
    await page.goto(`${await demo(page)}/edit`);
    await expect(statements(page)).toBeVisible();
    await expect(page.getByRole('region', { name: 'Transcript' })).toBeHidden();
    const scrolled = await statements(page).evaluate(
      (region) => region.scrollHeight > region.clientHeight,
    );
    expect(scrolled).toBe(false);
    await page
      .getByRole('navigation', { name: 'Strip of the episode' })
      .getByRole('link', { name: /off by/ })
      .last()
      .click();
    await expect(chosen(page)).toBeInViewport({ ratio: 1 });
    await chosen(page).click();
    await expect(page.getByText('How it was read')).toBeAttached();
    const opened = await chosen(page).locator('..').boundingBox();
    // The page as far as the middle of what is open.
    await page.evaluate((y) => window.scrollBy(0, y), (opened?.y ?? 0) + (opened?.height ?? 0) / 2);
    await expect(chosen(page)).toBeInViewport({ ratio: 0.9 });
    await page.getByText('Transcript', { exact: true }).click();
    await expect(page.getByRole('region', { name: 'Transcript' })).toBeVisible();
    // Rows that are measured on the way move nothing that stands below them.
    await page.getByRole('link', { name: /^named, not counted/ }).click();
    await expect(page.getByRole('heading', { name: 'Named, not counted' })).toBeInViewport();
  });

  test('is covered by what was just done, and not by what was done before the page was opened', async ({
    page,
  }) => {
    await page.goto(`${await freshEpisode(page, 'Said before')}/edit`);
    const form = page.locator('#new-text');
    await form.getByLabel('What it is').selectOption('description');
    await form.getByLabel('Paste it').fill('The bowl is 500 calories.');
    await form.getByRole('button', { name: 'Bring it in' }).click();
    const told = page.locator('.last-change', { has: page.getByRole('button', { name: /^Undo/ }) });
    await expect(told).toHaveCSS('position', 'sticky');
    await page.reload();
    await expect(told).toHaveCSS('position', 'static');
  });
});

test.describe('in an episode of its own', () => {
  test.use({ alone: true });
  test.slow();

  const SAID = 'the whole skillet is nine hundred calories';
  const srt = (from: string, to: string) =>
    `1\n00:00:${from},000 --> 00:00:${to},000\n${SAID}\n\n2\n00:00:99,000 --> 00:01:18,000\nno such second\n`;

  test('captions are brought in, a reading is mended, and the mend holds when they come again', async ({
    page,
  }) => {
    const episode = await demo(page);
    await page.goto(`${episode}/edit`);
    const form = page.locator('#new-text');
    await page.getByText('Bring a text in', { exact: true }).last().click();
    await form.getByLabel('What it is').selectOption('captions');
    await form.getByLabel('Called, if you like').fill('second cut');
    await form.getByLabel('Paste it').fill(srt('10', '14'));
    await form.getByRole('button', { name: 'Bring it in' }).click();
    await expect(form.getByRole('status')).toContainText('second cut is in: SubRip captions');
    await expect(page.getByText(/1 skipped/).first()).toBeVisible();

    const row = statements(page).getByRole('button', { name: /nine hundred calories/ });
    const mark = page
      .getByRole('navigation', { name: 'Strip of the episode' })
      .getByRole('link', { name: /nine hundred calories/ });
    await mark.click();
    await row.click();
    await page.getByText('Read it otherwise').click();
    await page.getByRole('button', { name: 'It says nothing of the numbers' }).click();
    await expect(row).toContainText('put aside');

    const text = page.locator('li').filter({ hasText: 'second cut' }).last();
    await text.getByText('A newer text for second cut').click();
    await text.getByLabel('Paste it').fill(srt('40', '45'));
    await text.getByRole('button', { name: 'Take it instead' }).click();
    await expect(mark).toHaveAttribute('aria-label', /^0:40: .*put aside$/);
    const newer = page.getByRole('listitem').filter({ hasText: 'A newer text for second cut' });
    await expect(newer.getByRole('status')).toContainText('second cut is in instead: SubRip');

    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect(mark).toHaveAttribute('aria-label', /^0:10: .*put aside$/);
  });

  test('a newer file that does not say how its letters are written says how it was read', async ({
    page,
  }) => {
    await page.goto(`${await demo(page)}/edit`);
    const form = page.locator('#new-text');
    await page.getByText('Bring a text in', { exact: true }).last().click();
    await form.getByLabel('What it is').selectOption('title');
    await form.getByLabel('Called, if you like').fill('a working title');
    await form.getByLabel('Paste it').fill('Crumble');
    await form.getByRole('button', { name: 'Bring it in' }).click();
    const text = page.locator('li').filter({ hasText: 'a working title' }).last();
    await text.getByText('A newer text for a working title').click();
    await text.getByLabel('Or choose a file').setInputFiles({
      name: 'title.txt',
      mimeType: 'text/plain',
      buffer: Buffer.from('Cr\xeame, twice', 'latin1'),
    });
    await text.getByRole('button', { name: 'Take it instead' }).click();
    const newer = page.locator('li').filter({ hasText: 'A newer text for title.txt' }).last();
    await expect(newer.getByRole('status')).toContainText(
      'was read as Western European (Windows-1252): check that accents are right.',
    );
    await newer.getByLabel('Paste it').fill('Custard');
    await newer.getByRole('button', { name: 'Take it instead' }).click();
    await expect(newer.getByRole('status')).toHaveText(
      'title.txt is in instead: one line, 7 characters.',
    );
  });

  test('a food that is named and not counted is answered, and can be added to its dish', async ({
    page,
  }) => {
    const episode = await demo(page);
    await page.goto(`${episode}/edit`);
    const oil = page.locator('#named ~ ul > li').filter({ hasText: 'chili oil' });
    await oil.getByRole('button', { name: 'chili oil: left off the plate' }).click();
    await expect(oil).toContainText('chili oil: left off the plate');
    await oil.getByRole('button', { name: 'chili oil: truly none' }).click();
    await expect(oil).toContainText('chili oil: truly none');
    await oil.getByRole('link', { name: 'Add chili oil to Barley skillet' }).click();
    await expect(page.getByLabel('Ingredients', { exact: true }).first()).toHaveValue(/chili oil/);
  });

  test('the sound stays in the browser, and is there again after a reload', async ({ page }) => {
    const episode = await demo(page);
    await page.goto(`${episode}/edit`);
    const sent: string[] = [];
    page.on('request', (request) => {
      if (request.method() !== 'GET') sent.push(request.url());
    });
    await page.getByText('Hear what was said').click();
    await page.getByLabel('The sound of the edit').setInputFiles({
      name: 'rehearsal.wav',
      mimeType: 'audio/wav',
      buffer: silence(30),
    });
    await expect(page.getByText('Sound: rehearsal.wav, on this machine alone.')).toBeVisible();
    await page.reload();
    await expect(page.getByText('Sound: rehearsal.wav, on this machine alone.')).toBeVisible();
    await page.keyboard.press('j');
    await expect(chosen(page)).toBeFocused();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /^Hear it/ }).click();
    expect(sent).toEqual([]);
    await page.getByRole('button', { name: 'Remove the sound' }).click();
    await page.reload();
    await expect(page.getByText('Hear what was said')).toBeVisible();
  });
});

/** Seconds of silence as RIFF WAVE: 8000 samples a second, one byte each. */
function silence(seconds: number): Buffer {
  const data = Buffer.alloc(8000 * seconds, 128);
  const head = Buffer.alloc(44);
  head.write('RIFF', 0);
  head.writeUInt32LE(36 + data.length, 4);
  head.write('WAVEfmt ', 8);
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20);
  head.writeUInt16LE(1, 22);
  head.writeUInt32LE(8000, 24);
  head.writeUInt32LE(8000, 28);
  head.writeUInt16LE(1, 32);
  head.writeUInt16LE(8, 34);
  head.write('data', 36);
  head.writeUInt32LE(data.length, 40);
  return Buffer.concat([head, data]);
}

test.describe('ten thousand lines', () => {
  test.use({ empty: true, viewport: { width: 1440, height: 900 } });

  test('are drawn as far as they are seen, wherever the transcript stands', async ({
    page,
    pageErrors,
  }) => {
    test.slow();
    const episode = await freshEpisode(page, 'A long talk');
    await page.goto(`${episode}/edit`);
    await page.getByLabel('Or choose a file').setInputFiles({
      name: 'long.srt',
      mimeType: 'application/x-subrip',
      buffer: Buffer.from(manyLines(10_000)),
    });
    await page.getByRole('button', { name: 'Bring it in' }).click();
    const lines = page.getByRole('region', { name: 'Transcript' });
    await expect(lines.getByRole('listitem').first()).toHaveAttribute('aria-setsize', '10001');
    const drawn = () => page.locator('[role=region] > ol > li').count();
    const most: number[] = [await drawn()];
    for (const share of [0.25, 0.5, 0.99, 0.1]) {
      await lines.evaluate(
        (region, part) => (region.scrollTop = region.scrollHeight * part),
        share,
      );
      await expect.poll(async () => lines.getByRole('listitem').count()).toBeGreaterThan(5);
      most.push(await drawn());
    }
    expect(Math.max(...most)).toBeLessThan(150);
    // A statement near the end brings its line into view.
    const last = page
      .getByRole('navigation', { name: 'Strip of the episode' })
      .getByRole('link')
      .last();
    await last.click();
    await expect(lines.locator('a[aria-current]').first()).toBeInViewport();
    expect(pageErrors).toEqual([]);
  });
});

/** Captions of so many lines, a number in every fiftieth. */
function manyLines(count: number): string {
  const time = (second: number) =>
    new Date(second * 1000).toISOString().slice(11, 23).replace('.', ',');
  return Array.from({ length: count }, (_, at) => {
    const words =
      at % 50 === 49
        ? `this plate is ${300 + (at % 400)} calories`
        : `and line ${at} goes on talking`;
    return `${at + 1}\n${time(at)} --> ${time(at + 1)}\n${words}\n`;
  }).join('\n');
}
