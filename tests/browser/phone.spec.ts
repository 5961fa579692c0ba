import { request as askPlainly } from 'node:http';
import { request as askSecurely } from 'node:https';
import type { Browser, BrowserContext, Page } from '@playwright/test';
import { expect, expectAccessible, test } from './fixtures';
import type { Door } from './phone-door';

test.use({ phone: true });

/** A phone's browser: another context, which warns of no certificate, as after the person went past it. */
async function onPhone(browser: Browser, door: Door): Promise<BrowserContext> {
  return browser.newContext({
    baseURL: door.url,
    ignoreHTTPSErrors: true,
    viewport: { width: 390, height: 844 },
  });
}

/** Makes a code on the computer, and reads it off the page. */
async function newCode(page: Page): Promise<string> {
  await page.goto('/phones');
  await page.getByRole('button', { name: /^Make a (?:new )?code$/ }).click();
  const shown = page.getByText(/^[A-Z0-9]{4} [A-Z0-9]{4}$/);
  return (await shown.innerText()).replace(' ', '');
}

async function letIn(page: Page, code: string, name: string): Promise<void> {
  await page.goto('/pair');
  await page.getByRole('textbox', { name: 'Code' }).fill(code);
  await page.getByRole('textbox', { name: 'What this device is called' }).fill(name);
  await page.getByRole('button', { name: 'Let me in' }).click();
}

/** What a page says was wrong; the framework's own announcer is empty or names the page. */
const alertOn = (page: Page) => page.getByRole('alert').filter({ hasText: 'to put right' });

const HTML = { accept: 'text/html' };

interface Asked {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
  /** PEM of authorities to trust; without, nothing that is not trusted everywhere. */
  readonly ca?: string;
}

/** One request by Node's own client, which follows nothing: its status and where it leads. */
function ask(url: string, { method = 'GET', headers = {}, body = '', ca }: Asked = {}) {
  return new Promise<{ status: number; location: string; text: string; cookies: string[] }>(
    (resolve, reject) => {
      // The certificate is checked against the address, whatever Host is sent.
      const trust = { servername: '', ...(ca === undefined ? {} : { ca }) };
      const options = { method, headers, agent: false, ...trust };
      const client = url.startsWith('https:') ? askSecurely : askPlainly;
      const asking = client(url, options, (answer) => {
        let text = '';
        answer.on('data', (chunk: Buffer) => (text += chunk.toString('utf8')));
        answer.on('end', () =>
          resolve({
            status: answer.statusCode ?? 0,
            location: answer.headers.location ?? '',
            text,
            cookies: answer.headers['set-cookie'] ?? [],
          }),
        );
      });
      asking.on('error', reject);
      asking.end(body);
    },
  );
}

test('a phone is let in by a code, once, works, and is out as soon as it is sent away', async ({
  page,
  browser,
  door,
}) => {
  await page.goto('/phones');
  await expect(page.getByText('No device was let in yet.')).toBeVisible();
  await expectAccessible(page);
  const code = await newCode(page);
  await expect(page.getByText(`${door.url}/pair`).first()).toBeVisible();
  await expect(page.getByRole('img', { name: /^QR code/ })).toBeVisible();
  await expectAccessible(page);

  const context = await onPhone(browser, door);
  const phone = await context.newPage();
  await phone.goto('/');
  await expect(phone).toHaveURL(`${door.url}/pair`);
  await expectAccessible(phone);
  await phone.goto('about:blank');
  // As the camera opens it: the code stands in its field, and no longer in the address.
  await phone.goto(`/pair#${code}`);
  await expect(phone.getByRole('textbox', { name: 'Code' })).toHaveValue(
    `${code.slice(0, 4)} ${code.slice(4)}`,
  );
  await expect(phone).toHaveURL(`${door.url}/pair`);
  await phone.getByRole('textbox', { name: 'What this device is called' }).fill('Kitchen phone');
  await phone.getByRole('button', { name: 'Let me in' }).click();
  await expect(phone).toHaveURL(`${door.url}/`);
  await expect(phone.getByRole('heading', { level: 1 })).toBeVisible();
  const [cookie] = (await context.cookies()).filter(({ name }) => name === '__Host-slate');
  expect(cookie).toMatchObject({ httpOnly: true, secure: true, sameSite: 'Strict', path: '/' });

  // An action goes through, and the computer has what was entered on the phone.
  await phone.goto('/kitchen');
  await expect(phone.getByRole('heading', { level: 1 })).toBeVisible();
  await phone.goto('/phones');
  await expect(phone.getByText('On the computer itself')).toBeVisible();
  await expect(phone.getByRole('button', { name: /Make|Send away/ })).toHaveCount(0);
  await phone.getByRole('button', { name: 'kitchen night' }).click();
  await expect(phone.locator('html')).toHaveAttribute('data-theme', 'night');

  // The same code again, from another phone.
  const second = await onPhone(browser, door);
  const other = await second.newPage();
  await letIn(other, code, 'Second phone');
  await expect(alertOn(other)).toContainText('This code let a device in already');
  await expect(other.getByRole('textbox', { name: 'What this device is called' })).toHaveValue(
    'Second phone',
  );
  await other.goto('/kitchen');
  await expect(other).toHaveURL(`${door.url}/pair`);

  // The page on the computer shows by itself that the code was used, and by whom.
  await expect(page.getByText('The last code has let a device in.')).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Send away Kitchen phone' }).click();
  await expect(page.getByText(/sent away /)).toBeVisible();
  await phone.goto('/kitchen');
  await expect(phone).toHaveURL(`${door.url}/pair`);
  await context.close();
  await second.close();
});

