import { useEffect, useRef, useState } from 'react';
import { startDaySync, type DayState, type DaySync } from '../_log/day-sync';
import { tabNeighbours } from '../_log/neighbours';
import { openStore, type OpenStore } from '../_log/open-store';
import { pollingTransport } from '../_log/polling-transport';
import type { News } from '../_log/transport';

/** One for all that this page shows: what the browser keeps nothing of outlives going to and fro. */
let opened: Promise<OpenStore> | null = null;

type Acts = Pick<DaySync, 'enter' | 'sendAgain' | 'throwAway'>;

/** The state of a day on this device, kept in step with the server, and what can be entered. */
export function useDaySync(address: string, dayId: string, first: News): [DayState, Acts] {
  const [state, setState] = useState<DayState>({
    ready: false,
    cursor: first.cursor,
    known: first.events,
    waiting: [],
    connected: true,
    letIn: true,
    lasts: true,
  });
  const [atFirst] = useState(first);
  const sync = useRef<DaySync | null>(null);
  useEffect(() => {
    const started = startDaySync(
      {
        destination: { address, dayId },
        store: (opened ??= openStore()),
        transport: pollingTransport,
        neighbours: tabNeighbours(dayId),
        now: () => new Date(),
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
  }, [address, dayId, atFirst]);

  const waits = state.waiting.length > 0;
  useEffect(() => {
    if (!waits) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, [waits]);

  const withSync = async (work: (started: DaySync) => Promise<void>) => {
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
