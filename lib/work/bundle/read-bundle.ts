import { createHash } from 'node:crypto';
import type { Readable } from 'node:stream';
import { openPromise, type Entry, type ZipFile } from 'yauzl';
import { parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { LARGEST_PHOTO } from '#lib/foods/photo-kinds';
import { NO_HISTORY, parseHistory, type EpisodeHistory } from '#lib/publish/history';
import { failed, ok, type Problem, type Result } from '#lib/result';

/** An episode's bundle, open: what it says of itself was read, locks and photos are read when asked for. */
export interface OpenBundle {
  readonly file: EpisodeFile;
  readonly history: EpisodeHistory;
  /** Canonical JSON of a lock, the very bytes that were hashed. */
  readonly snapshot: (sha256: string) => Promise<Result<string>>;
  /** Bytes of a photo. */
  readonly photo: (sha256: string) => Promise<Result<Uint8Array>>;
  readonly close: () => void;
}

/** Bounds of a bundle. An episode file has a few hundred kB, a lock half a MB (common practice, no source). */
export const BUNDLE_BOUNDS = {
  entries: 10_000,
  episodeBytes: 20_000_000,
  historyBytes: 50_000_000,
  lockBytes: 20_000_000,
  /** All locks together, since they are written into the store in one act. */
  locksBytes: 400_000_000,
} as const;

const EPISODE = 'episode.json';
const HISTORY = 'history.json';
/** What is read of a bundle. All else in it is for people and is never unpacked. */
const READ = /^(?:episode\.json|history\.json|locks\/[0-9a-f]{64}\.json|photos\/[0-9a-f]{64})$/;

export const lockEntryName = (sha256: string) => `locks/${sha256}.json`;
export const photoEntryName = (sha256: string) => `photos/${sha256}`;

/**
 * Opens a bundle as `bundleStream` made it, or refuses it in words that say what is wrong and where: no zip, no episode
 * in it, a file twice, a path that leads elsewhere, more than a bundle holds, JSON of another shape, a lock or photo
 * that the history names and that is missing. Only what was asked for is ever unpacked, and never more of it than it
 * says and may have.
 * @param path of a file of this machine
 */
export async function openBundle(path: string): Promise<Result<OpenBundle>> {
  let zip: ZipFile;
  try {
    zip = await openPromise(path, { autoClose: false, lazyEntries: true });
  } catch (error) {
    return refused('', `This is no whole zip file (${said(error)}).`);
  }
  const opened = await readOpened(zip).catch((error: unknown) => {
    return refused('', `This zip file cannot be read (${said(error)}).`);
  });
  if (!opened.ok) zip.close();
  return opened;
}

async function readOpened(zip: ZipFile): Promise<Result<OpenBundle>> {
  if (zip.entryCount > BUNDLE_BOUNDS.entries) {
    return refused(
      '',
      `It holds ${String(zip.entryCount)} files; the zip of an episode holds a few dozen.`,
    );
  }
  const entries = new Map<string, Entry>();
  for await (const entry of zip.eachEntry()) {
    const { fileName } = entry;
    if (!READ.test(fileName)) continue;
    if (entries.has(fileName)) return refused(fileName, 'It is there twice.');
    if (entry.isEncrypted()) return refused(fileName, 'It is locked with a password.');
    entries.set(fileName, entry);
  }
  const read = (name: string, most: number) => readEntry(zip, name, entries.get(name), most);
  const episode = await read(EPISODE, BUNDLE_BOUNDS.episodeBytes);
  if (!episode.ok) return episode;
  const file = parseEpisodeFile(Buffer.from(episode.value).toString('utf8'));
  if (!file.ok) return { ok: false, problems: file.problems.map(within(EPISODE)) };
  let history: Result<EpisodeHistory> = ok(NO_HISTORY);
  if (entries.has(HISTORY)) {
    const text = await read(HISTORY, BUNDLE_BOUNDS.historyBytes);
    history = text.ok ? parseHistory(Buffer.from(text.value).toString('utf8')) : text;
  }
  if (!history.ok) return history;
  const missing = missingProblems(history.value, entries);
  if (missing.length > 0) return { ok: false, problems: missing };
  return ok({
    ...{ file: file.value, history: history.value },
    snapshot: async (sha256) => {
      const bytes = await hashed(sha256, read, lockEntryName(sha256), BUNDLE_BOUNDS.lockBytes);
      return bytes.ok ? ok(Buffer.from(bytes.value).toString('utf8')) : bytes;
    },
    photo: (sha256) => hashed(sha256, read, photoEntryName(sha256), LARGEST_PHOTO),
    close: () => zip.close(),
  });
}

function missingProblems(
  { locks, photos }: EpisodeHistory,
  entries: ReadonlyMap<string, Entry>,
): Problem[] {
  const names = [
    ...locks.map(({ sha256 }) => lockEntryName(sha256)),
    ...photos.map(({ sha256 }) => photoEntryName(sha256)),
  ];
  const missing = names
    .filter((name) => !entries.has(name))
    .map((name) => problem(name, 'history.json names it, and it is not in the zip.'));
  const bytes = locks
    .map(({ sha256 }) => entries.get(lockEntryName(sha256))?.uncompressedSize ?? 0)
    .reduce((sum, each) => sum + each, 0);
  if (bytes <= BUNDLE_BOUNDS.locksBytes) return missing;
  const most = megabytes(BUNDLE_BOUNDS.locksBytes);
  return [
    ...missing,
    problem('locks', `They would unpack to ${megabytes(bytes)}, more than ${most}.`),
  ];
}

type ReadEntry = (name: string, most: number) => Promise<Result<Uint8Array>>;

async function hashed(
  sha256: string,
  read: ReadEntry,
  name: string,
  most: number,
): Promise<Result<Uint8Array>> {
  const bytes = await read(name, most);
  if (!bytes.ok) return bytes;
  if (createHash('sha256').update(bytes.value).digest('hex') === sha256) return bytes;
  return refused(name, 'Its bytes are not those that its name says (SHA-256).');
}

/** The bytes of an entry: never more than it says of itself, and that never more than it may have. */
async function readEntry(
  zip: ZipFile,
  name: string,
  entry: Entry | undefined,
  most: number,
): Promise<Result<Uint8Array>> {
  if (!entry) return refused(name, 'It is not in the zip.');
  if (entry.uncompressedSize > most) {
    const size = megabytes(entry.uncompressedSize);
    return refused(name, `It would unpack to ${size}, more than ${megabytes(most)}.`);
  }
  try {
    // `validateEntrySizes` ends the stream where it gives more or less than the entry says.
    return ok(await bytesOf(await zip.openReadStreamPromise(entry)));
  } catch (error) {
    return refused(name, `It cannot be unpacked (${said(error)}).`);
  }
}

async function bytesOf(stream: Readable): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of stream as AsyncIterable<Uint8Array>) chunks.push(chunk);
  return Buffer.concat(chunks);
}

const megabytes = (bytes: number) => `${String(Math.ceil(bytes / 1e6))} MB`;

function problem(path: string, message: string): Problem {
  return { path, code: 'bundle', message };
}

const refused = (path: string, message: string) => failed(problem(path, message));

const within =
  (name: string) =>
  (each: Problem): Problem => ({ ...each, path: `${name} ${each.path}`.trim() });

function said(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
