import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import type * as Counting from '../../prisma/setup/counts.cjs';

const { agreeWithExit, lastLine, playwrightCounts, vitestCounts } = createRequire(import.meta.url)(
  '../../prisma/setup/counts.cjs',
) as typeof Counting;

const counts = (passed: number, failed: number, skipped = 0): Counting.Counts => ({
  passed,
  failed,
  skipped,
});

describe("a runner's counts", () => {
  test("are read from Vitest's report; a file that did not load is one failure", () => {
    const report = {
      numPassedTests: 5,
      numFailedTests: 1,
      numPendingTests: 2,
      numTodoTests: 1,
      testResults: [
        { status: 'failed', assertionResults: [{ status: 'failed' }, { status: 'passed' }] },
        { status: 'failed', assertionResults: [] },
        { status: 'passed', assertionResults: [{ status: 'passed' }] },
      ],
    };
    expect(vitestCounts(report)).toEqual(counts(5, 2, 3));
  });

  test("are read from Playwright's report; flaky is failed, and so is an error outside a test", () => {
    const stats = { expected: 7, unexpected: 1, flaky: 2, skipped: 3 };
    expect(playwrightCounts({ stats, errors: [{}] })).toEqual(counts(7, 4, 3));
  });

  test.each([
    [counts(3, 0), 0, counts(3, 0)],
    [counts(3, 1), 1, counts(3, 1)],
    [counts(3, 0), 1, counts(3, 1)],
    [counts(3, 0), null, counts(3, 1)],
    [counts(0, 0), 0, counts(0, 1)],
    [counts(0, 0, 4), 0, counts(0, 1, 4)],
  ])('%o with exit code %s count as %o', (found, code, agreed) => {
    expect(agreeWithExit(found, code)).toEqual(agreed);
  });

  test('are summed in the last line', () => {
    expect(lastLine([counts(1, 0), counts(20, 3, 5), counts(0, 1)])).toBe('21 passed, 4 failed');
  });
});
