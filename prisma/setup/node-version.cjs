'use strict';
/* Written in the oldest syntax, so that an old Node reads it and can say what is wrong. */

/**
 * The sentence for a Node that is too old, or null.
 * Example: tooOld('18.20.4') = 'Scale & Slate needs Node 20.19 or newer; this is 18.20.4. …'
 * @param {string} version
 * @returns {string | null}
 */
function tooOld(version) {
  var parts = version.split('.').map(Number);
  var major = parts[0] || 0;
  var minor = parts[1] || 0;
  if (major > 20 || (major === 20 && minor >= 19)) return null;
  return (
    'Scale & Slate needs Node 20.19 or newer; this is ' +
    version +
    '.\n' +
    '  What to do: install the current long-term version from https://nodejs.org\n' +
    '  (or `nvm install --lts`), open a new terminal, and give the same command again.'
  );
}

/** Ends the process with that sentence on a Node that is too old. */
function requireNode() {
  var message = tooOld(process.versions.node);
  if (message === null) return;
  console.error(message);
  process.exit(1);
}

module.exports = { tooOld: tooOld, requireNode: requireNode };
