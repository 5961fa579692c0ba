'use strict';
const fs = require('node:fs');
const path = require('node:path');
const { childEnv } = require('./project.cjs');
const { SetupFailure, lastLines } = require('./failure.cjs');
const { progress } = require('./progress.cjs');
const { runNode } = require('./run.cjs');
const { noteChild } = require('./turn.cjs');

/**
 * Creates and migrates a database, loads the reference foods, and seeds the demo if it is empty.
 * On a database that has all of it, nothing changes.
 * @param {string} file an absolute path
 */
async function prepareDatabase(file) {
  const line = progress('preparing the database');
  try {
    fs.mkdirSync(path.dirname(file), { recursive: true });
  } catch (error) {
    line.failed();
    throw new SetupFailure(
      `The folder of the database cannot be made: ${error instanceof Error ? error.message : ''}`,
      [`Make ${path.dirname(file)} writable, or name another file in SLATE_DATABASE.`],
    );
  }
  const args = ['--conditions=react-server', '--import', 'tsx', 'prisma/prepare.ts'];
  const ended = await runNode(args, {
    env: childEnv({ SLATE_DATABASE: file }),
    started: noteChild,
  });
  if (ended.code === 0) {
    const said = ended.output.trim().split(/\r?\n/).filter(Boolean);
    line.done(said.at(-1) ?? '');
    return;
  }
  line.failed();
  throw new SetupFailure(
    `The database ${file} could not be prepared; nothing in it was lost.`,
    [
      'Read the lines above and mend their cause.',
      'Start with a new database beside it: SLATE_DATABASE=.data/other.db npm start',
    ],
    lastLines(ended.output),
  );
}

module.exports = { prepareDatabase };
