import { deflateSync } from 'node:zlib';
import type { Locator, Page } from '@playwright/test';
import { setClock } from './day-clock';
import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true, viewport: { width: 390, height: 844 } });

const EVENTS = /\/day\/events(\?|$)/;
const ARRIVED = 'Connected: every entry has arrived.';

/** The page of the demo's filming day while it happens; answers the episode's address. */
async function openDay(page: Page, time = '09:05'): Promise<string> {
  await setClock(page, time);
  await page.goto('/');
  const demo = page.getByRole('link', { name: /One oven, three dishes/ }).first();
  const episode = (await demo.getAttribute('href')) ?? '';
  await page.goto(`${episode}/day/live`);
  await expect(status(page)).toHaveText(ARRIVED);
  return episode;
}

const status = (page: Page): Locator => page.getByRole('status').first();
const scale = (page: Page): Locator => page.getByRole('region', { name: 'Scale', exact: true });
const form = (page: Page): Locator => page.getByRole('form', { name: 'Weigh' });
const weighed = (page: Page): Locator => page.getByRole('region', { name: /^Weighed of/ });
const say = (page: Page): Locator => page.getByRole('region', { name: 'Say this' });

/** Types what the scale shows with the keypad. */
async function show(page: Page, grams: string): Promise<void> {
  const keys = page.getByRole('group', { name: 'Keypad' });
  for (const key of grams) {
    const name = key === '.' ? 'point' : key;
    await keys.getByRole('button', { name, exact: true }).click();
  }
  await expect(form(page).getByLabel('The scale shows, g')).toHaveValue(grams);
}
const keep = (page: Page) => form(page).getByRole('button', { name: 'Keep this weight' }).click();
const choose = (page: Page, text: string) =>
  form(page).getByLabel('On the scale').selectOption({ label: text });

