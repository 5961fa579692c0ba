import 'server-only';
import { v7 as uuid } from 'uuid';
import { HISTORY_SHAPE } from '#lib/lock/lock-consistency';
import { LOCK_SCHEMA_VERSION } from '#lib/lock/numbers-lock';
import type { EpisodeHistory } from '#lib/publish/history';
import type { Edit } from '#lib/store/command';
import { create } from '#lib/store/new-row';
import type { ImportIds } from '#lib/store/import-ids';

/**
 * What an episode has been through as new rows. Snapshots are kept as they are, so that their hash holds; what they
 * name is here only where ids were kept.
 * @param snapshots by their SHA-256
 * @param agreeing of these the ones that agree with themselves; the others hold nothing, whatever the history says of them
 */
export function importHistory(
  { locks, published, corrections }: EpisodeHistory,
  snapshots: ReadonlyMap<string, string>,
  agreeing: ReadonlySet<string>,
  episodeId: string,
  ids: ImportIds,
): Edit[] {
  const rows = new Map(locks.map(({ id }) => [id, ids.fresh(id)]));
  const lockOf = (id: string) => rows.get(id) ?? id;
  return [
    ...locks.map(({ id, at, ...lock }) => {
      const snapshot = snapshots.get(lock.sha256) ?? '';
      const schemaVersion = agreeing.has(lock.sha256) ? LOCK_SCHEMA_VERSION : HISTORY_SHAPE;
      return create('NumbersLock', {
        ...{ ...lock, schemaVersion, id: lockOf(id), episodeId, snapshot, at: new Date(at) },
      });
    }),
    ...published.map(({ lockId, form, at, text }) =>
      create('Published', { id: uuid(), lockId: lockOf(lockId), form, text, at: new Date(at) }),
    ),
    ...corrections.map(({ oldLockId, newLockId, reason, on }) =>
      create('Correction', {
        ...{ id: uuid(), oldLockId: lockOf(oldLockId), newLockId: lockOf(newLockId), reason, on },
      }),
    ),
  ];
}
