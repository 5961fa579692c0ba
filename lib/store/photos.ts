import 'server-only';
import { createHash, randomUUID } from 'node:crypto';
import { mkdir, open, readFile, rename, rm, stat } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { failed, ok, type Result } from '#lib/result';
import { databaseFile, isPostgresUrl, projectRoot } from '#lib/store/database-file';

/**
 * The bytes of photos: files named by their hash in one folder, written once and never changed, so that a
 * name says whether a file is whole. A file stays when its row is taken out or undone, since undoing that
 * needs it; nobody sees one that no row names.
 */

/** A SHA-256 as 64 hexadecimal digits: the only thing that is ever made into a path here. */
const HASH = /^[0-9a-f]{64}$/;

/**
 * Where photos stand: the folder `photos` beside the database's file, for a database on a server that in
 * `.data`; `SLATE_PHOTOS` names another, a relative path counted from the project's root.
 * `photosFolder({ SLATE_DATABASE: '/srv/kitchen.db' })` → `'/srv/photos'`.
 */
export function photosFolder(env: Readonly<Record<string, string | undefined>>): string {
  const { SLATE_PHOTOS: named = '' } = env;
  if (named !== '') return resolve(projectRoot(), named);
  const database = databaseFile(env);
  const beside = isPostgresUrl(database) ? join(projectRoot(), '.data') : dirname(database);
  return join(beside, 'photos');
}

function fileOf(sha256: string): string {
  if (!HASH.test(sha256)) throw new Error(`${JSON.stringify(sha256)} is no hash of a photo`);
  return join(photosFolder(process.env), sha256.slice(0, 2), sha256);
}

/** The name of a photo's bytes: SHA-256, as 64 hexadecimal digits. */
export function photoHash(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/**
 * Keeps a photo's bytes and says their hash. They are on the disk, whole and under their name, before it
 * comes back; the row that names them is written after. Kept twice they stand once, and a file that was
 * damaged is whole again.
 */
export async function keepPhoto(bytes: Uint8Array): Promise<Result<string>> {
  const sha256 = photoHash(bytes);
  const file = fileOf(sha256);
  if ((await readPhotoBytes(sha256)) !== null) return ok(sha256);
  const fresh = `${file}.${randomUUID()}`;
  // The marks below tell the builder that these are the person's files, and no part of the program.
  try {
    await mkdir(dirname(file), { recursive: true, mode: 0o700 });
    const handle = await open(/* turbopackIgnore: true */ fresh, 'wx', 0o600);
    try {
      await handle.writeFile(bytes);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(fresh, file);
    await settle(dirname(file));
    return ok(sha256);
  } catch (error) {
    await rm(fresh, { force: true }).catch(() => undefined);
    const code = error instanceof Error && 'code' in error ? String(error.code) : null;
    if (code === null) throw error;
    const message =
      `The photo could not be written into ${photosFolder(process.env)} (${code}), and nothing was ` +
      'changed. Make room there and let the program write, then attach it again.';
    return failed({ path: 'photo', code: 'not-written', message });
  }
}

/** Has a folder's new names written to the disk. Windows does so by itself and opens no folder. */
async function settle(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(/* turbopackIgnore: true */ folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** A photo's bytes; null where the file is missing or is no longer what its hash says. */
export async function readPhotoBytes(sha256: string): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    const bytes = new Uint8Array(await readFile(fileOf(sha256)));
    return photoHash(bytes) === sha256 ? bytes : null;
  } catch (error) {
    if (error instanceof Error && 'code' in error) return null;
    throw error;
  }
}

/** Whether a photo's file is there with so many bytes; its hash is held against it when it is shown. */
export async function isPhotoThere(sha256: string, size: number): Promise<boolean> {
  try {
    const found = await stat(fileOf(sha256));
    return found.isFile() && found.size === size;
  } catch {
    return false;
  }
}
