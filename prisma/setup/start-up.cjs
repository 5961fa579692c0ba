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
const { doorKey, openForPhone } = require('./door.cjs');

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

/**
 * What is asked for on the command line: `npm start -- --phone`.
 * @param {readonly string[]} args
 */
function readStartArgs(args) {
  const unknown = args.filter((arg) => arg !== '--phone');
  if (unknown.length === 0) return { phone: args.includes('--phone') };
  throw new SetupFailure(`"${unknown.join(' ')}" is not known here.`, [
    'Give npm start alone, or npm start -- --phone to let a phone in over the home network.',
  ]);
}

/** @param {string} url @param {string} note */
function announce(url, note) {
  console.log(`\n  Scale & Slate  ${url}\n  ${note}\n`);
}

let serving = false;

/**
 * Says that it is running, and what keeps it from being what was asked for.
 * @param {number} port
 * @param {import('./server.cjs').Alive} alive
 * @param {boolean} phone
 */
function announceRunning(port, alive, phone) {
  const again = 'stop it there with Ctrl-C and start again.';
  const old = alive.build !== sourceStamp();
  const shut = phone && alive.phone !== true;
  const so = old ? `from an earlier state of the sources: ${again}` : `without --phone: ${again}`;
  announce(addressOf(port), `It is running already${old || shut ? `, ${so}` : '.'}`);
}

/**
 * Everything from a bare clone to a served page; each step only where something changed.
 * @param {readonly string[]} args
 */
async function start(args) {
  const { phone } = readStartArgs(args);
  const wanted = wantedPort(process.env.PORT);
  const database = databasePath(process.env);
  const instance = instanceOf(database);

  const before = await choosePort(wanted, instance);
  if (before.alive !== null) {
    announceRunning(before.port, before.alive, phone);
    return;
  }

  await takeTurn();
  await install();
  await generateClient();
  await prepareDatabase(database);
  await build('.next');
  giveTurn();

  const door = phone ? doorKey() : undefined;
  for (let from = wanted; ;) {
    const { port, alive, passed } = await choosePort(from, instance);
    if (alive !== null) return announceRunning(port, alive, phone);
    const server = await startServer({
      port,
      folder: '.next',
      database,
      build: builtStamp('.next') ?? '',
      ...(door === undefined ? {} : { door }),
    });
    if (server === 'port taken') {
      from = port + 1;
      continue;
    }
    if (passed.length > 0) console.log(`· ${passed.join(', ')}: taken by another program`);
    serving = true;
    announce(server.url, `Database: ${shownDatabase(database)} · Ctrl-C stops it.`);
    const shut = door === undefined ? undefined : await openForPhone(door, port, server.url);
    const code = await server.ended;
    if (isLeaving()) return;
    serving = false;
    await shut?.();
    throw new SetupFailure(`The server ended by itself (code ${code}).`, [
      'Give the same command again; your data are kept.',
    ]);
  }
}

/** @param {readonly string[]} args */
function main(args) {
  leaveOnSignals(() => {
    giveTurn();
    return serving ? { code: 0, word: 'Stopped.' } : undefined;
  });
  start(args).catch((error) => {
    giveTurn();
    console.error(describeFailure(error));
    process.exitCode = 1;
  });
}

module.exports = { main, readStartArgs, wantedPort };