/** A picture of so many pixels, as PNG (RFC 2083): grey, of one chunk each. */
function picture(): Buffer {
  const crc = (bytes: Buffer): number => {
    let rest = ~0;
    for (const byte of bytes) {
      rest ^= byte;
      for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
    }
    return ~rest >>> 0;
  };
  const chunk = (name: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
    const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(data.length);
    check.writeUInt32BE(crc(body));
    return Buffer.concat([length, body, check]);
  };
  const [width, height] = [40, 20];
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width);
  head.writeUInt32BE(height, 4);
  head.writeUInt8(8, 8);
  const rows = Buffer.alloc((width + 1) * height, 0x80).map((byte, at) =>
    at % (width + 1) === 0 ? 0 : byte,
  );
  const start = Buffer.from('\x89PNG\r\n\x1a\n', 'latin1');
  return Buffer.concat([
    start,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

test('one thing after another into the bowl, without the program, over a reload: each weight arrives once', async ({
  page,
  context,
  pageErrors,
}) => {
  test.slow();
  const episode = await openDay(page);
  await scale(page).getByRole('button', { name: 'Weigh' }).click();
  await expectAccessible(page);
  await choose(page, '2 cloves of garlic');
  await show(page, '310');
  await page.getByRole('button', { name: 'Tare: this is the empty bowl' }).click();
  await show(page, '318.5');
  await expect(form(page)).toContainText('318.5 g less 310 g: 8.5 g');
  await keep(page);
  await expect(weighed(page)).toContainText('8.5 g 2 cloves of garlic');
  await expect(status(page)).toHaveText(ARRIVED);

  await context.setOffline(true);
  // The next of the dish is chosen, and the way stays as it was until another is chosen.
  await expect(form(page).getByLabel(/^By itself/)).toBeChecked();
  await expect(form(page)).toContainText('310 g come off');
  await form(page)
    .getByLabel(/^Onto what is there/)
    .check();
  await choose(page, '2 cups baby spinach');
  await show(page, '400.5');
  await expect(form(page)).toContainText('400.5 g on the scale, 82 g more than before');
  await keep(page);
  await expect(weighed(page)).toContainText('82 g 2 cups baby spinach');
  await show(page, '77');
  await keep(page);
  await expect(form(page)).toContainText('400.5 g were on the scale before');
  await expect(form(page).getByLabel('The scale shows, g')).toHaveValue('77');

  // The page comes back from the program, and nothing that was entered gets through.
  await page.route(EVENTS, (route) => route.abort());
  await context.setOffline(false);
  await page.reload();
  await expect(status(page)).toContainText('1 entry waits');
  await scale(page).getByRole('button', { name: 'Weigh' }).click();
  await expect(form(page).getByLabel('The scale shows, g')).toHaveValue('77');
  await expect(form(page).getByLabel(/^Onto what is there/)).toBeChecked();
  await expect(form(page)).toContainText('400.5 g in the bowl');
  await expect(weighed(page)).toContainText('82 g 2 cups baby spinach');

  await page.unroute(EVENTS);
  await expect(status(page)).toHaveText(ARRIVED, { timeout: 20_000 });
  await page.reload();
  await scale(page).getByRole('button', { name: 'Weigh' }).click();
  await expect(weighed(page).getByText('82 g 2 cups baby spinach')).toHaveCount(1);

  // The episode has them as its own readings.
  await page.goto(episode);
  const row = page.locator('tr[data-member]').filter({ hasText: '2 cups baby spinach' });
  await expect(row).toContainText('82');
  expect(pageErrors.filter((text) => !/ERR_|Failed to load|fetch/.test(text))).toEqual([]);
});

test('a jar before and after, and a wrong weight that is struck out', async ({ page }) => {
  test.slow();
  await openDay(page);
  await scale(page).getByRole('button', { name: 'Weigh' }).click();
  await choose(page, '1 tablespoon olive oil');
  await form(page)
    .getByLabel(/^Before and after/)
    .check();
  await show(page, '512');
  await expect(form(page)).toContainText('512 g, kept until it is weighed again');
  await keep(page);
  // It waits for its second reading, and says so where something would be said of the dish.
  await expect(form(page)).toContainText('512 g before: now after');
  await expect(say(page)).toContainText('1 tablespoon olive oil (before, and not after)');
  await show(page, '530');
  await keep(page);
  await expect(form(page)).toContainText('530 g after is no less than 512 g before');
  await form(page).getByLabel('The scale shows, g').fill('498.5');
  await keep(page);
  await expect(weighed(page)).toContainText('13.5 g 1 tablespoon olive oil');
  await expect(weighed(page)).not.toContainText('olive oil, before');
  await expect(status(page)).toHaveText(ARRIVED);
  await weighed(page).getByRole('button', { name: 'Strike out 1 tablespoon olive oil' }).click();
  await expect(weighed(page)).not.toContainText('13.5 g');
  await expect(status(page)).toHaveText(ARRIVED);
  await page.reload();
  await expect(say(page)).toContainText('1 tablespoon olive oil');
});

test('a photo of the display stands for a number that nobody has typed yet', async ({
  page,
  context,
}) => {
  test.slow();
  const episode = await openDay(page);
  await scale(page).getByRole('button', { name: 'Weigh' }).click();
  await choose(page, '1 cup frozen peas');
  await context.setOffline(true);
  await form(page)
    .getByLabel('Photo of the display now, type later')
    .setInputFiles({ name: 'display.png', mimeType: 'image/png', buffer: picture() });
  const photos = page.getByRole('region', { name: 'Photos to be typed' });
  await expect(photos).toContainText('1 cup frozen peas');
  await expect(say(page)).toContainText('1 cup frozen peas (photo, number not typed)');
  await form(page)
    .getByLabel(/^Onto what is there/)
    .check();
  await show(page, '300');
  await keep(page);
  await expect(form(page)).toContainText('Type the number of the photo before this one first');
  await expectAccessible(page);

  // Its bytes follow the entry that names them, and are there on another device.
  const sent = page.waitForResponse(
    (response) =>
      /\/photo\/[0-9a-f]{64}\?/.test(response.url()) && response.request().method() === 'PUT',
    { timeout: 40_000 },
  );
  await context.setOffline(false);
  const answer = await sent;
  expect(answer.status()).toBe(200);
  const there = await page.request.get(answer.url());
  expect(there.headers()['content-type']).toBe('image/jpeg');
  const { pathname, search } = new URL(answer.url());
  const unnamed = pathname.replace(/[0-9a-f]{64}$/, 'a'.repeat(64)) + search;
  expect((await page.request.put(unnamed, { data: picture() })).status()).toBe(404);
  expect((await page.request.put(pathname + search, { data: picture() })).status()).toBe(400);

  await photos.getByRole('button', { name: /^Type its number/ }).click();
  const shown = page.getByRole('img', { name: 'The scale’s display with 1 cup frozen peas' });
  await expect.poll(() => shown.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBe(40);
  await form(page).getByLabel('The scale shows, g').fill('131');
  await keep(page);
  await expect(photos).toBeHidden();
  await expect(weighed(page)).toContainText('131 g 1 cup frozen peas');
  await expect(status(page)).toHaveText(ARRIVED, { timeout: 20_000 });
  await page.goto(episode);
  await expect(
    page.locator('tr[data-member]').filter({ hasText: '1 cup frozen peas' }),
  ).toContainText('131');
});

test('what was said is locked, and a later weight warns at once while a retake is possible', async ({
  page,
}) => {
  test.slow();
  await openDay(page);
  const whole = say(page).getByRole('listitem').filter({ hasText: 'All of it' });
  await whole.getByRole('button', { name: /^Said ?: The whole dish/ }).click();
  await expect(whole).toContainText(/Said 09:\d\d, locked: “The whole dish has about/);
  await expect(say(page)).toContainText('One of 2 has');
  await expect(say(page)).toContainText('So far the day has');
  await expect(say(page)).toContainText('Still unweighed');
  await expect(status(page)).toHaveText(ARRIVED);
  await expect(page.getByText('A retake is still possible.')).toBeHidden();

  await scale(page).getByRole('button', { name: 'Weigh' }).click();
  await choose(page, '60 g browned ground turkey, left from Wednesday');
  await show(page, '260');
  await keep(page);
  await expect(form(page)).toContainText('260 g is 4.3 times the 60 g planned. Is it right?');
  await form(page).getByRole('button', { name: 'It is right: keep it' }).click();
  const warning = page.getByRole('region', { name: /^Said, and changed since: Barley skillet/ });
  await expect(warning).toContainText(/You said about 1,[34]\d0 calories, it is now 1,\d{3}/);
  await expect(warning).toContainText('A retake is still possible.');
  await expectAccessible(page);
  await page.reload();
  await warning.getByRole('button', { name: /^Said again/ }).click();
  await expect(warning).toBeHidden();
  await expect(status(page)).toHaveText(ARRIVED);
  await page.reload();
  await expect(whole).toContainText('locked:');
  await whole.getByRole('button', { name: /^Not said after all/ }).click();
  // What was said before it stands again, and is off.
  await expect(warning).toContainText('A retake is still possible.');
});

test('a weight that is changed on the ordinary page warns here too', async ({ page, context }) => {
  test.slow();
  const episode = await openDay(page);
  const whole = say(page).getByRole('listitem').filter({ hasText: 'All of it' });
  await whole.getByRole('button', { name: /^Said ?: The whole dish/ }).click();
  await expect(status(page)).toHaveText(ARRIVED);
  const laptop = await context.newPage();
  await laptop.goto(episode);
  await laptop
    .locator('tr[data-member]')
    .filter({ hasText: '1 cup frozen peas' })
    .getByRole('link', { name: /^Weigh/ })
    .press('Enter');
  const ordinary = laptop.getByRole('region', { name: 'Weigh: 1 cup frozen peas' });
  await ordinary.getByRole('textbox', { name: 'On the scale, g' }).fill('900');
  await ordinary.getByRole('button', { name: 'Keep the reading' }).press('Enter');
  await page.bringToFront();
  await expect(page.getByRole('region', { name: /^Said, and changed since/ })).toContainText(
    'it is now',
    { timeout: 15_000 },
  );
});

test('a day is lived through: a slip, a lost connection, a jar before and after, a line said, a pickup', async ({
  page,
  context,
  pageErrors,
}) => {
  test.slow();
  const episode = await openDay(page, '09:32');
  const replan = page.getByRole('region', { name: 'Re-plan' });
  await expect(replan).toContainText(/The day has slipped by \d+ min/);

  await context.setOffline(true);
  await scale(page).getByRole('button', { name: 'Weigh' }).click();
  await choose(page, '1 tablespoon olive oil');
  await form(page)
    .getByLabel(/^Before and after/)
    .check();
  await show(page, '512');
  await keep(page);
  await show(page, '498.5');
  await keep(page);
  await expect(weighed(page)).toContainText('13.5 g 1 tablespoon olive oil');
  const whole = say(page).getByRole('listitem').filter({ hasText: 'All of it' });
  await expect(say(page)).toContainText('2 weights are not in these lines yet');
  await page.getByRole('textbox', { name: 'Note' }).fill('Close-up of the peas');
  await page.getByLabel('To get later takes').selectOption({ label: '10 min' });
  await page.getByRole('button', { name: 'Get it later' }).click();
  const later = page.getByRole('region', { name: 'To get later' });
  await expect(later).toContainText('10 min, not in the order yet');
  await expect(status(page)).toContainText('3 entries wait');

  await context.setOffline(false);
  await expect(status(page)).toHaveText(ARRIVED, { timeout: 20_000 });
  await expect(say(page)).not.toContainText('not in these lines yet');
  await whole.getByRole('button', { name: /^Said ?: The whole dish/ }).click();
  await expect(whole).toContainText(/Said 09:\d\d, locked/);

  await replan.getByRole('button', { name: 'See what moves' }).click();
  const moves = page.getByRole('region', { name: 'What moves, from 09:3' });
  await expect(moves).toContainText(/New: Close-up of the peas at \d\d:\d\d/, { timeout: 15_000 });
  await moves.getByRole('button', { name: 'Take it' }).click();
  const order = page.getByRole('region', { name: 'The order' });
  const row = order.getByRole('listitem').filter({ hasText: 'Close-up of the peas' });
  await expect(row).toHaveCount(1);
  await expect(later).toContainText(/in the order at \d\d:\d\d/);
  await expect(status(page)).toHaveText(ARRIVED);
  await page.reload();
  await expect(row).toHaveCount(1);
  await expectAccessible(page);

  // The order that was taken is taken back, and the pickup has no place any more.
  await replan.getByRole('button', { name: /^Back to the order before 09:3/ }).click();
  await expect(row).toHaveCount(0);
  await expect(later).toContainText('not in the order yet');
  await later.getByRole('button', { name: /^Got it/ }).click();
  await expect(later).toContainText('got 09:3');
  await expect(status(page)).toHaveText(ARRIVED);

  const asked = page.waitForRequest((request) => request.url().includes('/events?day='));
  const day = new URL((await asked).url()).searchParams.get('day') ?? '';
  const answer = await page.request.get(`${episode}/day/events?day=${day}`);
  const { events } = (await answer.json()) as { events: { id: string; kind: string }[] };
  expect(events.map(({ kind }) => kind).sort()).toEqual(
    ['weighed', 'weighed', 'pickup', 'said', 'replanned', 'orderBack', 'done'].sort(),
  );
  expect(new Set(events.map(({ id }) => id)).size).toBe(events.length);
  expect(pageErrors.filter((text) => !/ERR_|Failed to load|fetch/.test(text))).toEqual([]);
});
