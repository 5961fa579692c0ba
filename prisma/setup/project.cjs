'use strict';
const { createHash } = require('node:crypto');
const path = require('node:path');

/** The project's folder; everything is resolved from here, never from the working folder. */
const root = path.resolve(__dirname, '..', '..');
const cache = path.join(root, '.cache', 'setup');
const nextBin = path.join(root, 'node_modules', 'next', 'dist', 'bin', 'next');

/** @param {string[]} parts a path below the project's folder */
const inRoot = (...parts) => path.join(root, ...parts);

/**
 * The person's database: SLATE_DATABASE, a relative path taken from the project's folder, else
 * .data/slate.db. The URL of a PostgreSQL server stays as it is.
 * @param {NodeJS.ProcessEnv} env
 * @returns {string} an absolute path, or a URL
 */
function databasePath(env) {
  const named = env.SLATE_DATABASE;
  if (named !== undefined && isServer(named)) return named;
  return path.resolve(root, named === undefined || named === '' ? '.data/slate.db' : named);
}

/**
 * Where the photos of labels stand: beside the database's file, for a database on a server in .data;
 * SLATE_PHOTOS names another folder.
 * @param {NodeJS.ProcessEnv} env
 * @returns {string} an absolute path
 */
function photosPath(env) {
  if (env.SLATE_PHOTOS) return path.resolve(root, env.SLATE_PHOTOS);
  const database = databasePath(env);
  return path.join(isServer(database) ? inRoot('.data') : path.dirname(database), 'photos');
}

/**
 * Whether a database stands on a PostgreSQL server; all others are files.
 * @param {string} database
 */
function isServer(database) {
  return /^postgres(ql)?:/i.test(database);
}

/**
 * A database as it may be shown: a URL without its password and options.
 * @param {string} database
 */
function shownDatabase(database) {
  if (!isServer(database)) return database;
  if (!URL.canParse(database)) return 'the PostgreSQL database';
  const url = new URL(database);
  url.password = '';
  url.search = '';
  return url.href;
}

/**
 * A name for one installation on one database, so that a server of another clone is a stranger.
 * @param {string} database
 * @returns {string} 16 hexadecimal digits
 */
function instanceOf(database) {
  return createHash('sha256').update(`${root}\0${database}`).digest('hex').slice(0, 16);
}

/**
 * The environment of every program we start: the caller's, no reports to vendors, no colours
 * in a log, and NODE_ENV as that program needs it, whatever the person's shell has set.
 * @param {Record<string, string | undefined>} [changes]
 * @returns {NodeJS.ProcessEnv}
 */
function childEnv(changes = {}) {
  const quiet = { NEXT_TELEMETRY_DISABLED: '1', CHECKPOINT_DISABLE: '1' };
  const plain = process.stdout.isTTY === true ? {} : { NO_COLOR: '1', FORCE_COLOR: undefined };
  const env = { ...process.env, ...quiet, ...plain, ...changes };
  if (!('NODE_ENV' in changes)) Reflect.deleteProperty(env, 'NODE_ENV');
  return /** @type {NodeJS.ProcessEnv} */ (env);
}

module.exports = {
  root,
  cache,
  nextBin,
  inRoot,
  databasePath,
  photosPath,
  isServer,
  shownDatabase,
  instanceOf,
  childEnv,
};
