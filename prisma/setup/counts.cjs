'use strict';

/** @typedef {{ passed: number, failed: number, skipped: number }} Counts */

/**
 * The counts of Vitest's JSON report. A file that could not be loaded has no tests and counts as
 * one failure.
 * @param {any} report
 * @returns {Counts}
 */
function vitestCounts(report) {
  const unloaded = (report.testResults ?? []).filter(
    (/** @type {any} */ file) =>
      file.status === 'failed' &&
      !(file.assertionResults ?? []).some((/** @type {any} */ test) => test.status === 'failed'),
  );
  return {
    passed: report.numPassedTests ?? 0,
    failed: (report.numFailedTests ?? 0) + unloaded.length,
    skipped: (report.numPendingTests ?? 0) + (report.numTodoTests ?? 0),
  };
}

/**
 * The counts of Playwright's JSON report. An error outside any test counts as one failure each; a
 * test that passed only on a second try counts as failed.
 * @param {any} report
 * @returns {Counts}
 */
function playwrightCounts(report) {
  const stats = report.stats ?? {};
  return {
    passed: stats.expected ?? 0,
    failed: (stats.unexpected ?? 0) + (stats.flaky ?? 0) + (report.errors ?? []).length,
    skipped: stats.skipped ?? 0,
  };
}

/**
 * A runner's counts, made to agree with how it ended: a runner that failed without naming a
 * failed test, or that ran nothing at all, is one failure.
 * @param {Counts} counts
 * @param {number | null} code
 * @returns {Counts}
 */
function agreeWithExit(counts, code) {
  const nothing = counts.passed + counts.failed === 0;
  if ((code === 0 || counts.failed > 0) && !nothing) return counts;
  return { ...counts, failed: counts.failed + 1 };
}

/**
 * The last line of a test run: `N passed, N failed`.
 * @param {readonly Counts[]} all
 */
function lastLine(all) {
  const sum = (/** @type {'passed' | 'failed'} */ key) => all.reduce((n, one) => n + one[key], 0);
  return `${sum('passed')} passed, ${sum('failed')} failed`;
}

module.exports = { vitestCounts, playwrightCounts, agreeWithExit, lastLine };
