import type { Browser, BrowserContext, Locator, Page } from '@playwright/test';
import type { DayEvent } from '../../lib/shoot/day-log';
import { pass, setClock } from './day-clock';
import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true, viewport: { width: 390, height: 844 } });

const EVENTS = /\/day\/events(\?|$)/;

/** The page of the demo's filming day while it happens. */
async function openDay(page: Page): Promise<string> {
  await page.goto('/');
  const demo = page.getByRole('link', { name: /One oven, three dishes/ }).first();
  const path = `${(await demo.getAttribute('href')) ?? ''}/day`;
  await page.goto(path);
  await page.getByRole('link', { name: 'On the day' }).click();
  await expect(page.getByRole('heading', { name: 'On the day' })).toBeVisible();
  await expect(status(page)).toHaveText('Connected: every entry has arrived.');
  return path;
}

/** All that the server has, in the order of the day. */
async function kept(page: Page, path: string): Promise<DayEvent[]> {
  const asked = page.waitForRequest((request) => request.url().includes('/events?day='));
  const { searchParams } = new URL((await asked).url());
  const answer = await page.request.get(`${path}/events?day=${searchParams.get('day') ?? ''}`);
  return ((await answer.json()) as { events: DayEvent[] }).events;
}
const says = (event: DayEvent) => (event.kind === 'note' ? event.payload.text : event.kind);

const status = (page: Page): Locator => page.getByRole('status').first();
const nowCard = (page: Page): Locator => page.getByRole('region', { name: 'Now' });
const order = (page: Page): Locator => page.getByRole('region', { name: 'The order' });
const rowsDone = (page: Page): Locator =>
  order(page)
    .getByRole('listitem')
    .filter({ has: page.getByRole('button', { name: /^Not done after all/ }) });

/** Marks what stands under Now, and waits until another thing does. */
async function done(page: Page): Promise<string> {
  const button = nowCard(page)
    .getByRole('button', { name: /^Done / })
    .first();
  const title = ((await button.textContent()) ?? '').replace('Done ', '');
  await button.click();
  await expect(
    order(page).getByRole('button', { name: `Not done after all ${title}` }),
  ).toBeVisible();
  return title;
}

async function note(page: Page, text: string): Promise<void> {
  await page.getByRole('textbox', { name: 'Note' }).fill(text);
  await page.getByRole('button', { name: 'Keep the note' }).click();
  await expect(
    page.getByRole('region', { name: 'Notes' }).getByText(text, { exact: true }),
  ).toBeVisible();
  await expect(page.getByRole('textbox', { name: 'Note' })).toHaveValue('');
}

async function anotherDevice(
  browser: Browser,
  baseURL: string | undefined,
): Promise<BrowserContext> {
  return browser.newContext({ ...(baseURL !== undefined && { baseURL }) });
}

