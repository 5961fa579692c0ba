'use strict';
const fs = require('node:fs');
const path = require('node:path');
const { cache } = require('./project.cjs');
const { SetupFailure } = require('./failure.cjs');

const BEAT_MS = 2000;
const STALE_MS = 15_000;
const file = path.join(cache, 'turn.json');

/** @type {NodeJS.Timeout | null} */
let beat = null;

/** @param {number} pid */
function alive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/** @returns {{ pid: number, child: number | null, at: number } | null} */
function holder() {
  try {
    const { mtimeMs } = fs.statSync(file);
    const { pid, child } = JSON.parse(fs.readFileSync(file, 'utf8'));
    return { pid, child, at: mtimeMs };
  } catch {
    return null;
  }
}

/** @param {number} ms @returns {Promise<void>} */
const sleep = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

/**
 * Waits until no other start or test prepares this folder, then holds the turn. A holder that
 * stopped beating is gone; a program that it left behind is waited for, since two installs at once
 * would spoil each other.
 */
async function takeTurn() {
  fs.mkdirSync(cache, { recursive: true });
  const began = Date.now();
  let told = false;
  for (;;) {
    try {
      fs.writeFileSync(file, JSON.stringify({ pid: process.pid, child: null }), { flag: 'wx' });
      break;
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
    }
    const other = holder();
    const quiet = other === null || Date.now() - other.at > STALE_MS || !alive(other.pid);
    if (quiet && (other === null || other.child === null || !alive(other.child))) {
      fs.rmSync(file, { force: true });
      continue;
    }
    if (!told) {
      told = true;
      console.log('· Another start or test is preparing this folder; waiting for it …');
    }
    if (Date.now() - began > 15 * 60_000) {
      throw new SetupFailure(
        'Another start or test has been preparing this folder for 15 minutes.',
        [`End it, delete ${file}, and give the same command again.`],
      );
    }
    await sleep(500);
  }
  beat = setInterval(() => {
    const now = new Date();
    fs.utimes(file, now, now, () => undefined);
  }, BEAT_MS);
  beat.unref();
}

/** Notes the program that is running for the holder. @param {number} pid */
function noteChild(pid) {
  if (beat !== null) fs.writeFileSync(file, JSON.stringify({ pid: process.pid, child: pid }));
}

/** Gives the turn back, if held. */
function giveTurn() {
  if (beat === null) return;
  clearInterval(beat);
  beat = null;
  fs.rmSync(file, { force: true });
}

module.exports = { takeTurn, noteChild, giveTurn };
