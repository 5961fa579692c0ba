import { createRequire } from 'node:module';
import { createServer, type Server } from 'node:http';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { databaseFile, shownDatabase as shownByStore } from '#lib/store/database-file';
import type * as Build from '../../prisma/setup/build.cjs';
import type * as Failure from '../../prisma/setup/failure.cjs';
import type * as Install from '../../prisma/setup/install.cjs';
import type * as NodeVersion from '../../prisma/setup/node-version.cjs';
import type * as Project from '../../prisma/setup/project.cjs';
import type * as Serve from '../../prisma/setup/server.cjs';
import type * as StartUp from '../../prisma/setup/start-up.cjs';
import type * as TestRun from '../../prisma/setup/test-run.cjs';

const load = createRequire(import.meta.url);
const { crashed } = load('../../prisma/setup/build.cjs') as typeof Build;
const { SetupFailure, describeFailure } = load('../../prisma/setup/failure.cjs') as typeof Failure;
const { covers, explainInstall } = load('../../prisma/setup/install.cjs') as typeof Install;
const { tooOld } = load('../../prisma/setup/node-version.cjs') as typeof NodeVersion;
const { databasePath, instanceOf, root, shownDatabase } = load(
  '../../prisma/setup/project.cjs',
) as typeof Project;
const { anyPort, choosePort } = load('../../prisma/setup/server.cjs') as typeof Serve;
const { wantedPort } = load('../../prisma/setup/start-up.cjs') as typeof StartUp;
const { readArgs } = load('../../prisma/setup/test-run.cjs') as typeof TestRun;

describe('before anything else', () => {
  test.each(['18.20.4', '20.18.3', '16.0.0', '0.12.18'])('Node %s is too old, and told so', (v) => {
    expect(tooOld(v)).toMatch(new RegExp(`needs Node 20.19 or newer; this is ${v}[^]*nodejs.org`));
  });
  test.each(['20.19.0', '20.20.2', '22.0.0', '26.1.0'])('Node %s will do', (version) => {
    expect(tooOld(version)).toBeNull();
  });
});

describe('installed packages', () => {
  const locked = {
    '': {},
    'node_modules/a': { version: '1.0.0' },
    'node_modules/b': { version: '2.0.0', optional: true },
  };
  test('stand for the lock file when each that is not optional has its version', () => {
    expect(covers(locked, { 'node_modules/a': { version: '1.0.0' } })).toBe(true);
  });
  test.each([
    ['another version', { 'node_modules/a': { version: '1.0.1' } }],
    ['a package missing', { 'node_modules/b': { version: '2.0.0' } }],
  ])('do not with %s', (_, present) => {
    expect(covers(locked, present)).toBe(false);
  });
});

describe('a failed install names its cause and the ways out', () => {
  test.each([
    ['npm error gyp ERR! find Python', 'better-sqlite3 does not work', 3],
    ['npm error code ENOTFOUND', 'registry does not answer', 3],
    ['npm error code ENOSPC', 'disk is full', 1],
    ['npm error code EACCES', 'cannot be written', 2],
    ['npm error code ESOMETHING', 'could not install', 1],
  ])('%s', (output, message, ways) => {
    const explained = explainInstall(output);
    expect(explained.message).toContain(message);
    expect(explained.ways).toHaveLength(ways);
  });

  test('several ways are numbered, one is a sentence', () => {
    const one = describeFailure(new SetupFailure('It broke.', ['Mend it.']));
    expect(one).toContain('It broke.\n\n  What to do: Mend it.');
    const two = describeFailure(
      new SetupFailure('It broke.', ['Mend it.', 'Leave it.'], '    log'),
    );
    expect(two).toContain('    log');
    expect(two).toContain('  1. Mend it.\n  2. Leave it.');
  });
});

describe('a failed build', () => {
  test.each([
    ["thread 'tokio' panicked at crates/x.rs:1", null, true],
    ['TurbopackInternalError: cell not found', null, true],
    ['', 'SIGSEGV', true],
    ['', 'SIGKILL', false],
    ["Module not found: Can't resolve './x'", null, false],
  ] as const)('%s %s: a second try is worth it: %s', (output, signal, again) => {
    expect(crashed(output, signal)).toBe(again);
  });
});

describe('the database', () => {
  test('is resolved from the project, not from the working folder', () => {
    const env = (value?: string): NodeJS.ProcessEnv => ({
      NODE_ENV: 'test',
      ...(value === undefined ? {} : { SLATE_DATABASE: value }),
    });
    expect(databasePath(env())).toBe(join(root, '.data', 'slate.db'));
    expect(databasePath(env(''))).toBe(databasePath(env()));
    expect(databasePath(env('other.db'))).toBe(join(root, 'other.db'));
  });

  test.each([
    '.data/postgres.db',
    'postgresql://ann:secret@db:5433/slate?sslmode=require',
    'Postgres://db/slate',
    'postgres://ann:secret@db:port/slate',
  ])('%s is taken and shown as the store does', (named) => {
    const path = databasePath({ NODE_ENV: 'test', SLATE_DATABASE: named });
    expect(path).toBe(databaseFile({ SLATE_DATABASE: named }));
    expect(shownDatabase(path)).toBe(shownByStore(path));
    expect(shownDatabase(path)).not.toContain('secret');
  });
});

describe('the port', () => {
  test('is 4310, or PORT, or refused', () => {
    expect(wantedPort(undefined)).toBe(4310);
    expect(wantedPort('5310')).toBe(5310);
    for (const wrong of ['abc', '0', '65536', '80.5']) {
      expect(() => wantedPort(wrong)).toThrow('which is no port');
    }
  });

  const listen = (port: number, body: string): Promise<Server> =>
    new Promise((resolve) => {
      const server = createServer((_, answer) => answer.end(body));
      server.listen(port, '127.0.0.1', () => resolve(server));
    });
  const alive = (instance: string): string =>
    JSON.stringify({ name: 'scale-and-slate', version: '1', instance, build: 'b' });

  test.each([
    ['nothing listens: it is taken', null, 0, false],
    ['a stranger listens: the next one', 'hello', 1, false],
    ['another clone of ours listens: the next one', alive('other'), 1, false],
    ['ours listens: it is found', alive(instanceOf('here')), 0, true],
  ])('%s', async (_, body, further, ours) => {
    const port = await anyPort();
    const server = body === null ? null : await listen(port, body);
    try {
      const chosen = await choosePort(port, instanceOf('here'));
      expect(chosen.port).toBeGreaterThanOrEqual(port + further);
      expect(chosen.passed.length > 0).toBe(further > 0);
      expect(chosen.alive !== null).toBe(ours);
    } finally {
      server?.closeAllConnections();
      server?.close();
    }
  });
});

describe('the parts of a test run', () => {
  test('are those named first, in their own order; the rest goes to the runner', () => {
    expect(readArgs([]).parts).toEqual(['types', 'lint', 'format', 'unit', 'build', 'browser']);
    expect(readArgs(['unit', 'tests/foods'])).toEqual({ parts: ['unit'], rest: ['tests/foods'] });
    expect(readArgs(['browser', 'build'])).toEqual({ parts: ['build', 'browser'], rest: [] });
  });
});
