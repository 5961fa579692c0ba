import { createServer, request as askPlainly, type IncomingHttpHeaders } from 'node:http';
import { request, type RequestOptions } from 'node:https';
import type { AddressInfo } from 'node:net';
import { connect } from 'node:tls';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { anyFreePort } from './free-port';
import { makeAuthority } from '../../prisma/setup/door/authority';
import { LARGEST_BODY } from '../../prisma/setup/door/forward';
import { makeLeaf } from '../../prisma/setup/door/leaf';
import { openDoor, type Door } from '../../prisma/setup/door/listen';

const NAME = 'kitchen.local';
const SECRET = 'the secret of this run';

/** What the program within has seen; each request is answered with its own headers. */
const seen: { url: string; headers: IncomingHttpHeaders; bytes: number }[] = [];
let streamsOpen = 0;
const inner = createServer((asked, answer) => {
  if (asked.url === '/events') {
    streamsOpen += 1;
    answer.writeHead(200, { 'content-type': 'text/event-stream' });
    answer.write('data: first\n\n');
    answer.on('close', () => (streamsOpen -= 1));
    return;
  }
  let bytes = 0;
  asked.on('data', (chunk: Buffer) => (bytes += chunk.length));
  asked.on('end', () => {
    seen.push({ url: asked.url ?? '', headers: asked.headers, bytes });
    answer.setHeader('set-cookie', ['one=1', 'two=2']);
    answer.writeHead(asked.url === '/gone' ? 404 : 200, { 'x-own': 'kept' });
    answer.end(`heard ${bytes}`);
  });
});

let door: Door;
let ca = '';
let port = 0;
beforeAll(async () => {
  await new Promise<void>((resolve) => inner.listen(0, '127.0.0.1', resolve));
  const authority = await makeAuthority(NAME, new Date());
  ca = authority.certificate.toString('pem');
  const leaf = await makeLeaf(authority, [NAME], new Date());
  const way = { inner: (inner.address() as AddressInfo).port, secret: SECRET, names: [NAME] };
  door = await openDoor(['127.0.0.1'], await anyFreePort(), leaf, way);
  port = door.port;
});
afterAll(async () => {
  await door.close();
  inner.closeAllConnections();
  inner.close();
});

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

const to = (path: string, more: RequestOptions = {}): RequestOptions => ({
  host: '127.0.0.1',
  servername: NAME,
  port,
  path,
  ca,
  agent: false,
  ...more,
  headers: { host: `${NAME}:${port}`, ...more.headers },
});

function ask(path: string, more: RequestOptions = {}, body: Buffer | string = ''): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const asking = request(to(path, more), (answer) => {
      let text = '';
      answer.on('data', (chunk: Buffer) => (text += chunk.toString('utf8')));
      answer.on('end', () =>
        resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text }),
      );
      answer.on('error', reject);
    });
    asking.on('error', reject);
    asking.end(body);
  });
}

/** Sends bytes as they are over TLS, and gives back what comes. */
function raw(text: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect({ host: '127.0.0.1', port, servername: NAME, ca }, () =>
      socket.write(text),
    );
    let heard = '';
    socket.on('data', (chunk) => (heard += chunk.toString('utf8')));
    socket.on('close', () => resolve(heard));
    socket.on('error', reject);
    socket.setTimeout(5000, () => socket.destroy());
  });
}

describe('what is passed on', () => {
  test('is the request as it was, with the secret, and the answer as it is, with its cookies', async () => {
    const answer = await ask(
      '/a?b=%2F..',
      { method: 'POST', headers: { 'x-mine': 'yes' } },
      'body',
    );
    expect(answer.status).toBe(200);
    expect(answer.text).toBe('heard 4');
    expect(answer.headers['set-cookie']).toEqual(['one=1', 'two=2']);
    expect(answer.headers).toMatchObject({ 'x-own': 'kept', 'x-frame-options': 'DENY' });
    expect(seen.at(-1)).toMatchObject({
      url: '/a?b=%2F..',
      headers: {
        host: `${NAME}:${port}`,
        'x-mine': 'yes',
        'x-slate-door': SECRET,
        'x-forwarded-proto': 'https',
      },
    });
    expect((await ask('/gone')).status).toBe(404);
  });

  test('holds no header that a client may not send', async () => {
    const forged = {
      'X-Slate-Door': 'forged',
      'x-slate-other': 'forged',
      'x-forwarded-host': 'evil.example',
      'x-forwarded-for': '127.0.0.1',
      forwarded: 'host=evil.example',
      'x-middleware-subrequest': 'proxy',
      'x-nextjs-data': '1',
      'x-real-ip': '127.0.0.1',
    };
    await ask('/forged', { headers: forged });
    const headers: IncomingHttpHeaders = seen.at(-1)?.headers ?? {};
    expect(headers['x-slate-door']).toBe(SECRET);
    const left = Object.keys(forged).filter((name) => headers[name.toLowerCase()] !== undefined);
    expect(left).toEqual(['X-Slate-Door']);
    expect(JSON.stringify(headers)).not.toContain('evil.example');
  });

  test('is a body of unknown length too, whole', async () => {
    const chunked = { method: 'POST', headers: { 'transfer-encoding': 'chunked' } };
    const answer = await ask('/chunked', chunked, Buffer.alloc(300_000, 1));
    expect(answer.text).toBe('heard 300000');
  });

  test('is a stream of events as each is sent, until the client goes', async () => {
    const first = await new Promise<string>((resolve, reject) => {
      const asking = request(to('/events'), (answer) => {
        answer.once('data', (chunk: Buffer) => {
          resolve(chunk.toString('utf8'));
          asking.destroy();
        });
        answer.on('error', () => undefined);
      });
      asking.on('error', reject);
      asking.end();
    });
    expect(first).toBe('data: first\n\n');
    await expect.poll(() => streamsOpen).toBe(0);
  });
});

