import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'plan-'));
  writeFileSync(path.join(folder, 'two.txt'), '2 2\n0 3 1 2\n1 2 0 4\n');
  writeFileSync(path.join(folder, 'bad.txt'), '2 2\n0 3 1 x\n1 2 0 4\n');
});
afterAll(() => rmSync(folder, { recursive: true }));

function plan(...words: string[]): Promise<{ code: unknown; out: string; errors: string }> {
  const given = ['--import', 'tsx', path.join(root, 'lib/work/plan-cli.ts'), ...words];
  return new Promise((resolve) => {
    execFile(process.execPath, given, { cwd: root }, (error, out, errors) => {
      resolve({ code: error === null ? 0 : error.code, out, errors });
    });
  });
}

describe('the command plan', () => {
  // Worked by hand: machine 0 is needed for 3 + 4, and nothing stands in the way of 3, then 4.
  test('one line a file; --plan writes the schedule', async () => {
    const { code, out } = await plan(path.join(folder, 'two.txt'), '--plan');
    expect(code).toBe(0);
    expect(out).toMatch(/^two\.txt proven 7 7 \d+ \d+\n/);
    expect(out).toContain('  job 2 on machine 0: 3 to 7\n');
  });

  test('two threads prove the same', async () => {
    const { out } = await plan(path.join(folder, 'two.txt'), '--threads', '2', '--limit', '60');
    expect(out).toMatch(/^two\.txt proven 7 7 /);
  });

  test('a broken file is told with line and expectation, the others still solved', async () => {
    const both = [path.join(folder, 'bad.txt'), path.join(folder, 'two.txt')];
    const { code, out, errors } = await plan(...both);
    expect(code).toBe(1);
    expect(errors).toContain('bad.txt: Line 2: expected time, a whole number from 0');
    expect(out).toMatch(/^two\.txt proven/);
  });

  test('words that are off', async () => {
    expect((await plan()).code).toBe(2);
    const { code, errors } = await plan('x.txt', '--threads', '3');
    expect([code, errors]).toEqual([2, '--threads takes 1 or 2, not "3"\n']);
  });
});
