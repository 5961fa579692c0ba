import { BlockList, isIPv6 } from 'node:net';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { admission, type Knock } from '#lib/door/admission';
import { deviceName } from '#lib/door/device-name';
import { allowedHost, isLoopbackHost, isOwnOrigin, localName, urlOf } from '#lib/door/host';
import { homeAddresses, PRIVATE_RANGES, privateRangeOf } from '#lib/door/private-address';
import { sameSecret, sha256Hex } from '#lib/door/secret';
import { toldOf, toldWords } from '#lib/door/told';

const local: Knock = {
  door: false,
  host: '127.0.0.1:4310',
  method: 'GET',
  path: '/',
  origin: null,
  fetchSite: null,
  action: false,
};
const phone: Knock = { ...local, door: true, host: '192.168.1.20:4311' };
const own = 'https://192.168.1.20:4311';

/** 'pass', 'session', or the status of a refusal. */
const answer = (knock: Knock): string | number => {
  const given = admission(knock);
  return given.kind === 'refuse' ? given.status : given.kind;
};

describe('on loopback', () => {
  test.each(['127.0.0.1:4310', 'localhost:5000', '[::1]:4310', 'LOCALHOST', '127.0.0.1'])(
    'Host %s is this machine',
    (host) => expect(answer({ ...local, host })).toBe('pass'),
  );
  test.each([
    'evil.example:4310',
    '127.0.0.1.evil.example:4310',
    'localhost.evil.example',
    '192.168.1.20:4310',
    '127.0.0.1:4310@evil.example',
    '127.0.0.1:4310, evil.example',
    'localhost.:4310',
    '[::1',
    '',
    null,
  ])('Host %s is not', (host) => expect(answer({ ...local, host })).toBe(421));

  test.each([
    ['none', null, null, 'pass'],
    ['its own', 'http://127.0.0.1:4310', 'same-origin', 'pass'],
    ['another site', 'https://evil.example', null, 403],
    ['another port of this machine', 'http://127.0.0.1:9999', 'same-site', 403],
    ['its own by HTTPS', 'https://127.0.0.1:4310', null, 403],
    ['hidden', 'null', null, 403],
    ['none, but said to be of another site', null, 'cross-site', 403],
    ['none, but said to be of another port', null, 'same-site', 403],
    ['none, typed by the person', null, 'none', 'pass'],
  ])('a POST whose Origin is %s', (_, origin, fetchSite, expected) => {
    expect(answer({ ...local, method: 'POST', origin, fetchSite })).toBe(expected);
    expect(answer({ ...local, method: 'DELETE', origin, fetchSite })).toBe(expected);
  });
});

describe('at the door, without a session', () => {
  test.each(['/pair', '/authority.crt', '/icon.svg', '/favicon.ico', '/_next/static/chunks/a.js'])(
    '%s is shown',
    (path) => {
      expect(answer({ ...phone, path })).toBe('pass');
      expect(answer({ ...phone, path, method: 'HEAD' })).toBe('pass');
      expect(answer({ ...phone, path, method: 'POST', origin: own })).toBe('session');
      expect(answer({ ...phone, path, action: true })).toBe('session');
    },
  );
  test.each([
    '/',
    '/pairs',
    '/pair/',
    '/pair/x',
    '/phones',
    '/_next/image',
    '/alive',
    '/icon.svg/x',
  ])('%s is not', (path) => expect(answer({ ...phone, path })).toBe('session'));
  test('a code can be sent, and no server action in its place', () => {
    const send = { ...phone, method: 'POST', path: '/pair/let-in' };
    expect(answer({ ...send, origin: own })).toBe('pass');
    expect(answer(send)).toBe('pass');
    expect(answer({ ...send, action: true })).toBe('session');
    expect(answer({ ...send, origin: 'https://evil.example' })).toBe(403);
    expect(answer({ ...send, origin: 'http://192.168.1.20:4311' })).toBe(403);
    expect(answer({ ...send, method: 'GET' })).toBe('session');
  });
});

describe('names of this machine', () => {
  const names = ['192.168.1.20', 'fd00::2', 'kitchen.local'];
  test.each(['192.168.1.20:4311', '[fd00::2]:4311', 'Kitchen.local:4311'])('%s is one', (host) => {
    expect(allowedHost(host, names, 4311)).toBe(true);
  });
  test.each(['192.168.1.21:4311', '192.168.1.20', '192.168.1.20:4310', 'fd00::2:4311', null])(
    '%s is none',
    (host) => expect(allowedHost(host, names, 4311)).toBe(false),
  );
  test('are written as addresses, and read back as hosts', () => {
    for (const name of names) {
      expect(allowedHost(new URL(urlOf(name, 4311)).host, names, 4311)).toBe(true);
      expect(isOwnOrigin(urlOf(name, 4311), new URL(urlOf(name, 4311)).host, 'https')).toBe(true);
      expect(isLoopbackHost(new URL(urlOf(name, 4311)).host)).toBe(false);
    }
  });
  test.each([
    ['Anna-Mac.fritz.box', 'anna-mac.local'],
    ['kitchen', 'kitchen.local'],
    ['Ännä’s PC', 'nnspc.local'],
    ['localhost', null],
    ['---', null],
  ])('%s is found as %s', (hostname, found) => expect(localName(hostname)).toBe(found));
});