describe('what is refused', () => {
  const count = () => seen.length;

  test.each(['evil.example', `${NAME}:1`, NAME, '127.0.0.1', 'localhost:4310'])(
    'Host %s',
    async (host) => {
      const before = count();
      expect((await ask('/', { headers: { host } })).status).toBe(421);
      expect(count()).toBe(before);
    },
  );

  test('two Hosts, and none', async () => {
    const before = count();
    const two = `GET / HTTP/1.1\r\nHost: ${NAME}:${port}\r\nHost: evil.example\r\nConnection: close\r\n\r\n`;
    expect(await raw(two)).toMatch(/^HTTP\/1\.1 4(?:00|21) /);
    expect(await raw('GET / HTTP/1.1\r\nConnection: close\r\n\r\n')).toMatch(
      /^HTTP\/1\.1 4(?:00|21) /,
    );
    expect(count()).toBe(before);
  });

  test.each([
    '/%2e%2e/pantry',
    '/a/../b',
    '//pantry',
    '/a\\b',
    '/a%2fb',
    '/%00',
    '/_next/static/%2E./x',
  ])('the path %s', async (path) => {
    const line = `GET ${path} HTTP/1.1\r\nHost: ${NAME}:${port}\r\nConnection: close\r\n\r\n`;
    const before = count();
    expect(await raw(line)).toMatch(/^HTTP\/1\.1 400 /);
    expect(count()).toBe(before);
  });

  test('a whole address in place of a path, and other methods', async () => {
    const head = `Host: ${NAME}:${port}\r\nConnection: close\r\n\r\n`;
    expect(await raw(`GET http://evil.example/ HTTP/1.1\r\n${head}`)).toMatch(/^HTTP\/1\.1 400 /);
    expect((await ask('/', { method: 'TRACE' })).status).toBe(405);
    expect((await ask('/', { method: 'OPTIONS' })).status).toBe(405);
  });

  test('to speak another protocol', async () => {
    const before = count();
    const upgrade = `GET / HTTP/1.1\r\nHost: ${NAME}:${port}\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n\r\n`;
    expect(await raw(upgrade)).toMatch(/^HTTP\/1\.1 501 /);
    expect(count()).toBe(before);
  });

  test('a body that says it is too large, and one that is without saying so', async () => {
    const said = { method: 'POST', headers: { 'content-length': String(LARGEST_BODY + 1) } };
    const text = await raw(
      `POST / HTTP/1.1\r\nHost: ${NAME}:${port}\r\nContent-Length: ${said.headers['content-length']}\r\n\r\n`,
    );
    expect(text).toMatch(/^HTTP\/1\.1 413 /);
    const before = count();
    const chunked = { method: 'POST', headers: { 'transfer-encoding': 'chunked' } };
    const outcome = await ask('/', chunked, Buffer.alloc(LARGEST_BODY + 1)).then(
      ({ status }) => status,
      () => 'cut off',
    );
    expect([413, 'cut off']).toContain(outcome);
    expect(count()).toBe(before);
  });

  test('plain HTTP', async () => {
    const outcome = await new Promise<string>((resolve) => {
      const asking = askPlainly({ host: '127.0.0.1', port, agent: false }, () =>
        resolve('answered'),
      );
      asking.on('error', () => resolve('cut off'));
      asking.end();
    });
    expect(outcome).toBe('cut off');
  });
});

test('a program that is gone is said to be', async () => {
  const authority = await makeAuthority(NAME, new Date());
  const leaf = await makeLeaf(authority, [NAME], new Date());
  const nobody = await anyFreePort();
  const other = await openDoor(['127.0.0.1'], port, leaf, {
    inner: nobody,
    secret: SECRET,
    names: [NAME],
  });
  // The first door's port is taken, so this one is the next free.
  expect(other.port).toBeGreaterThan(port);
  const asked = { port: other.port, ca: authority.certificate.toString('pem') };
  const answer = await ask('/', { ...asked, headers: { host: `${NAME}:${other.port}` } });
  expect(answer.status).toBe(502);
  expect(answer.text).toContain('Is it still running');
  await other.close();
});