test('a wrong code says how many tries are left, and the fifth ends it', async ({
  page,
  browser,
  door,
}) => {
  const code = await newCode(page);
  const context = await onPhone(browser, door);
  const phone = await context.newPage();
  const alert = alertOn(phone);
  for (const left of ['4 tries are left', '3 tries', '2 tries', 'One try is left']) {
    await letIn(phone, 'AAAA AAAA', 'Kitchen phone');
    await expect(alert).toContainText(left);
    await expect(phone.getByRole('textbox', { name: 'Code' })).toHaveValue('AAAA AAAA');
  }
  await expectAccessible(phone);
  await letIn(phone, 'AAAA AAAA', 'Kitchen phone');
  await expect(alert).toContainText('Too many wrong tries');
  await letIn(phone, code, 'Kitchen phone');
  await expect(alert).toContainText('Too many wrong tries');
  await letIn(phone, code, ' ');
  await expect(alert).toContainText('Say what this device is called');
  await expect(page.getByText('it was typed wrong five times')).toBeVisible();
  await context.close();
});

test('without a session nothing is answered: no page, file, action or export', async ({
  page,
  served,
  door,
}) => {
  await page.goto('/');
  const href = await page
    .getByRole('link', { name: /harbor/i })
    .first()
    .getAttribute('href');
  const episode = href?.split('?')[0] ?? '';
  expect(episode).toMatch(/^\/episodes\/[0-9a-f-]{36}/);
  const id = episode.split('/')[2] ?? '';
  const files = ['/export', '/day/day-sheet.ics', '/day/day-sheet.txt', '/shopping/shopping.txt'];
  const paths = [
    '/',
    '/phones',
    '/kitchen',
    '/pantry',
    '/alive',
    '/foods/search?q=egg',
    '/nowhere',
  ];
  for (const path of [...paths, ...['', ...files].map((file) => `/episodes/${id}${file}`)]) {
    // All of them are there on loopback, so that a refusal is one.
    if (path !== '/nowhere') expect((await ask(served.url + path)).status, path).toBe(200);
    const asPage = await ask(door.url + path, { ca: door.authority, headers: HTML });
    expect([asPage.status, asPage.location], path).toEqual([307, `${door.url}/pair`]);
    const plain = await ask(door.url + path, { ca: door.authority });
    expect([plain.status, plain.text], path).toEqual([401, 'This device is not let in.\n']);
    const flight = await ask(`${door.url}${path}`, { ca: door.authority, headers: { rsc: '1' } });
    expect(flight.status, path).toBe(401);
    for (const cookie of ['__Host-slate=', `__Host-slate=${'A'.repeat(43)}`, 'slate=x']) {
      const forged = await ask(door.url + path, { ca: door.authority, headers: { cookie } });
      expect(forged.status, path).toBe(401);
    }
  }

  // A server action that is known to this build, sent to each place that answers everybody.
  await page.goto('/phones');
  const sent = page.waitForRequest((each) => each.headers()['next-action'] !== undefined);
  await page.getByRole('button', { name: 'Make a code' }).click();
  const action = await (await sent).headerValue('next-action');
  const body = (await sent).postDataBuffer()?.toString('latin1') ?? '';
  const type = (await (await sent).headerValue('content-type')) ?? '';
  expect(action).toMatch(/^[0-9a-f]{40,}$/);
  for (const path of ['/pair', '/pair/let-in', '/', '/phones']) {
    for (const headers of [{ 'next-action': action ?? '' }, {}]) {
      const own = { ...headers, 'content-type': type, origin: door.url };
      const post = { method: 'POST', ca: door.authority, headers: own, body };
      const { status, text } = await ask(door.url + path, post);
      if (path === '/pair/let-in' && !('next-action' in headers)) {
        expect([303, 413], path).toContain(status);
      } else expect([status, text], path).toEqual([401, 'This device is not let in.\n']);
    }
  }
});

