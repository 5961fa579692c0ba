'use strict';
const fs = require('node:fs');
const path = require('node:path');
const { cache } = require('./project.cjs');
const { SetupFailure } = require('./failure.cjs');

const BEAT_MS = 2000;
const STALE_MS = 15_000;
const PATIENCE_MS = 15 * 60_000;

/** @param {number} pid */
function alive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/**
 * Whether the one who holds the turn still does, or a program that it started still runs.
 * @param {string} file
 */
function isHeld(file) {
  let fresh = false;
  try {
    fresh = Date.now() - fs.statSync(file).mtimeMs <= STALE_MS;
    const { pid, child } = JSON.parse(fs.readFileSync(file, 'utf8'));
    return (fresh && alive(pid)) || (typeof child === 'number' && alive(child));
  } catch {
    return fresh; // It is just being written.
  }
}

/** @param {string} file @returns {boolean} whether the turn is ours now */
function tryTake(file) {
  try {
    fs.writeFileSync(file, JSON.stringify({ pid: process.pid, child: null }), { flag: 'wx' });
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return false;
    throw error;
  }
}

/**
 * One start or test at a time prepares a folder. The holder touches its file every two seconds: one
 * that stopped is gone, whatever program has its number now. What a killed holder left running is
 * waited for, since two installs at once would spoil each other.
 * @param {string} file
 * @param {(line: string) => void} [say]
 */
function turnAt(file, say = console.log) {
  /** @type {NodeJS.Timeout | null} */
  let beat = null;

  async function takeTurn() {
    fs.mkdirSync(path.dirname(file), { recursive: true });
    const began = Date.now();
    for (let told = false; !tryTake(file);) {
      if (!isHeld(file)) {
        fs.rmSync(file, { force: true });
        continue;
      }
      if (!told) say('· Another start or test is preparing this folder; waiting for it …');
      told = true;
      if (Date.now() - began > PATIENCE_MS) {
        throw new SetupFailure(
          'Another start or test has been preparing this folder for 15 minutes.',
          [`End it, delete ${file}, and give the same command again.`],
        );
      }
      await new Promise((resolve) => setTimeout(resolve, 300));
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

  return { takeTurn, noteChild, giveTurn };
}

module.exports = { turnAt, ...turnAt(path.join(cache, 'turn.json')) };
