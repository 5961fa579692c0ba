import { instantAfter, storable, type DayEvent, type Entry } from '#lib/shoot/day-log';
import type { SyncState } from '../../../../../_sync/device-sync';
import { lastingStore } from '../../../../../_sync/lasting-store';
import { openStore, type OpenStore } from '../../../../../_sync/open-store';
import { pollingTransport } from '../../../../../_sync/polling-transport';
import type { News } from '../../../../../_sync/transport';
import type { LogKind } from '../../../../../_sync/use-sync';
import type { Waiting } from '../../../../../_sync/waiting-store';

export type DayState = SyncState<DayEvent>;
export type DayNews = News<DayEvent>;
export type DayWaiting = Waiting<DayEvent>;

let opened: Promise<OpenStore<DayEvent>> | null = null;

/** How the log of a filming day is kept in step. */
export const DAY_LOG: LogKind<DayEvent> = {
  store: () => (opened ??= openStore(() => lastingStore<DayEvent>('scale-and-slate-day'))),
  transport: pollingTransport<DayEvent>({ sent: 'dayId', asked: 'day' }),
  prepare,
  name: 'slate-day',
};

/** Words lose what cannot be stored and the blanks around them. */
function prepare(pressed: Entry, now: Date, known: readonly DayEvent[]) {
  const entry = wordsStorable(pressed);
  return { ...entry, at: instantAfter(now, known, entry) };
}

function wordsStorable(entry: Entry): Entry {
  const plain = (text: string) => storable(text).trim();
  if (entry.kind === 'note') return { ...entry, payload: { text: plain(entry.payload.text) } };
  if (entry.kind !== 'pickup') return entry;
  return { ...entry, payload: { ...entry.payload, text: plain(entry.payload.text) } };
}
