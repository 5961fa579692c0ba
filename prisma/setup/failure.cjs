'use strict';

/** A step that failed for a reason a person can mend: what happened, and what to do about it. */
class SetupFailure extends Error {
  /**
   * @param {string} message
   * @param {readonly string[]} ways each a full sentence; several are alternatives
   * @param {string} [detail] the failing program's own words
   */
  constructor(message, ways, detail = '') {
    super(message);
    this.ways = ways;
    this.detail = detail;
  }
}

/**
 * The last lines of a program's output, without empty ones.
 * @param {string} output
 * @param {number} [count]
 */
function lastLines(output, count = 15) {
  return output
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '')
    .slice(-count)
    .map((line) => `    ${line}`)
    .join('\n');
}

/**
 * The failure as printed.
 * @param {unknown} error
 * @returns {string}
 */
function describeFailure(error) {
  if (!(error instanceof SetupFailure)) {
    const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return `\nThis should not happen: ${text}\n`;
  }
  const detail = error.detail === '' ? '' : `\n  Its own words, shortened:\n${error.detail}\n`;
  const [only, ...more] = error.ways;
  const ways =
    more.length === 0
      ? `  What to do: ${only ?? ''}`
      : `  What to do, one of:\n${error.ways.map((way, i) => `  ${i + 1}. ${way}`).join('\n')}`;
  return `\n${error.message}\n${detail}\n${ways}\n`;
}

module.exports = { SetupFailure, lastLines, describeFailure };