test('a cut connection and a reload lose nothing; each entry arrives once and in order', async ({
  page,
  context,
  browser,
  baseURL,
}) => {
  test.slow();
  const path = await openDay(page);
  const first = await done(page);
  await expect(status(page)).toHaveText('Connected: every entry has arrived.');

  await context.setOffline(true);
  const second = await done(page);
  const third = await done(page);
  await note(page, 'The butter was too cold');
  await expect(status(page)).toHaveText(
    'Not connected: 3 entries wait on this phone. Keep this page open.',
  );
  await expect(page.getByText('waits to be sent')).toBeVisible();
  await expect(rowsDone(page)).toHaveCount(3);
  await expectAccessible(page);

  // The server can be reached again, but no entry gets through before the page is loaded anew.
  await page.route(EVENTS, (route) => route.abort());
  await context.setOffline(false);
  await page.reload();
  await expect(status(page)).toHaveText(
    'Not connected: 3 entries wait on this phone. Keep this page open.',
  );
  await expect(rowsDone(page)).toHaveCount(3);
  await expect(page.getByText('The butter was too cold')).toBeVisible();

  await page.unroute(EVENTS);
  await expect(status(page)).toHaveText('Connected: every entry has arrived.', { timeout: 20_000 });
  const events = await kept(page, path);
  expect(events.map(says)).toEqual(['done', 'done', 'done', 'The butter was too cold']);
  expect(events.map(({ deviceSeq }) => deviceSeq)).toEqual([1, 2, 3, 4]);
  expect(new Set(events.map(({ deviceId }) => deviceId)).size).toBe(1);
  await page.reload();
  await expect(rowsDone(page)).toHaveCount(3);

  const laptop = await anotherDevice(browser, baseURL);
  const there = await laptop.newPage();
  await there.goto(`${path}/live`);
  await expect(rowsDone(there)).toHaveCount(3);
  for (const title of [first, second, third]) {
    await expect(
      order(there).getByRole('button', { name: `Not done after all ${title}` }),
    ).toBeVisible();
  }
  await expect(there.getByText('The butter was too cold')).toBeVisible();

  // Both stay in step: what one takes back, the other sees without being loaded anew.
  await there.getByRole('button', { name: `Not done after all ${third}, done last` }).click();
  await expect(rowsDone(there)).toHaveCount(2);
  await expect(rowsDone(page)).toHaveCount(2);
  await expect(nowCard(page).getByRole('button', { name: `Done ${third}` })).toBeVisible();
  await laptop.close();
});

test('an answer that is lost after the entry was kept makes no second one', async ({ page }) => {
  const path = await openDay(page);
  let lost = 0;
  await page.route(EVENTS, async (route) => {
    if (route.request().method() !== 'POST' || lost >= 2) return route.fallback();
    lost += 1;
    const answer = await route.fetch();
    expect(answer.status()).toBe(200);
    return route.abort();
  });
  await done(page);
  await note(page, 'Only once');
  await expect.poll(() => lost).toBe(2);
  await expect(status(page)).toHaveText('Connected: every entry has arrived.', { timeout: 20_000 });
  expect((await kept(page, path)).map(says)).toEqual(['done', 'Only once']);
});

test('two tabs take no number twice, and see each other’s entries while not connected', async ({
  page,
  context,
}) => {
  const path = await openDay(page);
  const tab = await context.newPage();
  await tab.goto(`${path}/live`);
  await expect(status(tab)).toHaveText('Connected: every entry has arrived.');
  await context.setOffline(true);
  for (const round of [1, 2, 3]) {
    await Promise.all([note(page, `here ${round}`), note(tab, `there ${round}`)]);
  }
  for (const each of [page, tab]) {
    await expect(status(each)).toContainText('6 entries wait');
    await expect(each.getByRole('list', { name: 'Notes' }).getByRole('listitem')).toHaveCount(6);
  }
  await context.setOffline(false);
  await expect(status(page)).toHaveText('Connected: every entry has arrived.', { timeout: 20_000 });
  await expect(status(tab)).toHaveText('Connected: every entry has arrived.', { timeout: 20_000 });
  const events = await kept(page, path);
  expect(events.map(says).sort()).toEqual([
    'here 1',
    'here 2',
    'here 3',
    'there 1',
    'there 2',
    'there 3',
  ]);
  expect(events.map(({ deviceSeq }) => deviceSeq).sort()).toEqual([1, 2, 3, 4, 5, 6]);
});

test('where the browser keeps nothing it says so, and entries are sent all the same', async ({
  page,
}) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('The operation is insecure.', 'SecurityError');
    };
  });
  const path = await openDay(page);
  await expect(page.getByText('This browser keeps nothing for this page')).toBeVisible();
  await page.route(EVENTS, (route) => route.abort());
  await done(page);
  await expect(status(page)).toHaveText(
    'Not connected: 1 entry waits on this phone. Keep this page open.',
  );
  await expectAccessible(page);
  await page.unroute(EVENTS);
  await expect(status(page)).toHaveText('Connected: every entry has arrived.', { timeout: 20_000 });
  expect((await kept(page, path)).map(says)).toEqual(['done']);
});

