'use strict';
const fs = require('node:fs');
const os = require('node:os');
const path = require('node:path');
const { root, nextBin, inRoot, childEnv } = require('./project.cjs');
const { SetupFailure, lastLines } = require('./failure.cjs');
const { listFiles, stampOf, readStamp, unlessStamped } = require('./stamps.cjs');
const { progress } = require('./progress.cjs');
const { runNode } = require('./run.cjs');
const { noteChild } = require('./turn.cjs');
const { keepFile } = require('./keep-file.cjs');

const SOURCES = [
  'app',
  'lib',
  'prisma',
  'seed',
  'next.config.ts',
  'proxy.ts',
  'instrumentation.ts',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
];

/** The stamp of everything a build is made of. The folder counts: a build knows absolute paths. */
function sourceStamp() {
  const files = listFiles(root, SOURCES, ['prisma/.schema', 'prisma/generated']);
  return stampOf(root, files, [root, process.platform, process.arch]);
}

/** @param {string} folder */
const stampFile = (folder) => inRoot(folder, 'slate-sources');

/** The stamp of the build in a folder, or null. @param {string} folder */
const builtStamp = (folder) => readStamp(stampFile(folder));

/**
 * Whether a failed build fell over by itself, which a clean second try cures, rather than for a
 * fault in the sources.
 * @param {string} output
 * @param {NodeJS.Signals | null} signal
 */
function crashed(output, signal) {
  if (signal !== null && signal !== 'SIGKILL') return true;
  return /panicked at|TurbopackInternalError|Turbopack Error: (?:Failed to|internal)|FATAL: An unexpected/i.test(
    output,
  );
}

/**
 * The production build in a folder, unless the sources are as they were. It is given a database
 * that cannot be opened: a page that reads one while being built fails here, not at a person's.
 * @param {string} folder from the project's folder
 */
async function build(folder) {
  const file = stampFile(folder);
  if (!fs.existsSync(inRoot(folder, 'BUILD_ID'))) fs.rmSync(file, { force: true });
  const env = childEnv({
    NODE_ENV: 'production',
    SLATE_BUILD_DIR: folder,
    SLATE_DATABASE: path.join(os.tmpdir(), 'no-such-folder', 'no-database-while-building.db'),
  });
  return unlessStamped(file, sourceStamp(), async () => {
    const line = progress('building');
    const restore = keepFile(inRoot('next-env.d.ts'));
    const once = () => runNode([nextBin, 'build'], { env, started: noteChild });
    let ended = await once();
    let note = '';
    if (ended.code !== 0 && crashed(ended.output, ended.signal)) {
      fs.rmSync(inRoot(folder), { recursive: true, force: true });
      note = 'the first try crashed, the second went through';
      ended = await once();
    }
    if (folder !== '.next') restore();
    if (ended.code === 0) {
      line.done(note);
      return;
    }
    line.failed();
    throw new SetupFailure(
      'The build failed.',
      ended.signal === 'SIGKILL'
        ? [
            'The system ended it, most likely for lack of memory: close other programs (it needs 1 GB) and try again.',
          ]
        : [
            `Mend what the lines above name; if you changed nothing, delete the folder ${folder} and try again.`,
          ],
      lastLines(ended.output, 30),
    );
  });
}

module.exports = { build, builtStamp, sourceStamp, crashed };
