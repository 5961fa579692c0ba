'use strict';
const fs = require('node:fs');

/**
 * Remembers a file that a program rewrites, and comes back with what puts it as it was. Next names
 * the types of the last build folder in next-env.d.ts, whichever folder that was.
 * @param {string} file
 * @returns {() => void}
 */
function keepFile(file) {
  const before = fs.existsSync(file) ? fs.readFileSync(file) : null;
  return () => {
    if (before === null) fs.rmSync(file, { force: true });
    else if (!fs.existsSync(file) || !fs.readFileSync(file).equals(before)) {
      fs.writeFileSync(file, before);
    }
  };
}

module.exports = { keepFile };