test('an entry that is refused stays in sight until the person decides', async ({ page }) => {
  const path = await openDay(page);
  let refusing = true;
  await page.route(EVENTS, async (route) => {
    if (route.request().method() !== 'POST' || !refusing) return route.fallback();
    const { events } = route.request().postDataJSON() as { events: DayEvent[] };
    const problem = { path: 'events[0]', code: 'gone', message: 'It is not wanted.' };
    const refused = events.map(({ id }) => ({ id, problem }));
    return route.fulfill({ status: 404, json: { kept: [], already: [], refused } });
  });
  await page.getByRole('textbox', { name: 'Note' }).fill('Pan was too small');
  await page.getByRole('button', { name: 'Keep the note' }).click();
  const refused = page.getByRole('region', { name: 'Not taken' });
  await expect(refused).toContainText('Note “Pan was too small”: It is not wanted.');
  await page.reload();
  await expect(refused).toContainText('Pan was too small');
  await expectAccessible(page);
  refusing = false;
  await refused.getByRole('button', { name: 'Send again' }).click();
  await expect(refused).toBeHidden();
  await expect(status(page)).toHaveText('Connected: every entry has arrived.');
  expect((await kept(page, path)).map(says)).toEqual(['Pan was too small']);
});

test('by keys alone, with targets for wet hands, at 320 px', async ({ page, pageErrors }) => {
  await openDay(page);
  await page.setViewportSize({ width: 320, height: 640 });
  const press = async (button: Locator) => {
    await button.focus();
    await page.keyboard.press('Enter');
  };
  const mark = nowCard(page)
    .getByRole('button', { name: /^Done / })
    .first();
  await press(mark);
  await expect(rowsDone(page)).toHaveCount(1);
  // The keyboard stays where it was, on the next thing to do.
  await expect(mark).toBeFocused();
  await press(order(page).getByRole('button', { name: /^Not done after all/ }));
  await expect(rowsDone(page)).toHaveCount(0);
  await expect(
    order(page)
      .getByRole('button', { name: /^Done / })
      .first(),
  ).toBeVisible();

  await press(page.getByRole('button', { name: 'Keep the note' }));
  const field = page.getByRole('textbox', { name: 'Note' });
  await expect(field).toHaveAttribute('aria-invalid', 'true');
  await field.fill('x'.repeat(401));
  await press(page.getByRole('button', { name: 'Keep the note' }));
  await expect(page.getByText('this one has 401')).toBeVisible();
  await expect(field).toHaveValue('x'.repeat(401));
  await expectAccessible(page);

  const buttons = page.locator('main').getByRole('button');
  const small = await buttons.evaluateAll((all) =>
    all
      .map((button) => button.getBoundingClientRect())
      .filter(({ height, width }) => height < 55.5 || width < 56)
      .map(({ height, width }) => `${width} × ${height}`),
  );
  expect(await buttons.count()).toBeGreaterThan(10);
  expect(small).toEqual([]);
  const overflow = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overflow).toBeLessThanOrEqual(0);
  expect(pageErrors).toEqual([]);
});

test('a double press marks one thing, not the one that moves under the finger', async ({
  page,
}) => {
  await openDay(page);
  await nowCard(page)
    .getByRole('button', { name: /^Done / })
    .first()
    .dblclick();
  await expect(rowsDone(page)).toHaveCount(1);
  await expect(status(page)).toHaveText('Connected: every entry has arrived.');
  await expect(rowsDone(page)).toHaveCount(1);
});

const slip = (page: Page): Locator => page.getByRole('region', { name: 'Re-plan' });
const rowOf = (page: Page, title: string): Locator =>
  order(page).getByRole('listitem').filter({ hasText: title });

