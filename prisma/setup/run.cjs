'use strict';
const { spawn } = require('node:child_process');
const { root } = require('./project.cjs');

/** @typedef {{ code: number | null, signal: NodeJS.Signals | null, output: string }} Ended */

/** @type {Set<import('node:child_process').ChildProcess>} */
const running = new Set();
let leaving = false;

/**
 * Starts a program of Node in the project's folder, in our own process group: whoever ends the
 * group ends it too.
 * @param {readonly string[]} args
 * @param {NodeJS.ProcessEnv} env
 * @param {import('node:child_process').StdioOptions} stdio
 */
function startNode(args, env, stdio) {
  const child = spawn(process.execPath, args, {
    cwd: root,
    env,
    stdio,
    windowsHide: true,
  });
  running.add(child);
  child.once('exit', () => running.delete(child));
  return child;
}

/**
 * Runs a program of Node to its end and keeps what it printed.
 * @param {readonly string[]} args
 * @param {{ env: NodeJS.ProcessEnv, show?: boolean, started?: (pid: number) => void }} options
 * @returns {Promise<Ended>}
 */
function runNode(args, options) {
  return new Promise((resolve, reject) => {
    const child = startNode(args, options.env, ['ignore', 'pipe', 'pipe']);
    let output = '';
    /** @param {NodeJS.WriteStream} to @returns {(chunk: Buffer) => void} */
    const keep = (to) => (chunk) => {
      output = (output + chunk.toString('utf8')).slice(-2_000_000);
      if (options.show === true) to.write(chunk);
    };
    child.stdout?.on('data', keep(process.stdout));
    child.stderr?.on('data', keep(process.stderr));
    child.once('error', reject);
    child.once('close', (code, signal) => {
      if (!leaving) resolve({ code, signal, output });
    });
    if (child.pid !== undefined) options.started?.(child.pid);
  });
}

/**
 * Passes Ctrl-C, TERM and HUP on to every running program, and leaves when they have ended (after
 * ten seconds in any case).
 * @param {() => { code: number, word: string } | undefined} last done before leaving; may say how
 */
function leaveOnSignals(last) {
  /** @type {Record<string, number>} */
  const codes = { SIGINT: 130, SIGTERM: 143, SIGHUP: 129 };
  for (const signal of /** @type {NodeJS.Signals[]} */ (Object.keys(codes))) {
    process.on(signal, () => {
      if (leaving) return;
      leaving = true;
      for (const child of running) child.kill(signal);
      const began = Date.now();
      const wait = setInterval(() => {
        const late = Date.now() - began > 10_000;
        if (late) for (const child of running) child.kill('SIGKILL');
        if (running.size > 0 && !late) return;
        clearInterval(wait);
        const how = last();
        process.stdout.write(`\n${how?.word ?? 'Stopped. The same command goes on from here.'}\n`);
        process.exit(how?.code ?? codes[signal]);
      }, 50);
    });
  }
}

/** Whether a signal has been taken and we are on the way out. */
const isLeaving = () => leaving;

module.exports = { startNode, runNode, leaveOnSignals, isLeaving };
