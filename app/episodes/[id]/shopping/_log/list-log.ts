import { nextAt, type ListEvent } from '#lib/shopping/list-events';
import { storable } from '#lib/shoot/day-log';
import type { Pressed } from '../../../../_sync/entry';
import { lastingStore } from '../../../../_sync/lasting-store';
import { openStore, type OpenStore } from '../../../../_sync/open-store';
import { pollingTransport } from '../../../../_sync/polling-transport';
import type { News } from '../../../../_sync/transport';
import type { LogKind } from '../../../../_sync/use-sync';

export type ListNews = News<ListEvent>;
export type PressedInList = Pressed<ListEvent>;

let opened: Promise<OpenStore<ListEvent>> | null = null;

/** How what is entered on a shopping list is kept in step. */
export const LIST_LOG: LogKind<ListEvent> = {
  store: () => (opened ??= openStore(() => lastingStore<ListEvent>('scale-and-slate-list'))),
  transport: pollingTransport<ListEvent>({ sent: 'scope', asked: 'list' }),
  prepare: (pressed, now, known) => ({
    ...plain(pressed),
    at: nextAt(
      now.toISOString(),
      known.map(({ at }) => at),
    ),
  }),
  name: 'slate-list',
};

/** Words lose what cannot be stored. */
function plain(pressed: PressedInList): PressedInList {
  if (pressed.kind !== 'instead') return pressed;
  const { payload } = pressed;
  const label = payload.label && {
    ...payload.label,
    values: Object.fromEntries(
      Object.entries(payload.label.values).map(([name, text]) => [name, storable(text)]),
    ),
  };
  return { ...pressed, payload: { ...payload, name: storable(payload.name), label } };
}
