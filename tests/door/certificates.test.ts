import { X509Certificate } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { createServer } from 'node:https';
import type { AddressInfo, LookupFunction } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  fingerprint,
  keptAuthority,
  makeAuthority,
  type Authority,
} from '../../prisma/setup/door/authority';
import { LEAF_DAYS, makeLeaf } from '../../prisma/setup/door/leaf';

const NOW = new Date();
const DAY_MS = 86_400_000;
const days = (certificate: X509Certificate) =>
  (Date.parse(certificate.validTo) - Date.parse(certificate.validFrom)) / DAY_MS;

let authority: Authority;
let pem = '';
beforeAll(async () => {
  authority = await makeAuthority('kitchen.local', NOW);
  pem = authority.certificate.toString('pem');
});

/** Connects to a server with these names as a client that trusts the authority alone: 'ok', or OpenSSL's reason. */
async function connect(names: readonly string[], asName: string): Promise<string> {
  const server = createServer(await makeLeaf(authority, names, NOW), (_, answer) => answer.end());
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  const lookup: LookupFunction = (_, options, done) => {
    if (options.all) done(null, [{ address: '127.0.0.1', family: 4 }]);
    else done(null, '127.0.0.1', 4);
  };
  const outcome = await new Promise<string>((resolve) => {
    const ask = request({ host: asName, port, ca: pem, lookup, agent: false }, (answer) => {
      answer.resume();
      resolve('ok');
    });
    ask.on('error', (error: NodeJS.ErrnoException) => resolve(`${error.code}: ${error.message}`));
    ask.end();
  });
  server.closeAllConnections();
  server.close();
  return outcome;
}

describe('the authority', () => {
  test('is one, for ten years at most, and signs nothing that signs', () => {
    const read = new X509Certificate(pem);
    expect(read.ca).toBe(true);
    expect(read.verify(read.publicKey)).toBe(true);
    expect(days(read)).toBeLessThanOrEqual(3652);
    expect(days(read)).toBeGreaterThan(3000);
    expect(read.publicKey.asymmetricKeyDetails?.namedCurve).toBe('prime256v1');
  });

  test('has the fingerprint that others compute', async () => {
    expect(await fingerprint(authority.certificate)).toBe(new X509Certificate(pem).fingerprint256);
  });

  test('vouches for a name of the home network', async () => {
    expect(await connect(['kitchen.local'], 'kitchen.local')).toBe('ok');
    expect(await connect(['192.168.1.20', 'kitchen.local'], 'kitchen.local')).toBe('ok');
  });

  test.each([
    ['a site of the internet', ['bank.example'], 'bank.example'],
    ['such a site beside a name of ours', ['kitchen.local', 'bank.example'], 'kitchen.local'],
    [
      'an address of the internet beside a name of ours',
      ['203.0.113.7', 'kitchen.local'],
      'kitchen.local',
    ],
    ['an IPv6 address of the internet', ['2001:db8::1', 'kitchen.local'], 'kitchen.local'],
  ])('cannot vouch for %s: OpenSSL refuses', async (_, names, asName) => {
    expect(await connect(names, asName)).toMatch(/permitted subtree violation/);
  });

  test('vouches for no name that is not in the certificate', async () => {
    expect(await connect(['kitchen.local'], 'other.local')).toMatch(
      /^ERR_TLS_CERT_ALTNAME_INVALID/,
    );
  });
});

describe('a certificate of the door', () => {
  test('is of the authority, for these names alone, and for less than the limits', async () => {
    const { cert } = await makeLeaf(authority, ['192.168.1.20', 'fd00::2', 'kitchen.local'], NOW);
    const read = new X509Certificate(cert);
    expect(read.checkIssued(new X509Certificate(pem))).toBe(true);
    expect(read.verify(new X509Certificate(pem).publicKey)).toBe(true);
    expect(read.ca).toBe(false);
    expect(read.checkIP('192.168.1.20')).toBe('192.168.1.20');
    expect(read.checkIP('fd00::2')).toBe('fd00::2');
    expect(read.checkHost('kitchen.local')).toBe('kitchen.local');
    expect(read.checkIP('192.168.1.21')).toBeUndefined();
    // CA/Browser Forum, Baseline Requirements 6.3.2 (from memory): 397 days; 200 from March 2026 on.
    expect(days(read)).toBe(LEAF_DAYS);
    expect(days(read)).toBeLessThan(200);
    expect(Date.parse(read.validFrom)).toBeLessThan(NOW.getTime());
  });

  test('has a serial number and a key of its own each time', async () => {
    const two = await Promise.all([1, 2].map(() => makeLeaf(authority, ['kitchen.local'], NOW)));
    const read = two.map(({ cert }) => new X509Certificate(cert).serialNumber);
    expect(new Set(read).size).toBe(2);
    expect(new Set(two.map(({ key }) => key)).size).toBe(2);
  });
});

describe('the authority in its folder', () => {
  const folder = join(mkdtempSync(join(tmpdir(), 'slate-authority-')), 'phone');
  afterAll(() => rmSync(join(folder, '..'), { recursive: true }));
  const keep = (now = NOW) => keptAuthority(folder, 'kitchen.local', now);
  const print = async (now = NOW) => fingerprint((await keep(now)).authority.certificate);

  test('is made once, for its owner alone, and kept', async () => {
    expect((await keep()).made).toBe(true);
    const first = await print();
    expect((await keep()).made).toBe(false);
    expect(await print()).toBe(first);
    if (process.platform === 'win32') return;
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    for (const name of ['authority.crt', 'authority.key']) {
      expect(statSync(join(folder, name)).mode & 0o777).toBe(0o600);
    }
  });

  test('is made anew when its time is nearly over, and not before', async () => {
    const first = await print();
    expect(await print(new Date(NOW.getTime() + 3000 * DAY_MS))).toBe(first);
    const renewed = await print(new Date(NOW.getTime() + 3300 * DAY_MS));
    expect(renewed).not.toBe(first);
  });

  test.each(['authority.key', 'authority.crt'])(
    'is made anew when %s cannot be read',
    async (name) => {
      const before = (await keep()).authority;
      writeFileSync(join(folder, name), 'spoilt');
      const { authority: after, made } = await keep();
      expect(made).toBe(true);
      expect(await fingerprint(after.certificate)).not.toBe(await fingerprint(before.certificate));
    },
  );

  test('is made anew when key and certificate are no pair', async () => {
    await keep();
    writeFileSync(join(folder, 'authority.crt'), pem);
    expect((await keep()).made).toBe(true);
    expect(readFileSync(join(folder, 'authority.crt'), 'utf8')).not.toContain(pem);
  });
});
