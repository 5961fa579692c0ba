import { createReadStream } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { Readable } from 'node:stream';
import { openPromise, type Entry, type ZipFile } from 'yauzl';
import { DownloadError } from '#lib/work/fdc/faults';

/** A file of a download, packed or not. */
export interface DownloadFile {
  readonly name: string;
  /** Bytes when unpacked. */
  readonly size: number;
  readonly open: () => Promise<Readable>;
}

/** A download of FoodData Central: its tables, or its one JSON file. */
export interface Download {
  readonly path: string;
  readonly kind: 'csv' | 'json';
  readonly files: ReadonlyMap<string, DownloadFile>;
  /** The files whose bytes say which download it is: the zip itself, or what it was unpacked to. */
  readonly sources: readonly string[];
  readonly close: () => void;
}

/** Bounds of a zip: published ones unpack to about 3 GB and 30 times their size. */
export const ZIP_BOUNDS = { entries: 10_000, times: 200, bytes: 64e9, smallBytes: 50e6 } as const;

/**
 * Opens a download as published: a `.zip`, a `.json`, a folder of tables or one of its `.csv` files. Nothing is
 * unpacked yet. What is none of these is told in words (`DownloadError`).
 */
export async function openDownload(path: string): Promise<Download> {
  const found = await stat(path).catch(() => null);
  if (!found) throw new DownloadError(`There is no file or folder ${path}.`);
  if (found.isDirectory()) return openFolder(path);
  if (/\.zip$/i.test(path)) return openZip(path);
  if (/\.json$/i.test(path)) {
    const file = plainFile(path, found.size);
    return {
      path,
      kind: 'json',
      files: new Map([[file.name, file]]),
      sources: [path],
      close: () => undefined,
    };
  }
  if (/\.csv$/i.test(path)) return openFolder(dirname(path));
  throw new DownloadError(
    `${path} is no download: give the .zip or .json as published, or the folder that it was unpacked to.`,
  );
}

function plainFile(path: string, size: number): DownloadFile {
  return { name: basename(path), size, open: () => Promise.resolve(createReadStream(path)) };
}

async function openFolder(folder: string): Promise<Download> {
  const names = (await readdir(folder)).filter((name) => /\.(?:csv|json)$/i.test(name)).sort();
  const sized = await Promise.all(
    names.map(async (name) => {
      const path = join(folder, name);
      return { path, file: plainFile(path, (await stat(path)).size) };
    }),
  );
  return whole(
    folder,
    sized.map(({ file }) => file),
    sized.map(({ path }) => path),
    () => undefined,
  );
}

async function openZip(path: string): Promise<Download> {
  const zip = await openPromise(path, { autoClose: false, lazyEntries: true }).catch(
    (error: unknown) => {
      throw new DownloadError(`${path} is no whole zip file (${said(error)}). Download it again.`);
    },
  );
  try {
    const files: DownloadFile[] = [];
    for await (const entry of zip.eachEntry()) {
      if (zip.entryCount > ZIP_BOUNDS.entries) {
        throw new DownloadError(
          `${path} holds ${zip.entryCount} files; a download holds a few dozen.`,
        );
      }
      const name = basename(entry.fileName);
      if (!/\.(?:csv|json)$/i.test(name) || /(?:^|\/)__MACOSX\//.test(entry.fileName)) continue;
      checkSize(path, entry);
      if (files.some((file) => file.name === name)) {
        throw new DownloadError(
          `${path} holds ${name} twice, so it cannot be told which is meant.`,
        );
      }
      files.push({ name, size: entry.uncompressedSize, open: () => opened(zip, entry) });
    }
    return whole(path, files, [path], () => zip.close());
  } catch (error) {
    zip.close();
    throw error instanceof DownloadError
      ? error
      : new DownloadError(`${path} is no whole zip file (${said(error)}). Download it again.`);
  }
}

/** What an entry says of itself; that it keeps to it is watched while it is read (`validateEntrySizes`). */
function checkSize(path: string, entry: Entry): void {
  const { fileName, uncompressedSize, compressedSize } = entry;
  if (entry.isEncrypted()) {
    throw new DownloadError(`${fileName} in ${path} is locked with a password.`);
  }
  const times = uncompressedSize / Math.max(1, compressedSize);
  const tooMany = uncompressedSize > ZIP_BOUNDS.smallBytes && times > ZIP_BOUNDS.times;
  if (uncompressedSize > ZIP_BOUNDS.bytes || tooMany) {
    throw new DownloadError(
      `${fileName} in ${path} would unpack to ${Math.round(uncompressedSize / 1e6)} MB, ${Math.round(times)} ` +
        `times its size; published downloads stay below ${ZIP_BOUNDS.times} times. It was not unpacked.`,
    );
  }
}

async function opened(zip: ZipFile, entry: Entry): Promise<Readable> {
  return zip.openReadStreamPromise(entry).catch((error: unknown) => {
    throw new DownloadError(`${entry.fileName} cannot be unpacked (${said(error)}).`);
  });
}

function whole(
  path: string,
  files: readonly DownloadFile[],
  sources: readonly string[],
  close: () => void,
): Download {
  const byName = new Map(files.map((file) => [file.name.toLowerCase(), file]));
  if (byName.has('food.csv')) return { path, kind: 'csv', files: byName, sources, close };
  const json = files.filter(({ name }) => /\.json$/i.test(name));
  if (json.length === 1) {
    return {
      path,
      kind: 'json',
      files: new Map(json.map((file) => [file.name, file])),
      sources:
        sources.length === files.length ? sources.filter((each) => /\.json$/i.test(each)) : sources,
      close,
    };
  }
  throw new DownloadError(
    `${path} holds neither food.csv nor one .json file` +
      (files.length === 0
        ? '.'
        : `, but ${files
            .slice(0, 5)
            .map(({ name }) => name)
            .join(', ')}.`) +
      ' Give the download as published.',
  );
}

function said(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