test('a day with a slip: another order is looked at, taken, and there on a second device', async ({
  page,
  context,
  browser,
  baseURL,
}) => {
  test.slow();
  await setClock(page, '09:32');
  const path = await openDay(page);
  await expect(slip(page)).toContainText('The day has slipped by 17 min');
  await expectAccessible(page);

  // Without the program no other order is made, and that is said; what is pressed is kept.
  await context.setOffline(true);
  await slip(page).getByRole('button', { name: 'See what moves' }).click();
  await expect(slip(page)).toContainText('Not connected: another order can be made once');
  await nowCard(page).getByRole('button', { name: 'Start Weigh and chop' }).click();
  await expect(nowCard(page)).toContainText('Under way since 09:32');
  await context.setOffline(false);
  await expect(status(page)).toHaveText('Connected: every entry has arrived.', { timeout: 20_000 });

  await expect(rowOf(page, 'Toast the barley')).toContainText('09:15');
  await slip(page).getByRole('button', { name: 'See what moves' }).click();
  const moves = page.getByRole('region', { name: 'What moves, from 09:3' });
  await expect(moves).toContainText(/Toast the barley moves from 09:15 to 09:4\d/, {
    timeout: 15_000,
  });
  await expect(page.getByRole('heading', { name: /^What moves/ })).toBeFocused();
  await expectAccessible(page);
  await moves.getByRole('button', { name: 'Leave it' }).click();
  await expect(rowOf(page, 'Toast the barley')).toContainText('09:15');

  await slip(page).getByRole('button', { name: 'See what moves' }).click();
  await moves.getByRole('button', { name: 'Take it' }).click();
  await expect(rowOf(page, 'Toast the barley')).toContainText(/09:4\d/);
  await expect(slip(page).getByRole('button', { name: 'Re-plan from now' })).toBeVisible();
  await expect(status(page)).toHaveText('Connected: every entry has arrived.');
  const times = await order(page).getByRole('listitem').locator('p').allTextContents();

  const laptop = await anotherDevice(browser, baseURL);
  const there = await laptop.newPage();
  await setClock(there, '09:33');
  await there.goto(`${path}/live`);
  await expect(rowOf(there, 'Toast the barley')).toContainText(/09:4\d/);
  expect(await order(there).getByRole('listitem').locator('p').allTextContents()).toEqual(times);
  await laptop.close();
  expect((await kept(page, path)).map(({ kind }) => kind)).toEqual(['started', 'replanned']);
});

test('a timer is counted from its end: it outlives a reload, rings when it is out, and is stopped', async ({
  page,
}) => {
  await setClock(page, '09:20');
  await openDay(page);
  for (let n = 0; n < 3; n += 1) await done(page);
  const timers = page.getByRole('region', { name: 'Timers' });
  await expect(timers).toBeHidden();
  await nowCard(page).getByRole('button', { name: 'Start Simmer the barley' }).click();
  await expect(timers).toContainText(/Simmer the barley3[12]:\d\d until 09:5\d/);
  await expect(nowCard(page)).toContainText('Say hello at the quay window');
  await pass(page, 10);
  await expect(timers).toContainText(/2[12]:\d\d until/);
  await page.reload();
  await expect(timers).toContainText(/2[012]:\d\d until 09:5\d/);
  await timers.getByRole('button', { name: 'Ring when time is up' }).click();
  await expect(timers.getByRole('button', { name: 'Sound is on' })).toBeVisible();
  await pass(page, 23);
  await expect(timers.getByRole('alert')).toHaveText('Time is up: Simmer the barley');
  // What is out is what is to be done now.
  await expect(nowCard(page).getByRole('button', { name: 'Done Simmer the barley' })).toBeVisible();
  await expectAccessible(page);
  await timers.getByRole('button', { name: /^Stop/ }).click();
  await expect(timers.getByRole('alert')).toBeEmpty();
  await page.reload();
  await expect(timers).toContainText('out since');
  await expect(timers.getByRole('alert')).toBeEmpty();
  await nowCard(page).getByText('Takes longer, or skip it').click();
  await nowCard(page)
    .getByRole('button', { name: /^5 min more/ })
    .click();
  await expect(timers).toContainText(/[45]:\d\d until/);
  await timers.getByRole('button', { name: 'Done Simmer the barley' }).click();
  await expect(timers).toBeHidden();
});