describe('addresses of a home network', () => {
  const known = new BlockList();
  for (const { address, bits } of PRIVATE_RANGES) {
    known.addSubnet(address, bits, isIPv6(address) ? 'ipv6' : 'ipv4');
  }
  const check = (address: string) => {
    expect(privateRangeOf(address) >= 0).toBe(
      known.check(address, isIPv6(address) ? 'ipv6' : 'ipv4'),
    );
  };

  test('are those of the ranges, as Node’s own list of networks has it', () => {
    fc.assert(fc.property(fc.ipV4(), check));
    fc.assert(
      fc.property(fc.ipV6(), (address) =>
        check(new URL(`http://[${address}]/`).hostname.slice(1, -1)),
      ),
    );
    // First and last of each range, and their neighbours outside.
    for (const inside of [
      '10.0.0.0',
      '10.255.255.255',
      '172.16.0.0',
      '172.31.255.255',
      '192.168.0.0',
      '192.168.255.255',
      'fc00::1',
      'fdff:ffff::1',
    ]) {
      expect(privateRangeOf(inside)).toBeGreaterThanOrEqual(0);
      check(inside);
    }
    for (const outside of [
      '9.255.255.255',
      '11.0.0.0',
      '172.15.255.255',
      '172.32.0.0',
      '192.167.255.255',
      '192.169.0.0',
      '127.0.0.1',
      '169.254.1.1',
      '192.0.2.2',
      'fe80::1',
      'fb00::1',
      '2001:db8::1',
      '::1',
    ]) {
      expect(privateRangeOf(outside)).toBe(-1);
      check(outside);
    }
  });

  test('leave out what is not the home’s, and begin with the likeliest', () => {
    const on = (interfaceName: string, address: string, internal = false) => ({
      interfaceName,
      address,
      internal,
    });
    const all = [
      on('lo', '127.0.0.1', true),
      on('docker0', '172.17.0.1'),
      on('br-0a1b', '172.18.0.1'),
      on('utun3', '10.8.0.2'),
      on('vEthernet (WSL)', '172.20.0.1'),
      on('eth0', '203.0.113.7'),
      on('eth0', 'fd00::2'),
      on('wlan0', '10.0.0.4'),
      on('Wi-Fi', '192.168.1.20'),
      on('br0', '192.168.1.3'),
      on('wlan0', 'fe80::1'),
    ];
    expect(homeAddresses(all)).toEqual(['192.168.1.20', '192.168.1.3', '10.0.0.4', 'fd00::2']);
    expect(homeAddresses(all.slice(0, 6))).toEqual([]);
  });
});

describe('secrets', () => {
  test('are the same or not, whatever their length; an empty one never is', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (a, b) => {
        expect(sameSecret(a, b)).toBe(a === b && a !== '');
      }),
    );
    fc.assert(
      fc.property(fc.string({ minLength: 1 }), (a) => {
        expect(sameSecret(a, a)).toBe(true);
      }),
    );
    expect(sameSecret('', '')).toBe(false);
  });
  test('are hashed by SHA-256: the example "abc" of FIPS 180-4 (from memory)', () => {
    expect(sha256Hex('abc')).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
  });
});

describe('what is told to a phone', () => {
  test('says how many tries are left', () => {
    const words = (left: number) =>
      toldWords(toldOf({ kind: 'wrong', left }) ?? { told: '', left: '' });
    expect(words(4)).toBe('This is not the code. 4 tries are left.');
    expect(words(1)).toBe('This is not the code. One try is left.');
    expect(toldOf({ kind: 'right' })).toBeNull();
    for (const why of ['none', 'expired', 'void', 'used'] as const) {
      expect(toldWords(toldOf({ kind: 'closed', why }) ?? { told: '', left: '' })).toMatch(/\.$/);
    }
  });
  test.each([
    ['anything', ''],
    ['constructor', ''],
    ['wrong', '5'],
    ['wrong', '-1'],
    ['wrong', 'many'],
    ['wrong', ''],
  ])('is no word of an address that somebody else made: %s %s', (told, left) => {
    expect(toldWords({ told, left })).toBeNull();
  });
  test.each([
    ['Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) Safari/604.1', 'iPhone'],
    ['Mozilla/5.0 (Linux; Android 15; K) Chrome/140.0 Mobile Safari/537.36', 'Android phone'],
    ['Mozilla/5.0 (Linux; Android 15; K) Chrome/140.0 Safari/537.36', 'Android tablet'],
    ['curl/8', ''],
  ])('%s begins as “%s”', (agent, name) => expect(deviceName(agent)).toBe(name));
});
