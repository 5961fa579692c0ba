import { existsSync, readFileSync } from 'node:fs';
import { dirname, isAbsolute, join, resolve } from 'node:path';

/**
 * Where the database stands: `SLATE_DATABASE`, else `.data/slate.db` in the project. A relative path counts
 * from the project's root, never from the working folder, so that every program opens the same file. The URL
 * of a PostgreSQL server stays as it is.
 * `databaseFile({ SLATE_DATABASE: '/srv/kitchen.db' })` → `'/srv/kitchen.db'`.
 */
export function databaseFile(env: Readonly<Record<string, string | undefined>>): string {
  const named = env.SLATE_DATABASE;
  if (named === undefined || named === '') return join(projectRoot(), '.data', 'slate.db');
  return isPostgresUrl(named) || isAbsolute(named) ? named : resolve(projectRoot(), named);
}

/** Whether a database is named by the URL of a PostgreSQL server; all else is an SQLite file. */
export function isPostgresUrl(database: string): boolean {
  return /^postgres(ql)?:/i.test(database);
}

/**
 * A database as it may be shown: a URL without its password and options.
 * `shownDatabase('postgresql://ann:secret@db/slate?sslmode=require')` → `'postgresql://ann@db/slate'`.
 */
export function shownDatabase(database: string): string {
  if (!isPostgresUrl(database)) return database;
  if (!URL.canParse(database)) return 'the PostgreSQL database';
  const url = new URL(database);
  url.password = '';
  url.search = '';
  return url.href;
}

/** The folder whose package.json is this project's: upwards from the working folder, then from the program. */
export function projectRoot(): string {
  for (const start of [process.cwd(), dirname(process.argv[1] ?? process.cwd())]) {
    for (let folder = start; ; folder = dirname(folder)) {
      if (isOurs(join(folder, 'package.json'))) return folder;
      if (folder === dirname(folder)) break;
    }
  }
  throw new Error(
    `The project's folder was not found above ${process.cwd()}: start it from inside the project, ` +
      `or set SLATE_DATABASE to the full path of the database.`,
  );
}

function isOurs(file: string): boolean {
  return existsSync(file) && readFileSync(file, 'utf8').includes('"name": "scale-and-slate"');
}
