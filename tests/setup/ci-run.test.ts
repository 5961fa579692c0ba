import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const script = fileURLToPath(new URL('../../.ci/run', import.meta.url));

/** Runs the script with an npm that prints what it is told and ends with a code. */
function runWith(prints: string, code: number): { readonly last: string; readonly code: number } {
  const folder = mkdtempSync(join(tmpdir(), 'ci-run-'));
  try {
    const npm = `#!/bin/sh\n[ "$1" = test ] || exit 9\nprintf '${prints}'\nexit ${code}\n`;
    writeFileSync(join(folder, 'npm'), npm);
    chmodSync(join(folder, 'npm'), 0o755);
    const env = { ...process.env, PATH: `${folder}${delimiter}${process.env.PATH ?? ''}` };
    const ended = spawnSync('bash', [script], { env, encoding: 'utf8' });
    return { last: ended.stdout.trimEnd().split('\n').at(-1) ?? '', code: ended.status ?? -1 };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

describe.skipIf(process.platform === 'win32')('.ci/run', () => {
  test.each([
    ['all passed', 'x\\n7 passed, 0 failed\\n', 0, '7 passed, 0 failed', 0],
    ['some failed', '5 passed, 2 failed\\n', 1, '5 passed, 2 failed', 1],
    ['npm adds lines', '5 passed, 2 failed\\nnpm error\\n', 1, '5 passed, 2 failed', 1],
    [
      'counts of a runner before',
      '1 passed, 9 failed\\n5 passed, 0 failed\\n',
      0,
      '5 passed, 0 failed',
      0,
    ],
    ['no counts at all', 'it broke\\n', 0, '0 passed, 1 failed', 1],
  ])('%s: the counts come last and the exit code tells', (_, prints, code, last, exit) => {
    expect(runWith(prints, code)).toEqual({ last, code: exit });
  });
});
