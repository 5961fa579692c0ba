import 'server-only';
import type { EpisodeFile } from '#lib/episode/schema';
import { NO_HISTORY, type EpisodeHistory } from '#lib/publish/history';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { instantText } from '#lib/store/from-rows';
import { ALIVE, byIds } from '#lib/store/load';

/**
 * What an episode has been through, the first first: its locks (their snapshots by `readSnapshotText`), copied texts,
 * corrections, and the photos of the readings that its foods have in the file.
 */
export async function readHistory(
  { episode, foods }: EpisodeFile,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<EpisodeHistory> {
  const of = { ...ALIVE, creatorId };
  const lock = { episodeId: episode.id, ...ALIVE };
  const inOrder = { id: 'asc' as const };
  const locks = await database().numbersLock.findMany({
    where: { ...of, episodeId: episode.id },
    orderBy: [{ seq: 'asc' }, inOrder],
    select: {
      id: true,
      seq: true,
      at: true,
      sha256: true,
      schemaVersion: true,
      engineVersion: true,
    },
  });
  const published = await database().published.findMany({
    where: { ...of, lock },
    orderBy: [{ at: 'asc' }, inOrder],
  });
  const corrections = await database().correction.findMany({
    where: { ...of, oldLock: lock, newLock: lock },
    orderBy: inOrder,
  });
  const photos = await byIds(
    foods.map(({ version }) => version.id),
    (some) =>
      database().attachment.findMany({
        where: { ...of, versionId: { in: some } },
        orderBy: inOrder,
      }),
  );
  return {
    ...NO_HISTORY,
    locks: locks.map(({ at, ...row }) => ({ ...row, at: instantText(at) })),
    published: published.map(({ lockId, form, at, text }) => ({
      ...{ lockId, text, at: instantText(at) },
      form: form as EpisodeHistory['published'][number]['form'],
    })),
    corrections: corrections.map(({ oldLockId, newLockId, reason, on }) => ({
      ...{ oldLockId, newLockId, reason, on },
    })),
    photos: photos.map(({ versionId, sha256, mime, name, size }) => ({
      ...{ versionId, sha256, name, size },
      mime: mime as EpisodeHistory['photos'][number]['mime'],
    })),
  };
}

/** The snapshot of a lock, the very text that was hashed; null where it is not there. */
export async function readSnapshotText(
  lockId: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<string | null> {
  const found = await database().numbersLock.findFirst({
    where: { id: lockId, creatorId, ...ALIVE },
    select: { snapshot: true },
  });
  return found?.snapshot ?? null;
}
