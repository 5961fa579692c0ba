import { createRequire } from 'node:module';
import { describe, expect, test, vi } from 'vitest';
import type * as DoorStart from '../../prisma/setup/door.cjs';
import type * as Project from '../../prisma/setup/project.cjs';
import type * as StartUp from '../../prisma/setup/start-up.cjs';

const load = createRequire(import.meta.url);
const { doorEnv, doorKey } = load('../../prisma/setup/door.cjs') as typeof DoorStart;
const { childEnv } = load('../../prisma/setup/project.cjs') as typeof Project;
const { readStartArgs } = load('../../prisma/setup/start-up.cjs') as typeof StartUp;

describe('the start command', () => {
  test('opens the phone’s door only when it is asked to', () => {
    expect(readStartArgs([])).toEqual({ phone: false });
    expect(readStartArgs(['--phone'])).toEqual({ phone: true });
  });
  test.each([['--phones'], ['phone'], ['--phone', '--lan']])('refuses %s', (...args) => {
    expect(() => readStartArgs(args)).toThrow('is not known here');
  });
});

describe('the secret of a run', () => {
  test('is a new one each time', () => {
    const secrets = [1, 2, 3].map(() => doorKey('/nowhere').secret);
    expect(new Set(secrets).size).toBe(3);
    for (const secret of secrets) expect(Buffer.from(secret, 'base64url')).toHaveLength(32);
  });
  test('is never one that the person’s shell has set', () => {
    vi.stubEnv('SLATE_DOOR_SECRET', 'known to others');
    expect(childEnv().SLATE_DOOR_SECRET).toBe('known to others');
    expect(childEnv(doorEnv(undefined)).SLATE_DOOR_SECRET).toBeUndefined();
    const key = doorKey('/nowhere');
    expect(childEnv(doorEnv(key)).SLATE_DOOR_SECRET).toBe(key.secret);
    vi.unstubAllEnvs();
  });
});
