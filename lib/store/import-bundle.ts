import 'server-only';
import { v7 as uuid } from 'uuid';
import type { EpisodeFile } from '#lib/episode/schema';
import { readPhoto } from '#lib/foods/photo';
import { agreesWithItself } from '#lib/lock/lock-consistency';
import { readSnapshot } from '#lib/lock/locked-snapshot';
import type { EpisodeHistory } from '#lib/publish/history';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { create } from '#lib/store/new-row';
import { fileEdits, importAct } from '#lib/store/import-file';
import { importHistory } from '#lib/store/import-history';
import { ImportIds } from '#lib/store/import-ids';
import { ALIVE } from '#lib/store/load';
import { keepPhoto, photoHash } from '#lib/store/photos';
import { write } from '#lib/store/write';

/** A bundle whose parts are read when they are asked for. */
export interface BundleToImport {
  readonly file: EpisodeFile;
  readonly history: EpisodeHistory;
  readonly snapshot: (sha256: string) => Promise<Result<string>>;
  readonly photo: (sha256: string) => Promise<Result<Uint8Array>>;
}

/** What a bundle became. */
export interface BroughtIn {
  readonly episodeId: string;
  /** Rows have the ids of the bundle and all of its locks are the episode's own; else some are history only. */
  readonly kept: boolean;
}

/**
 * Adds all of an episode's bundle to the store as one act: the episode as its file does, with locks, copied texts,
 * corrections and photos of its labels. Locks name rows by their ids, so these are kept where nothing here has them
 * yet. Where something has, the episode is a second one: everything gets new ids, and the locks are history that holds
 * nothing (`historyOnly`). So is a lock that does not agree with itself: whoever changed it can name any rows.
 */
export async function importBundle(
  bundle: BundleToImport,
  at: Date,
  creatorId: string = DEFAULT_CREATOR_ID,
): Promise<Result<BroughtIn>> {
  const snapshots = await readSnapshots(bundle);
  if (!snapshots.ok) return snapshots;
  const photos = await keepPhotos(bundle);
  if (!photos.ok) return photos;
  const taken = await idsTaken(bundle.file);
  const agreeing = agreeingOf(snapshots.value);
  const locks = { snapshots: snapshots.value, agreeing };
  const kept = taken ? null : await bring(bundle, locks, at, creatorId, true);
  // Anything else of it may be taken too, as a scale or a pack: then it is a second one as well.
  if (kept?.ok) {
    return ok({ episodeId: kept.value, kept: agreeing.size === snapshots.value.size });
  }
  const fresh = await bring(bundle, locks, at, creatorId, false);
  return fresh.ok ? ok({ episodeId: fresh.value, kept: false }) : fresh;
}

/** Whether the episode itself is here, be it taken out: by far the most frequent case. */
async function idsTaken({ episode }: EpisodeFile): Promise<boolean> {
  return (await database().episode.count({ where: { id: episode.id } })) > 0;
}

interface LocksBrought {
  /** By their SHA-256. */
  readonly snapshots: ReadonlyMap<string, string>;
  readonly agreeing: ReadonlySet<string>;
}

/** Hashes of the snapshots whose figures are those of their own inputs. */
function agreeingOf(snapshots: ReadonlyMap<string, string>): ReadonlySet<string> {
  const agreeing = [...snapshots].filter(([, text]) => agreesWithItself(text) === 'agrees');
  return new Set(agreeing.map(([sha256]) => sha256));
}

async function bring(
  { file, history }: BundleToImport,
  { snapshots, agreeing }: LocksBrought,
  at: Date,
  creatorId: string,
  keep: boolean,
): Promise<Result<string>> {
  const ids = new ImportIds(false, keep);
  const brought = await fileEdits(file, at, creatorId, ids);
  if (!brought.ok) return brought;
  const { episodeId, edits } = brought.value;
  const all = [
    ...edits,
    ...importHistory(history, snapshots, agreeing, episodeId, ids),
    ...(await photoEdits(history, creatorId, ids)),
  ];
  if (ids.problems.length > 0) return { ok: false, problems: ids.problems };
  const written = await write(importAct(file, at, creatorId, all));
  return written.ok ? ok(episodeId) : written;
}

/** All snapshots, each of which this version of the program can read: a page must never fail on one. */
async function readSnapshots({
  history,
  snapshot,
}: BundleToImport): Promise<Result<ReadonlyMap<string, string>>> {
  const snapshots = new Map<string, string>();
  for (const { sha256 } of history.locks) {
    if (snapshots.has(sha256)) continue;
    const text = await snapshot(sha256);
    if (!text.ok) return text;
    if (!readSnapshot(text.value)?.file) {
      const message = 'This version of the program cannot read it as a numbers lock.';
      return failed({ path: `locks/${sha256}.json`, code: 'no-lock', message });
    }
    snapshots.set(sha256, text.value);
  }
  return ok(snapshots);
}

/** The photos' bytes on the disk, one at a time, before any row names them. */
async function keepPhotos({ history, photo }: BundleToImport): Promise<Result<number>> {
  const kept = new Set<string>();
  for (const { sha256 } of history.photos) {
    if (kept.has(sha256)) continue;
    const bytes = await photo(sha256);
    if (!bytes.ok) return bytes;
    const read = readPhoto(bytes.value);
    const problem = photoProblem(read, sha256);
    if (problem) return failed(problem);
    const done = await keepPhoto(bytes.value);
    if (!done.ok) return done;
    kept.add(sha256);
  }
  return ok(kept.size);
}

/** Bytes are kept only as this program keeps a photo: without what hides beside its picture. */
function photoProblem(read: ReturnType<typeof readPhoto>, sha256: string): Problem | null {
  const path = `photos/${sha256}`;
  if (!read.ok) return { path, code: 'no-photo', message: read.problems[0]?.message ?? '' };
  if (photoHash(read.value.bytes) === sha256) return null;
  return {
    path,
    code: 'no-photo',
    message: 'It holds more than the parts that its picture needs.',
  };
}

/** Photos attached to the readings that the foods have here; those that are there already are left out. */
async function photoEdits(
  { photos }: EpisodeHistory,
  creatorId: string,
  ids: ImportIds,
): Promise<Edit[]> {
  const edits: Edit[] = [];
  const seen = new Set<string>();
  for (const [at, { versionId: local, sha256, mime, name, size }] of photos.entries()) {
    const versionId = ids.of('version', local, `history.json photos[${String(at)}].versionId`);
    const key = `${versionId} ${sha256}`;
    const there = await database().attachment.count({
      where: { ...ALIVE, creatorId, versionId, sha256 },
    });
    if (there > 0 || seen.has(key)) continue;
    seen.add(key);
    edits.push(create('Attachment', { id: uuid(), versionId, sha256, mime, name, size }));
  }
  return edits;
}
