import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { findBrowser, usualPlaces } from '../browser/find-browser';
import { untar } from '../browser/untar';

describe('a browser', () => {
  test('that is named and not there is an error, not a reason to take another', async () => {
    const before = process.env.BROWSER_PATH;
    process.env.BROWSER_PATH = '/no/such/browser';
    try {
      await expect(findBrowser()).rejects.toThrow('BROWSER_PATH names /no/such/browser');
    } finally {
      if (before === undefined) delete process.env.BROWSER_PATH;
      else process.env.BROWSER_PATH = before;
    }
  });

  test('is looked for where each system keeps Chrome and Edge', () => {
    const env = { NODE_ENV: 'test', PATH: '/usr/bin', ProgramFiles: 'C:/Programs' } as const;
    expect(usualPlaces('linux', env)).toContain('/usr/bin/google-chrome');
    expect(usualPlaces('darwin', env).join()).toContain('/Applications/Microsoft Edge.app');
    expect(usualPlaces('win32', env).join()).toContain('msedge.exe');
  });
});

describe.skipIf(process.platform === 'win32')('a tar archive', () => {
  test('made by the system comes out with the same folders and bytes', () => {
    const folder = mkdtempSync(join(tmpdir(), 'untar-'));
    try {
      const inside = join(folder, 'in');
      mkdirSync(join(inside, 'a', 'é'), { recursive: true });
      const bytes = Buffer.from(Array.from({ length: 1500 }, (_, i) => i % 256));
      writeFileSync(join(inside, 'a', 'é', 'bytes'), bytes);
      writeFileSync(join(inside, 'empty'), '');
      const made = spawnSync('tar', ['--format=ustar', '-C', inside, '-cf', '-', '.']);
      untar(made.stdout, join(folder, 'out'));
      expect(readFileSync(join(folder, 'out', 'a', 'é', 'bytes'))).toEqual(bytes);
      expect(statSync(join(folder, 'out', 'empty')).size).toBe(0);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
