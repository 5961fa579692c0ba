'use strict';
const { createHash } = require('node:crypto');
const fs = require('node:fs');
const path = require('node:path');

/**
 * Every file below the given files and folders, sorted, with `/` between names. A name that does
 * not exist is left out.
 * @param {string} root
 * @param {readonly string[]} names
 * @param {readonly string[]} [skip] folders, from the root
 * @returns {string[]}
 */
function listFiles(root, names, skip = []) {
  /** @type {string[]} */
  const found = [];
  /** @param {string} name */
  const visit = (name) => {
    if (skip.includes(name)) return;
    const stat = fs.statSync(path.join(root, name), { throwIfNoEntry: false });
    if (stat === undefined) return;
    if (!stat.isDirectory()) {
      found.push(name);
      return;
    }
    for (const child of fs.readdirSync(path.join(root, name))) visit(`${name}/${child}`);
  };
  names.forEach(visit);
  return found.sort();
}

/**
 * A stamp over names and contents of files, and over any words that matter beside them. Equal
 * stamps mean that the step's result would be the same.
 * @param {string} root
 * @param {readonly string[]} files
 * @param {readonly string[]} [words]
 * @returns {string}
 */
function stampOf(root, files, words = []) {
  const hash = createHash('sha256');
  for (const word of words) hash.update(`word ${word.length} ${word}\n`);
  for (const file of files) {
    const bytes = fs.readFileSync(path.join(root, file));
    hash.update(`file ${file} ${bytes.length}\n`).update(bytes);
  }
  return hash.digest('hex');
}

/** @param {string} file @returns {string | null} */
function readStamp(file) {
  try {
    return fs.readFileSync(file, 'utf8').trim();
  } catch {
    return null;
  }
}

/**
 * Does a step unless its stamp stands. The old stamp is removed first and the new one written
 * last, so that a run killed in between repeats the step.
 * @param {string} file where the stamp stands
 * @param {string} stamp
 * @param {() => Promise<void>} work
 * @returns {Promise<'done' | 'unchanged'>}
 */
async function unlessStamped(file, stamp, work) {
  if (readStamp(file) === stamp) return 'unchanged';
  fs.rmSync(file, { force: true });
  await work();
  fs.mkdirSync(path.dirname(file), { recursive: true });
  fs.writeFileSync(`${file}.new`, `${stamp}\n`);
  fs.renameSync(`${file}.new`, file);
  return 'done';
}

module.exports = { listFiles, stampOf, readStamp, unlessStamped };
