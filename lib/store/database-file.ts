import { existsSync, readFileSync } from 'node:fs';
import { dirname, isAbsolute, join, resolve } from 'node:path';

/**
 * Where the database stands: `SLATE_DATABASE`, else `.data/slate.db` in the project. A relative path counts
 * from the project's root, never from the working folder, so that every program opens the same file.
 * `databaseFile({ SLATE_DATABASE: '/srv/kitchen.db' })` → `'/srv/kitchen.db'`.
 */
export function databaseFile(env: Readonly<Record<string, string | undefined>>): string {
  const named = env.SLATE_DATABASE;
  if (named === undefined || named === '') return join(projectRoot(), '.data', 'slate.db');
  return isAbsolute(named) ? named : resolve(projectRoot(), named);
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
