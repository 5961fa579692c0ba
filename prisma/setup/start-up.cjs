'use strict';
const { databasePath, instanceOf, shownDatabase } = require('./project.cjs');
const { SetupFailure, describeFailure } = require('./failure.cjs');
const { leaveOnSignals, isLeaving } = require('./run.cjs');
const { takeTurn, giveTurn } = require('./turn.cjs');
const { install } = require('./install.cjs');
const { generateClient } = require('./client.cjs');
const { prepareDatabase } = require('./database.cjs');
const { build, builtStamp, sourceStamp } = require('./build.cjs');
const { addressOf, choosePort, startServer } = require('./server.cjs');

const PORT = 4310;

/**
 * The port wanted: PORT, or 4310.
 * @param {string | undefined} text
 */
function wantedPort(text) {
  if (text === undefined || text === '') return PORT;
  const port = Number(text);
  if (Number.isInteger(port) && port >= 1 && port <= 65_535) return port;
  throw new SetupFailure(`PORT is "${text}", which is no port.`, [
    'Give a whole number from 1 to 65535, or leave PORT unset for 4310.',
  ]);
}

/** @param {string} url @param {string} note */
function announce(url, note) {
  console.log(`\n  Scale & Slate  ${url}\n  ${note}\n`);
}

let serving = false;

/** Everything from a bare clone to a served page; each step only where something changed. */
async function start() {
  const wanted = wantedPort(process.env.PORT);
  const database = databasePath(process.env);
  const instance = instanceOf(database);

  const before = await choosePort(wanted, instance);
  if (before.alive !== null) {
    const old = before.alive.build !== sourceStamp();
    announce(
      addressOf(before.port),
      old
        ? 'It is running already, from an earlier state of the sources: stop it there with Ctrl-C and start again.'
        : 'It is running already.',
    );
    return;
  }

  await takeTurn();
  await install();
  await generateClient();
  await prepareDatabase(database);
  await build('.next');
  giveTurn();

  for (let from = wanted; ;) {
    const { port, alive, passed } = await choosePort(from, instance);
    if (alive !== null) return announce(addressOf(port), 'It is running already.');
    const server = await startServer({
      port,
      folder: '.next',
      database,
      build: builtStamp('.next') ?? '',
    });
    if (server === 'port taken') {
      from = port + 1;
      continue;
    }
    if (passed.length > 0) console.log(`· ${passed.join(', ')}: taken by another program`);
    serving = true;
    announce(server.url, `Database: ${shownDatabase(database)} · Ctrl-C stops it.`);
    const code = await server.ended;
    if (isLeaving()) return;
    serving = false;
    throw new SetupFailure(`The server ended by itself (code ${code}).`, [
      'Give the same command again; your data are kept.',
    ]);
  }
}

function main() {
  leaveOnSignals(() => {
    giveTurn();
    return serving ? { code: 0, word: 'Stopped.' } : undefined;
  });
  start().catch((error) => {
    giveTurn();
    console.error(describeFailure(error));
    process.exitCode = 1;
  });
}

module.exports = { main, wantedPort };
