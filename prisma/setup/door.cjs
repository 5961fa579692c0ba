'use strict';
const { randomBytes } = require('node:crypto');
const { childEnv, inRoot } = require('./project.cjs');
const { isLeaving, startNode } = require('./run.cjs');
const { lastLines } = require('./failure.cjs');

/** @typedef {{ secret: string, folder: string }} DoorKey what the program and the door share for one run */
/** @typedef {{ open: boolean, urls: string[], made: boolean }} Said */

/**
 * A new secret for one run, and the folder where the authority is kept.
 * @param {string} [folder]
 * @returns {DoorKey}
 */
function doorKey(folder = inRoot('.data', 'phone')) {
  return { secret: randomBytes(32).toString('base64url'), folder };
}

/**
 * What the program is told of the door; nothing where there is none, whatever the person's shell has set.
 * @param {DoorKey | undefined} key
 */
function doorEnv(key) {
  return { SLATE_DOOR_SECRET: key?.secret, SLATE_DOOR_FOLDER: key?.folder };
}

/**
 * Opens the phone's door before a program that answers on loopback.
 * @param {{ key: DoorKey, inner: number, port: number, addresses?: string[] }} options
 * @returns {Promise<{ said: Said, ended: Promise<number>, stop: () => Promise<void> } | { failed: string }>}
 */
function startDoor({ key, inner, port, addresses }) {
  const env = childEnv({
    ...doorEnv(key),
    SLATE_DOOR_INNER: String(inner),
    SLATE_DOOR_PORT: String(port),
    SLATE_DOOR_ADDRESSES: addresses?.join(','),
  });
  const args = ['--import', 'tsx', inRoot('prisma', 'setup', 'door', 'main.ts')];
  const child = startNode(args, env, ['ignore', 'pipe', 'pipe', 'ipc']);
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream?.on('data', (chunk) => (output = (output + chunk.toString('utf8')).slice(-20_000)));
  }
  /** @type {Promise<number>} */
  const ended = new Promise((resolve) => child.once('close', (code) => resolve(code ?? 1)));
  const stop = async () => {
    child.kill('SIGTERM');
    await ended;
  };
  return new Promise((resolve) => {
    child.once('message', (said) => resolve({ said: /** @type {Said} */ (said), ended, stop }));
    void ended.then(() => resolve({ failed: lastLines(output, 5) }));
  });
}

/**
 * Opens the door for `npm start -- --phone` and says what to do next. Whatever goes wrong with it, the program
 * on loopback goes on.
 * @param {DoorKey} key
 * @param {number} inner the program's port; the door's is the next one that is free
 * @param {string} url the program's address
 * @returns {Promise<(() => Promise<void>) | undefined>} shuts it
 */
async function openForPhone(key, inner, url) {
  const door = await startDoor({ key, inner, port: inner + 1 });
  const alone = 'Scale & Slate goes on on this computer alone.';
  if ('failed' in door) {
    if (!isLeaving()) console.log(`  The phone’s door did not open. ${alone}\n${door.failed}\n`);
    return undefined;
  }
  const [first] = door.said.urls;
  if (first === undefined) {
    console.log(
      `  For a phone: this computer has no address in a home network. ${alone}\n` +
        '  Connect it to the network that the phone is in, then stop and start it again.\n',
    );
    return undefined;
  }
  console.log(`  For a phone    ${first}/pair`);
  console.log(`  Next: open ${url}/phones here, make a code, and point the phone’s camera at it.`);
  if (door.said.made) console.log('  How the phone comes to trust this computer stands there too.');
  console.log('');
  void door.ended.then((code) => {
    if (!isLeaving()) console.log(`The phone’s door shut by itself (code ${code}). ${alone}`);
  });
  return door.stop;
}

module.exports = { doorKey, doorEnv, startDoor, openForPhone };
