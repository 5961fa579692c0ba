import { useEffect, useRef, useState } from 'react';
import { startSync, type DeviceSync, type SyncParts, type SyncState } from './device-sync';
import type { MadeEntry } from './entry';
import { tabNeighbours } from './neighbours';
import type { OpenStore } from './open-store';
import type { News, Transport } from './transport';

/** A kind of log as this program keeps it in step; one for all that a page shows. */
export interface LogKind<E extends MadeEntry> {
  /** Opens what waits on this device; asked once, since what the browser keeps nothing of outlives going to and fro. */
  readonly store: () => Promise<OpenStore<E>>;
  readonly transport: Transport<E>;
  readonly prepare: SyncParts<E>['prepare'];
  /** Before a log's id: the name by which the tabs of a browser speak of it. */
  readonly name: string;
}

export type Acts<E extends MadeEntry> = Pick<DeviceSync<E>, 'enter' | 'sendAgain' | 'throwAway'>;

/** The state of a log on this device, kept in step with the server, and what can be entered. */
export function useSync<E extends MadeEntry>(
  kind: LogKind<E>,
  address: string,
  logId: string,
  first: News<E>,
): [SyncState<E>, Acts<E>] {
  const [state, setState] = useState<SyncState<E>>({
    ready: false,
    cursor: first.cursor,
    known: first.events,
    waiting: [],
    connected: true,
    letIn: true,
    lasts: true,
  });
  const [atFirst] = useState(first);
  const sync = useRef<DeviceSync<E> | null>(null);
  useEffect(() => {
    const started = startSync(
      {
        destination: { address, logId },
        store: kind.store(),
        transport: kind.transport,
        neighbours: tabNeighbours<E>(`${kind.name} ${logId}`),
        now: () => new Date(),
        prepare: kind.prepare,
        changed: setState,
      },
      atFirst,
    );
    sync.current = started;
    const seen = () => {
      if (document.visibilityState === 'visible') started.nudge();
    };
    window.addEventListener('online', started.nudge);
    window.addEventListener('pageshow', seen);
    document.addEventListener('visibilitychange', seen);
    return () => {
      window.removeEventListener('online', started.nudge);
      window.removeEventListener('pageshow', seen);
      document.removeEventListener('visibilitychange', seen);
      started.stop();
    };
  }, [kind, address, logId, atFirst]);

  const waits = state.waiting.length > 0;
  useEffect(() => {
    if (!waits) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, [waits]);

  const withSync = async (work: (started: DeviceSync<E>) => Promise<void>) => {
    if (sync.current) await work(sync.current);
  };
  return [
    state,
    {
      enter: (entry) => withSync((started) => started.enter(entry)),
      sendAgain: (id) => withSync((started) => started.sendAgain(id)),
      throwAway: (id) => withSync((started) => started.throwAway(id)),
    },
  ];
}
