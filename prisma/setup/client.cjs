'use strict';
const fs = require('node:fs');
const path = require('node:path');
const { root, cache, inRoot, childEnv } = require('./project.cjs');
const { SetupFailure, lastLines } = require('./failure.cjs');
const { listFiles, stampOf, unlessStamped } = require('./stamps.cjs');
const { progress } = require('./progress.cjs');
const { runNode } = require('./run.cjs');
const { noteChild } = require('./turn.cjs');

/** Generates the database client from the models, unless they are as they were. */
async function generateClient() {
  const sources = listFiles(root, ['prisma']).filter((file) =>
    /^prisma\/[^/]+\.(prisma|ts)$/.test(file),
  );
  const stamp = stampOf(root, [...sources, 'package-lock.json']);
  const file = path.join(cache, 'client');
  if (!fs.existsSync(inRoot('prisma', 'generated'))) fs.rmSync(file, { force: true });
  await unlessStamped(file, stamp, async () => {
    const line = progress('generating the database client');
    const ended = await runNode(['--import', 'tsx', 'prisma/generate.ts'], {
      env: childEnv(),
      started: noteChild,
    });
    if (ended.code === 0) {
      line.done();
      return;
    }
    line.failed();
    throw new SetupFailure(
      'The database client could not be generated from prisma/*.prisma.',
      [
        'If you changed the models, mend what the lines above name; else delete node_modules and try again.',
      ],
      lastLines(ended.output),
    );
  });
}

module.exports = { generateClient };
