'use strict';
const http = require('node:http');
const net = require('node:net');
const { nextBin, childEnv, instanceOf } = require('./project.cjs');
const { SetupFailure, lastLines } = require('./failure.cjs');
const { startNode } = require('./run.cjs');
const { doorEnv } = require('./door.cjs');

const HOST = '127.0.0.1';
const TRIES = 20;

/** @typedef {{ name: string, version: string, instance: string | null, build: string | null, phone?: boolean }} Alive */
/** @typedef {{ kind: 'free' } | { kind: 'ours', alive: Alive } | { kind: 'stranger' }} Answer */

/** @param {number} port */
const addressOf = (port) => `http://${HOST}:${port}`;

/** @param {number} ms @returns {Promise<void>} */
const sleep = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

/**
 * What answers on a port, if it is this program. By `http.get` with a connection and a timer of its own: a `fetch`
 * whose signal is `AbortSignal.timeout` was seen (Node 20, a loaded machine) neither to come back nor to be ended.
 * @param {number} port
 * @returns {Promise<Alive | null>}
 */
function askAlive(port) {
  return new Promise((resolve) => {
    /** @param {Alive | null} alive */
    const end = (alive) => {
      clearTimeout(timer);
      asked.destroy();
      resolve(alive);
    };
    const asked = http.get(`${addressOf(port)}/alive`, { agent: false }, (answer) => {
      let said = '';
      answer.setEncoding('utf8');
      answer.on('data', (part) => (said += part));
      answer.once('error', () => end(null));
      answer.once('end', () => end(aliveIn(said)));
    });
    const timer = setTimeout(() => end(null), 3000);
    asked.once('error', () => end(null));
  });
}

/** @param {string} said @returns {Alive | null} */
function aliveIn(said) {
  try {
    const alive = JSON.parse(said);
    return alive?.name === 'scale-and-slate' ? alive : null;
  } catch {
    return null;
  }
}

/** Whether nothing listens on a port. @param {number} port @returns {Promise<boolean>} */
function canListen(port) {
  return new Promise((resolve) => {
    const probe = net.createServer();
    probe.once('error', () => resolve(false));
    probe.listen({ port, host: HOST, exclusive: true }, () => probe.close(() => resolve(true)));
  });
}

/**
 * Who answers on a port: nobody, this installation on this database, or somebody else.
 * @param {number} port
 * @param {string} instance
 * @returns {Promise<Answer>}
 */
async function whoAnswers(port, instance) {
  if (await canListen(port)) return { kind: 'free' };
  const alive = await askAlive(port);
  return alive !== null && alive.instance === instance
    ? { kind: 'ours', alive }
    : { kind: 'stranger' };
}

/**
 * The first port from the wanted one on that is free, or where ours already answers.
 * @param {number} wanted
 * @param {string} instance
 * @returns {Promise<{ port: number, alive: Alive | null, passed: number[] }>}
 */
async function choosePort(wanted, instance) {
  const passed = [];
  for (let port = wanted; port < wanted + TRIES && port <= 65_535; port += 1) {
    const answer = await whoAnswers(port, instance);
    if (answer.kind !== 'stranger') {
      return { port, alive: answer.kind === 'ours' ? answer.alive : null, passed };
    }
    passed.push(port);
  }
  throw new SetupFailure(`The ports ${wanted} to ${wanted + TRIES - 1} are all taken.`, [
    'Name a free one: PORT=5310 npm start (in PowerShell: $env:PORT=5310; npm start).',
  ]);
}

/** A port that the system gives out as free. @returns {Promise<number>} */
function anyPort() {
  return new Promise((resolve, reject) => {
    const probe = net.createServer();
    probe.once('error', reject);
    probe.listen({ port: 0, host: HOST }, () => {
      const address = probe.address();
      const port = address !== null && typeof address === 'object' ? address.port : 0;
      probe.close(() => resolve(port));
    });
  });
}

/**
 * Serves a build on loopback and comes back when it answers.
 * @param {{ port: number, folder: string, database: string, build?: string, quiet?: boolean, door?: import('./door.cjs').DoorKey }} options
 * @returns {Promise<{ url: string, ended: Promise<number>, stop: () => Promise<void> } | 'port taken'>}
 */
async function startServer({ port, folder, database, build = '', quiet = false, door }) {
  const instance = instanceOf(database);
  const env = childEnv({
    NODE_ENV: 'production',
    SLATE_BUILD_DIR: folder,
    SLATE_DATABASE: database,
    SLATE_INSTANCE: instance,
    SLATE_BUILD: build,
    ...doorEnv(door),
  });
  const args = [nextBin, 'start', '--hostname', HOST, '--port', String(port)];
  const child = startNode(args, env, ['ignore', 'pipe', 'pipe']);
  let output = '';
  let serving = false;
  /** @param {NodeJS.WriteStream} to @returns {(chunk: Buffer) => void} */
  const pass = (to) => (chunk) => {
    if (serving && !quiet) to.write(chunk);
    else output = (output + chunk.toString('utf8')).slice(-100_000);
  };
  child.stdout?.on('data', pass(process.stdout));
  child.stderr?.on('data', pass(process.stderr));
  /** @type {Promise<number>} */
  const ended = new Promise((resolve) => child.once('close', (code) => resolve(code ?? 1)));
  let over = false;
  void ended.then(() => (over = true));

  const stop = async () => {
    if (over) return;
    child.kill('SIGTERM');
    await Promise.race([ended, sleep(3000)]);
    child.kill('SIGKILL');
    await ended;
  };
  const began = performance.now();
  while (!over && performance.now() - began < 60_000) {
    const alive = await askAlive(port);
    if (alive?.instance === instance) {
      serving = true;
      return { url: addressOf(port), ended, stop };
    }
    await sleep(100);
  }
  await stop();
  if (/EADDRINUSE/.test(output)) return 'port taken';
  throw new SetupFailure(
    'The server did not start.',
    [
      `Read the lines above; if they say nothing to you, delete the folder ${folder} and try again.`,
    ],
    lastLines(output),
  );
}

module.exports = { addressOf, choosePort, anyPort, startServer };
