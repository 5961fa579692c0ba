'use strict';
require('./node-version.cjs').requireNode();
const fs = require('node:fs');
const path = require('node:path');
const Database = require('better-sqlite3');
const { databasePath, isServer, shownDatabase } = require('./project.cjs');

/*
 * Copies the database into a new file by SQLite's own VACUUM INTO, which is whole even while the
 * program runs; a copy of the file alone may lack what stands in its journal.
 */
const from = databasePath(process.env);
if (isServer(from)) {
  console.error(`${shownDatabase(from)} stands on a server: back it up there, by pg_dump.`);
  process.exit(1);
}
const stamp = new Date().toISOString().replace(/[:.]/g, '-');
const to = path.resolve(process.argv[2] ?? path.join(path.dirname(from), `backup-${stamp}.db`));
if (!fs.existsSync(from) || fs.existsSync(to)) {
  console.error(
    fs.existsSync(to)
      ? `${to} exists already; name a new file.`
      : `There is no database at ${from}.`,
  );
  process.exit(1);
}
try {
  const db = new Database(from, { readonly: true });
  db.prepare('VACUUM INTO ?').run(to);
  db.close();
} catch (error) {
  const why = error instanceof Error ? error.message : String(error);
  console.error(`Nothing was backed up to ${to}: ${why}.`);
  console.error(
    'Name a file in a folder that exists and can be written, with room for the database.',
  );
  process.exit(1);
}
console.log(`Backed up to ${to}`);