test('a device that is in makes no codes and sends nobody away, even by the action itself', async ({
  page,
  browser,
  door,
}) => {
  await page.goto('/phones');
  const sent = page.waitForRequest((each) => each.headers()['next-action'] !== undefined);
  const code = await newCode(page);
  const headers = await (await sent).allHeaders();
  const context = await onPhone(browser, door);
  const phone = await context.newPage();
  await letIn(phone, code, 'Kitchen phone');
  await expect(phone).toHaveURL(`${door.url}/`);
  await expect(page.getByText('The last code has let a device in.')).toBeVisible();
  const answer = await context.request.post(`${door.url}/phones`, {
    headers: {
      'next-action': headers['next-action'] ?? '',
      'content-type': headers['content-type'] ?? '',
      accept: 'text/x-component',
      origin: door.url,
    },
    data: (await sent).postDataBuffer() ?? Buffer.alloc(0),
  });
  expect(await answer.text()).toContain('This is done on the computer itself');
  await page.reload();
  await expect(page.getByText('The last code has let a device in.')).toBeVisible();
  await context.close();
});

test('a client that trusts the authority connects without going past a warning, another does not', async ({
  door,
}) => {
  const trusting = await ask(`${door.url}/pair`, { ca: door.authority });
  expect(trusting.status).toBe(200);
  expect(trusting.text).toContain('Let this device in');
  await expect(ask(`${door.url}/pair`)).rejects.toThrow(/self-signed certificate/);
  const offered = await ask(`${door.url}/authority.crt`, { ca: door.authority });
  expect(offered.status).toBe(200);
});

test('another Host is refused on both listeners', async ({ served, door }) => {
  for (const host of ['evil.example', `evil.example:${new URL(served.url).port}`, '192.168.0.77']) {
    for (const path of ['/', '/pair', '/phones', '/icon.svg', '/alive']) {
      const inner = await ask(served.url + path, { headers: { host } });
      expect([inner.status, path]).toEqual([421, path]);
      const outer = await ask(door.url + path, { headers: { host }, ca: door.authority });
      expect([outer.status, path]).toEqual([421, path]);
    }
  }
  const { port } = new URL(served.url);
  for (const host of [`localhost:${port}`, `[::1]:${port}`]) {
    expect((await ask(`${served.url}/alive`, { headers: { host } })).status).toBe(200);
  }
  // Names of loopback are none of the door's.
  const loopback = { host: `127.0.0.1:${new URL(door.url).port}` };
  if (new URL(door.url).hostname !== '127.0.0.1') {
    expect((await ask(door.url, { headers: loopback, ca: door.authority })).status).toBe(421);
  }
});

test('what another site sends is refused on both listeners', async ({ served, door }) => {
  const foreign = ['https://evil.example', 'null', 'http://127.0.0.1:1', `${door.url}0`];
  for (const origin of foreign) {
    const post = { method: 'POST', headers: { origin }, ca: door.authority };
    expect((await ask(served.url, post)).status).toBe(403);
    expect((await ask(`${door.url}/pair/let-in`, post)).status).toBe(403);
    expect((await ask(door.url, post)).status).toBe(403);
  }
  const hidden = { method: 'POST', headers: { 'sec-fetch-site': 'cross-site' } };
  expect((await ask(served.url, hidden)).status).toBe(403);
});

test('a forged door header changes nothing on loopback, and does not pass the door', async ({
  page,
  served,
  door,
}) => {
  for (const forged of ['x', '', 'A'.repeat(43)]) {
    const headers = { 'x-slate-door': forged, ...HTML };
    const inner = await ask(`${served.url}/phones`, { headers });
    expect(inner.status).toBe(200);
    expect(inner.text).toContain('Make a code');
    const outer = await ask(`${door.url}/phones`, { headers, ca: door.authority });
    expect([outer.status, outer.location]).toEqual([307, `${door.url}/pair`]);
  }
  // On loopback nobody is let in, with the right code or not.
  const code = await newCode(page);
  const headers = { 'content-type': 'application/x-www-form-urlencoded', 'x-slate-door': 'x' };
  const body = new URLSearchParams({ code, name: 'Intruder' }).toString();
  const post = await ask(`${served.url}/pair/let-in`, { method: 'POST', headers, body });
  expect([post.status, post.cookies]).toEqual([403, []]);
});

test('copying where the phone gives no clipboard selects the text and says so; the numbers are locked', async ({
  page,
  browser,
  door,
}) => {
  const code = await newCode(page);
  const context = await onPhone(browser, door);
  await context.addInitScript(() => {
    Object.defineProperty(navigator, 'clipboard', { value: undefined });
  });
  const phone = await context.newPage();
  await letIn(phone, code, 'Kitchen phone');
  await expect(phone).toHaveURL(`${door.url}/`);
  const href = await phone
    .getByRole('link', { name: /harbor/i })
    .first()
    .getAttribute('href');
  await phone.goto(`${href?.split('?')[0] ?? ''}/publish`);
  await phone.getByRole('button', { name: /^Copy,/ }).click();
  await expect(phone.getByText(/^Selected: press Ctrl\+C .*on a phone choose Copy/)).toBeVisible();
  await expect(phone.getByText('The numbers in it are locked')).toBeVisible();
  const selected = await phone.evaluate(() => window.getSelection()?.toString());
  expect(selected).toContain('THE DISHES SHOWN');
  await context.close();
});
