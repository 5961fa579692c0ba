'use strict';
const fs = require('node:fs');
const os = require('node:os');
const path = require('node:path');
const { cache, inRoot, nextBin, childEnv } = require('./project.cjs');
const { describeFailure } = require('./failure.cjs');
const { keepFile } = require('./keep-file.cjs');
const { progress } = require('./progress.cjs');
const { leaveOnSignals, runNode } = require('./run.cjs');
const { takeTurn, giveTurn } = require('./turn.cjs');
const { install } = require('./install.cjs');
const { generateClient } = require('./client.cjs');
const { prepareDatabase } = require('./database.cjs');
const { build } = require('./build.cjs');
const { vitestCounts, playwrightCounts, agreeWithExit, lastLine } = require('./counts.cjs');

/** @typedef {import('./counts.cjs').Counts} Counts */
/** @typedef {{ folder: string, rest: readonly string[] }} Context */

const BUILD = '.next-test';
const PARTS = /** @type {const} */ (['types', 'lint', 'format', 'unit', 'build', 'browser']);
/** @typedef {typeof PARTS[number]} Part */

const PASSED = { passed: 1, failed: 0, skipped: 0 };
const FAILED = { passed: 0, failed: 1, skipped: 0 };
const bin = (/** @type {string[]} */ ...parts) => inRoot('node_modules', ...parts);

/**
 * A check that passes or fails as one.
 * @param {string} label
 * @param {readonly (readonly string[])[]} commands
 * @param {string} mend
 * @returns {Promise<Counts>}
 */
async function check(label, commands, mend) {
  const line = progress(label);
  for (const args of commands) {
    const ended = await runNode(args, { env: childEnv({ SLATE_BUILD_DIR: BUILD }) });
    if (ended.code === 0) continue;
    line.failed();
    process.stdout.write(`${ended.output}\n  What to do: ${mend}\n`);
    return FAILED;
  }
  line.done();
  return PASSED;
}

/**
 * A test runner that writes a JSON report.
 * @param {readonly string[]} args
 * @param {string} report
 * @param {Record<string, string>} env
 * @param {(report: any) => Counts} read
 * @returns {Promise<Counts>}
 */
async function runner(args, report, env, read) {
  fs.rmSync(report, { force: true });
  const ended = await runNode(args, { env: childEnv(env), show: true });
  if (!fs.existsSync(report)) return FAILED;
  return agreeWithExit(read(JSON.parse(fs.readFileSync(report, 'utf8'))), ended.code);
}

/** @type {Record<Part, (context: Context) => Promise<Counts>>} */
const run = {
  types: async () => {
    const restore = keepFile(inRoot('next-env.d.ts'));
    const typegen = [nextBin, 'typegen'];
    const tsc = [bin('typescript', 'bin', 'tsc'), '--project', 'tests/check.tsconfig.json'];
    const counts = await check('checking types', [typegen, tsc], 'mend the lines above.');
    restore();
    return counts;
  },
  lint: () => {
    const args = [bin('eslint', 'bin', 'eslint.js'), '--config', 'tests/eslint.config.mjs'];
    return check('linting', [[...args, '--max-warnings', '0', '.']], 'mend the lines above.');
  },
  format: () => {
    const args = [bin('prettier', 'bin', 'prettier.cjs'), '--check', '--log-level', 'warn', '.'];
    return check('checking the format', [args], 'npm run format');
  },
  unit: ({ folder, rest }) => {
    const report = path.join(folder, 'vitest.json');
    const args = [bin('vitest', 'vitest.mjs'), 'run', '--config', 'tests/vitest.config.ts'];
    const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
    const env = { SLATE_DATABASE: path.join(folder, 'unit.db') };
    return runner([...args, ...reporters, ...rest], report, env, vitestCounts);
  },
  build: async () => {
    const done = await build(BUILD);
    if (done === 'unchanged') console.log('✓ building: the sources are as last time');
    return PASSED;
  },
  browser: async ({ folder, rest }) => {
    const database = path.join(folder, 'template.db');
    await prepareDatabase(database);
    const report = path.join(folder, 'playwright.json');
    const args = [bin('@playwright', 'test', 'cli.js'), 'test'];
    const config = ['--config', 'tests/browser/playwright.config.ts'];
    const env = {
      SLATE_TEST_DATABASE: database,
      SLATE_TEST_BUILD: BUILD,
      PLAYWRIGHT_JSON_OUTPUT_FILE: report,
    };
    return runner([...args, ...config, ...rest], report, env, playwrightCounts);
  },
};

/**
 * The parts named first on the command line, and what is left for their runner. None named: all.
 * Example: ['unit', 'tests/foods'] → parts ['unit'], rest ['tests/foods'].
 * @param {readonly string[]} args
 * @returns {{ parts: readonly Part[], rest: readonly string[] }}
 */
function readArgs(args) {
  const known = /** @type {readonly string[]} */ (PARTS);
  const end = args.findIndex((arg) => !known.includes(arg));
  const named = end < 0 ? args : args.slice(0, end);
  const rest = end < 0 ? [] : args.slice(end);
  return { parts: named.length === 0 ? PARTS : PARTS.filter((p) => named.includes(p)), rest };
}

/**
 * Everything that `npm test` does, each part whether or not an earlier one failed.
 * @param {readonly string[]} args
 * @param {string} folder a temporary one
 * @returns {Promise<{ part: string, counts: Counts, seconds: number }[]>}
 */
async function test(args, folder) {
  const { parts, rest } = readArgs(args);
  const results = [];
  let built = true;
  for (const part of /** @type {const} */ (['set-up', ...parts])) {
    const began = Date.now();
    /** @type {Counts} */
    let counts = FAILED;
    try {
      if (part === 'set-up') {
        await takeTurn();
        await install();
        await generateClient();
        giveTurn();
        counts = { passed: 0, failed: 0, skipped: 0 };
      } else {
        if (part === 'browser' && !parts.includes('build')) await build(BUILD);
        if (part !== 'browser' || built) counts = await run[part]({ folder, rest });
        else console.log('✗ browser tests: there is no build to test');
      }
    } catch (error) {
      console.log(describeFailure(error));
    }
    if (part === 'build') built = counts.failed === 0;
    results.push({ part, counts, seconds: (Date.now() - began) / 1000 });
    if (part === 'set-up' && counts.failed > 0) break;
  }
  return results;
}

/** @param {readonly string[]} args */
function main(args) {
  fs.mkdirSync(cache, { recursive: true });
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'slate-test-'));
  const clear = () => {
    giveTurn();
    fs.rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  };
  leaveOnSignals(() => {
    clear();
    return undefined;
  });
  void test(args, folder).then((results) => {
    clear();
    console.log(
      '\nPart      passed  failed  skipped   seconds   (types, lint, format, build: one each)',
    );
    for (const { part, counts, seconds } of results) {
      const cells = [counts.passed, counts.failed, counts.skipped].map((n) =>
        String(n).padStart(8),
      );
      console.log(`${part.padEnd(8)}${cells.join('')}${seconds.toFixed(1).padStart(10)}`);
    }
    const all = results.map((result) => result.counts);
    process.exitCode = all.some((counts) => counts.failed > 0) ? 1 : 0;
    console.log(`\n${lastLine(all)}`);
  });
}

module.exports = { main, readArgs };
