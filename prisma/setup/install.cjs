'use strict';
const fs = require('node:fs');
const path = require('node:path');
const { root, cache, inRoot, childEnv } = require('./project.cjs');
const { SetupFailure, lastLines } = require('./failure.cjs');
const { stampOf, readStamp, unlessStamped } = require('./stamps.cjs');
const { progress } = require('./progress.cjs');
const { runNode } = require('./run.cjs');
const { noteChild } = require('./turn.cjs');

/** @typedef {{ version?: string, optional?: boolean, peer?: boolean, link?: boolean }} LockEntry */

/**
 * Whether npm's own record of an installed folder covers the lock file: every package that is not
 * optional, in the locked version. True for a folder installed by hand, false after a change of the
 * lock file or an install without the development packages.
 * @param {Record<string, LockEntry>} locked `packages` of package-lock.json
 * @param {Record<string, LockEntry>} present `packages` of node_modules/.package-lock.json
 */
function covers(locked, present) {
  return Object.entries(locked).every(([name, entry]) => {
    if (name === '' || entry.optional === true || entry.link === true) return true;
    return present[name]?.version === entry.version;
  });
}

/**
 * What a failed install means.
 * @param {string} output npm's own words
 * @returns {{ message: string, ways: string[] }}
 */
function explainInstall(output) {
  if (/gyp ERR|node-gyp|prebuild-install|better-sqlite3/.test(output)) return noDatabaseModule();
  if (/ENOTFOUND|ETIMEDOUT|EAI_AGAIN|ECONNREFUSED|ECONNRESET|network/i.test(output)) {
    return {
      message: 'The packages could not be fetched: the npm registry does not answer.',
      ways: [
        'Check the connection and give the same command again; what was fetched is kept.',
        'Behind a proxy: npm config set proxy http://host:port (and https-proxy), then again.',
        'With a registry of your own: npm config set registry https://your-registry, then again.',
      ],
    };
  }
  if (/ENOSPC/.test(output)) {
    return {
      message: 'The disk is full: the packages need about 1 GB.',
      ways: ['Free some space and give the same command again.'],
    };
  }
  if (/EACCES|EPERM|EROFS/.test(output)) {
    return {
      message: `The folder ${root} cannot be written, or a file in it is held by another program.`,
      ways: [
        'Close editors, terminals and virus scanners that use the folder, and try again.',
        'Move the project to a folder that is yours, for example in your home folder.',
      ],
    };
  }
  return {
    message: 'npm could not install the packages.',
    ways: ['Read the lines above, mend their cause, and give the same command again.'],
  };
}

function noDatabaseModule() {
  return {
    message: 'The database module better-sqlite3 does not work on this machine yet.',
    ways: [
      'Use a current long-term Node (20, 22 or 24) from https://nodejs.org, for which it comes ready-made.',
      'Let it be compiled: Debian/Ubuntu `sudo apt-get install python3 make g++`, macOS `xcode-select --install`, Windows: Visual Studio Build Tools with "Desktop development with C++".',
      'Let npm fetch the ready-made file: allow https://github.com through the firewall or proxy.',
    ],
  };
}

/** The npm that belongs to this Node, as a file for Node to run. @returns {string} */
function npmCli() {
  const given = process.env.npm_execpath;
  if (given !== undefined && /npm-cli\.c?js$/.test(given) && fs.existsSync(given)) return given;
  const beside = path.dirname(fs.realpathSync(process.execPath));
  const tail = ['node_modules', 'npm', 'bin', 'npm-cli.js'];
  const places = [
    path.join(beside, '..', 'lib', ...tail),
    path.join(beside, ...tail),
    path.join('/usr/share/nodejs/npm/bin/npm-cli.js'),
    ...(process.env.PATH ?? '').split(path.delimiter).map((dir) => {
      const link = path.join(dir, 'npm');
      const real = fs.existsSync(link) ? fs.realpathSync(link) : '';
      return real.endsWith('npm-cli.js') ? real : '';
    }),
  ];
  const found = places.find((place) => place !== '' && fs.existsSync(place));
  if (found !== undefined) return found;
  throw new SetupFailure('npm was not found beside this Node.', [
    'Start with `npm start` or `npm test` rather than with node.',
    'Install Node with npm from https://nodejs.org.',
  ]);
}

/**
 * @param {string} label
 * @param {readonly string[]} args
 */
async function npm(label, args) {
  const line = progress(label);
  // Prisma's own engine would be fetched from a host that many offices block; nothing here uses it.
  const env = childEnv({ PRISMA_SCHEMA_ENGINE_BINARY: process.execPath });
  const ended = await runNode([npmCli(), ...args], { env, started: noteChild });
  if (ended.code === 0) {
    line.done();
    return;
  }
  line.failed();
  fs.mkdirSync(cache, { recursive: true });
  fs.writeFileSync(path.join(cache, 'install.log'), ended.output);
  const { message, ways } = explainInstall(ended.output);
  throw new SetupFailure(message, ways, lastLines(ended.output, 8));
}

/** @returns {Promise<string | null>} why the database module does not open, or null */
async function databaseModuleFault() {
  const code =
    "const D = require('better-sqlite3'); const d = new D(':memory:'); d.prepare('select 1').get(); d.close()";
  const ended = await runNode(['-e', code], { env: childEnv() });
  return ended.code === 0 ? null : ended.output;
}

/** @param {string} file @returns {Record<string, LockEntry> | null} */
function lockPackages(file) {
  try {
    return JSON.parse(fs.readFileSync(file, 'utf8')).packages ?? null;
  } catch {
    return null;
  }
}

/** Installs the packages of the lock file unless they are there, and proves the database module. */
async function install() {
  const file = inRoot('node_modules', '.slate-installed');
  // Other packages too are built for one platform: a folder carried to another is installed anew.
  const stamp = stampOf(root, ['package-lock.json'], [process.platform, process.arch]);
  const locked = lockPackages(inRoot('package-lock.json'));
  const present = lockPackages(inRoot('node_modules', '.package-lock.json'));
  const byHand =
    readStamp(file) === null && locked !== null && present !== null && covers(locked, present);
  const args = ['ci', '--include=dev', '--ignore-scripts=false', '--no-audit', '--no-fund'];
  await unlessStamped(file, stamp, async () => {
    if (!byHand) await npm('installing the packages (one to three minutes, once)', args);
  });
  const fault = await databaseModuleFault();
  if (fault === null) return;
  await npm('building the database module for this Node', [
    'rebuild',
    'better-sqlite3',
    '--ignore-scripts=false',
  ]);
  const still = await databaseModuleFault();
  if (still === null) return;
  const { message, ways } = noDatabaseModule();
  throw new SetupFailure(message, ways, lastLines(still, 6));
}

module.exports = { covers, explainInstall, install };
