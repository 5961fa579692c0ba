'use strict';
require('./node-version.cjs').requireNode();
const fs = require('node:fs');
const path = require('node:path');
const Database = require('better-sqlite3');
const { copyPhotos } = require('./copy-photos.cjs');
const { databasePath, isServer, photosPath, shownDatabase } = require('./project.cjs');

/*
 * Copies the database into a new file by SQLite's own VACUUM INTO, which is whole even while the
 * program runs; a copy of the file alone may lack what stands in its journal. The photos that the copy
 * names go into a folder beside it.
 */
const from = databasePath(process.env);
const photos = photosPath(process.env);
if (isServer(from)) {
  console.error(`${shownDatabase(from)} stands on a server: back it up there, by pg_dump.`);
  console.error(`Its photos are files in ${photos}: copy that folder after it.`);
  process.exit(1);
}
const stamp = new Date().toISOString().replace(/[:.]/g, '-');
const to = path.resolve(process.argv[2] ?? path.join(path.dirname(from), `backup-${stamp}.db`));
const toPhotos = `${to.replace(/\.db$/, '')}-photos`;
const there = [to, toPhotos].find((each) => fs.existsSync(each));
if (!fs.existsSync(from) || there !== undefined) {
  console.error(
    there === undefined
      ? `There is no database at ${from}.`
      : `${there} exists already; name a new file.`,
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
try {
  const { copied, lacking } = copyPhotos(to, photos, toPhotos);
  if (copied > 0) console.log(`Its photos, ${copied} in all, to ${toPhotos}`);
  if (lacking.length > 0) {
    console.error(
      `Missing or damaged in ${photos}, and so not in the backup: ${lacking.join(', ')}`,
    );
  }
} catch (error) {
  const why = error instanceof Error ? error.message : String(error);
  console.error(`The database was backed up, the photos were not all: ${why}.`);
  console.error(`Make room, take ${to} and ${toPhotos} away, and back up again.`);
  process.exit(1);
}