test('takes are written, and a plate is not eaten before its shots are there or done without', async ({
  page,
}) => {
  await setClock(page, '09:00');
  const path = await openDay(page);
  const shot = 'Barley falls into the bowl, 150 on the scale';
  await nowCard(page)
    .getByRole('button', { name: `Again ${shot}` })
    .click();
  await expect(nowCard(page)).toContainText('1 take, the last to be made again');
  await nowCard(page)
    .getByRole('button', { name: `Good ${shot}` })
    .click();
  await expect(nowCard(page)).toContainText('2 takes, the last good');

  const eat = 'Eat half of it, for real';
  await order(page)
    .getByRole('button', { name: `Done ${eat}` })
    .click();
  const missing = nowCard(page).getByRole('alert');
  await expect(missing).toContainText('Not yet taken:');
  await expect(missing).toContainText('Steam against the window');
  await expect(missing).not.toContainText(shot);
  await expectAccessible(page);
  await missing.getByRole('button', { name: 'Take now' }).click();
  await expect(missing).toBeHidden();
  await nowCard(page).getByRole('button', { name: 'Good Steam against the window' }).click();
  await expect(order(page).getByRole('button', { name: `Done ${eat}` })).toBeVisible();
  await order(page)
    .getByRole('button', { name: `Done ${eat}` })
    .click();
  await missing.getByRole('button', { name: /^Do without/ }).click();
  await expect(rowOf(page, eat)).toContainText('done 09:0');
  await expect(status(page)).toHaveText('Connected: every entry has arrived.');
  const kinds = (await kept(page, path)).map(({ kind }) => kind);
  expect(kinds.filter((kind) => kind === 'take')).toHaveLength(3);
  expect(kinds.filter((kind) => kind === 'without').length).toBeGreaterThan(3);
  expect(kinds.at(-1)).toBe('done');
});

test('an inside temperature is held against the published one, and what is got later is kept', async ({
  page,
}) => {
  test.slow();
  await setClock(page, '12:31');
  await openDay(page);
  const now = async () => (await nowCard(page).textContent()) ?? '';
  for (let n = 0; n < 40 && !(await now()).startsWith('NowSecond bake'); n += 1) {
    const missing = nowCard(page).getByRole('button', { name: /^Do without/ });
    const before = await now();
    await nowCard(page)
      .getByRole('button', { name: /^Done / })
      .first()
      .click();
    await expect.poll(now).not.toBe(before);
    if (await missing.isVisible()) await missing.click();
  }
  const form = page.getByRole('form', { name: 'Inside temperature' });
  await expect(form).toContainText('Inside at least 165.2 °F');
  await expect(form).toContainText('FoodSafety.gov');
  const field = form.getByRole('textbox', { name: 'Read inside, °F' });
  await field.fill('hot');
  await form.getByRole('button', { name: 'Keep the reading' }).click();
  await expect(form).toContainText('Write the degrees that you read, as 74.');
  await expect(field).toHaveValue('hot');
  await field.fill('160');
  await field.press('Enter');
  await expect(form).toContainText('160 °F: not reached, 5.2 °F short. Go on, and read again.');
  await expectAccessible(page);
  await field.fill('166');
  await field.press('Enter');
  await expect(form).toContainText('166 °F: reached.');

  await page.getByRole('textbox', { name: 'Note' }).fill('The bite, from the left');
  await page.getByRole('button', { name: 'Get it later' }).click();
  const later = page.getByRole('region', { name: 'To get later' });
  await expect(later).toContainText('The bite, from the left');
  await later.getByRole('button', { name: /^Got it/ }).click();
  await expect(later).toContainText('got 12:3');
  await nowCard(page).getByText('Takes longer, or skip it').click();
  await nowCard(page).getByRole('button', { name: /^Skip/ }).click();
  await expect(rowOf(page, 'Second bake')).toContainText('skipped 12:3');
  await rowOf(page, 'Second bake')
    .getByRole('button', { name: /^Not skipped/ })
    .click();
  await rowOf(page, 'First bake')
    .getByRole('button', { name: /^Make it again/ })
    .click();
  await expect(rowOf(page, 'First bake')).toContainText('now, again');
});
