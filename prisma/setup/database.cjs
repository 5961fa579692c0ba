'use strict';
const fs = require('node:fs');
const path = require('node:path');
const { childEnv, isServer, shownDatabase } = require('./project.cjs');
const { SetupFailure, lastLines } = require('./failure.cjs');
const { progress } = require('./progress.cjs');
const { runNode } = require('./run.cjs');
const { noteChild } = require('./turn.cjs');

/**
 * Creates and migrates a database, loads the reference foods, and seeds the demo if it is empty.
 * On a database that has all of it, nothing changes.
 * @param {string} database an absolute path, or the URL of a PostgreSQL server
 */
async function prepareDatabase(database) {
  const line = progress('preparing the database');
  try {
    if (!isServer(database)) fs.mkdirSync(path.dirname(database), { recursive: true });
  } catch (error) {
    line.failed();
    throw new SetupFailure(
      `The folder of the database cannot be made: ${error instanceof Error ? error.message : ''}`,
      [`Make ${path.dirname(database)} writable, or name another file in SLATE_DATABASE.`],
    );
  }
  const args = ['--conditions=react-server', '--import', 'tsx', 'prisma/prepare.ts'];
  const ended = await runNode(args, {
    env: childEnv({ SLATE_DATABASE: database }),
    started: noteChild,
  });
  if (ended.code === 0) {
    const said = ended.output.trim().split(/\r?\n/).filter(Boolean);
    line.done(said.at(-1) ?? '');
    return;
  }
  line.failed();
  throw new SetupFailure(
    `The database ${shownDatabase(database)} could not be prepared; nothing in it was lost.`,
    [
      'Read the lines above and mend their cause.',
      'Start with a new database beside it: SLATE_DATABASE=.data/other.db npm start',
    ],
    lastLines(ended.output),
  );
}

module.exports = { prepareDatabase };
