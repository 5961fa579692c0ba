'use strict';
const { createHash } = require('node:crypto');
const fs = require('node:fs');
const path = require('node:path');
const Database = require('better-sqlite3');

/**
 * Copies the photos that a database names, of labels and of scales' displays, taken out ones too, since undoing needs
 * them. Each is held
 * against its hash, which is its name; what is missing or damaged is told by the name that a person gave it.
 * @param {string} database the copy that names them
 * @param {string} from the folder of photos
 * @param {string} to a new folder; it is made only if there is a photo
 * @returns {{ copied: number, lacking: string[] }}
 */
function copyPhotos(database, from, to) {
  let copied = 0;
  const lacking = [];
  for (const { sha256, name } of namedIn(database)) {
    const bytes = wholeFile(path.join(from, sha256.slice(0, 2), sha256), sha256);
    if (bytes === null) {
      lacking.push(name);
      continue;
    }
    const folder = path.join(to, sha256.slice(0, 2));
    fs.mkdirSync(folder, { recursive: true, mode: 0o700 });
    fs.writeFileSync(path.join(folder, sha256), bytes, { flag: 'wx', mode: 0o600 });
    copied++;
  }
  return { copied, lacking };
}

/**
 * @param {string} database
 * @returns {{ sha256: string, name: string }[]}
 */
function namedIn(database) {
  const db = new Database(database, { readonly: true });
  try {
    const rows = db
      .prepare(
        `SELECT sha256, MIN(name) AS name FROM (
           SELECT sha256, name FROM Attachment
           UNION ALL
           SELECT json_extract(payload, '$.sha256'), 'a scale’s display, ' || substr(at, 1, 16)
             FROM DayEvent WHERE kind = 'display'
         ) GROUP BY sha256`,
      )
      .all();
    const named = /** @type {{ sha256: string, name: string }[]} */ (rows);
    return named.filter(({ sha256 }) => /^[0-9a-f]{64}$/.test(String(sha256)));
  } finally {
    db.close();
  }
}

/**
 * @param {string} file
 * @param {string} sha256
 * @returns {Buffer | null} null where it is missing or is not what its name says
 */
function wholeFile(file, sha256) {
  if (!fs.existsSync(file)) return null;
  const bytes = fs.readFileSync(file);
  return createHash('sha256').update(bytes).digest('hex') === sha256 ? bytes : null;
}

module.exports = { copyPhotos };
