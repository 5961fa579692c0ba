import { v7 as uuid } from 'uuid';
import type { MadeEntry, Pressed } from './entry';
import type { OpenStore } from './open-store';
import { ShutOut, type News, type Transport } from './transport';
import type { Destination, Waiting } from './waiting-store';

export interface SyncState<E extends MadeEntry> {
  /** False until the device's own store is open; what is pressed before is kept all the same. */
  readonly ready: boolean;
  /** The place in the journal up to which this device has heard: it grows with any change, of whatever. */
  readonly cursor: number;
  /** What the server has of this log. */
  readonly known: readonly E[];
  /** What waits on this device, of every log; refused ones included. */
  readonly waiting: readonly Waiting<E>[];
  /** Whether the last question or sending was answered. */
  readonly connected: boolean;
  /** Whether the server takes anything from this device, which must have been let in. */
  readonly letIn: boolean;
  /** Whether what waits outlives this page. */
  readonly lasts: boolean;
}

export interface DeviceSync<E extends MadeEntry> {
  /** Keeps an entry. */
  enter(entry: Pressed<E>): Promise<void>;
  sendAgain(id: string): Promise<void>;
  throwAway(id: string): Promise<void>;
  /** The network may be back, or the page is seen again: send and ask at once. */
  nudge(): void;
  stop(): void;
}

/** Other pages of this browser with the same store. */
export interface Neighbours<E extends MadeEntry> {
  tell(arrived: readonly E[]): void;
  hear(listener: (arrived: readonly E[]) => void): void;
  close(): void;
}

export interface SyncParts<E extends MadeEntry> {
  readonly destination: Destination;
  readonly store: Promise<OpenStore<E>>;
  readonly transport: Transport<E>;
  readonly neighbours: Neighbours<E>;
  readonly now: () => Date;
  /** The entry as it is kept, without its device's id and numbers: its words without what cannot be stored, and its time. */
  readonly prepare: (
    pressed: Pressed<E>,
    now: Date,
    known: readonly E[],
  ) => Omit<E, 'id' | 'deviceId' | 'deviceSeq'>;
  readonly changed: (state: SyncState<E>) => void;
}

/** Entries of one sending at most, and their length as text: together they stay below what the server reads. */
export const BATCH = 20;
export const BATCH_LENGTH = 20_000;

/** Between attempts, in milliseconds: each twice as long as the last, up to the longest. */
const FIRST_PAUSE_MS = 1_000;
const LONGEST_PAUSE_MS = 15_000;

/**
 * Keeps a device and the server in step. An entry goes into the store first, then to the server, again
 * and again until the server names it, and only then out of the store.
 */
export function startSync<E extends MadeEntry>(parts: SyncParts<E>, first: News<E>): DeviceSync<E> {
  const { destination, transport, neighbours, now } = parts;
  const known = new Map(first.events.map((event) => [event.id, event]));
  /** Named by the server; a store that would not let go of them must not have them sent for ever. */
  const named = new Set<string>();
  let cursor = first.cursor;
  let waiting: readonly Waiting<E>[] = [];
  /** Whether the last question, and the last sending, was answered. */
  let heard = true;
  let sent = true;
  let letIn = true;
  let store: OpenStore<E> | null = null;
  let failures = 0;
  let sending: Promise<void> | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let stopped = false;

  const show = () => {
    if (stopped) return;
    const lasts = store?.lasts() ?? true;
    const connected = heard && sent;
    const ready = store !== null;
    const heardOf = { cursor, known: [...known.values()], waiting };
    parts.changed({ ready, ...heardOf, connected, letIn, lasts });
  };
  const reread = async () => {
    waiting = (await (await parts.store).all()).filter(({ id }) => !named.has(id));
    show();
  };
  const learn = (events: readonly E[]) => {
    for (const event of events) known.set(event.id, event);
  };
  const own = (batch: readonly Waiting<E>[]) =>
    batch.filter(({ logId }) => logId === destination.logId).map(({ event }) => event);

  const sendBatch = async (batch: readonly Waiting<E>[], to: Destination) => {
    const answer = await transport.send(
      { address: to.address, logId: to.logId },
      batch.map(({ event }) => event),
    );
    const arrived = batch.filter(({ id }) => answer.arrived.includes(id));
    const refused = answer.refused.filter(({ id }) => batch.some((entry) => entry.id === id));
    if (arrived.length + refused.length === 0) throw new Error('The answer names no entry.');
    for (const { id } of arrived) named.add(id);
    learn(own(arrived));
    const kept = await parts.store;
    await kept.remove(arrived.map(({ id }) => id));
    for (const { id, why } of refused) await kept.refuse(id, why);
    neighbours.tell(own(arrived));
  };
  const sendAll = async () => {
    clearTimeout(timer);
    try {
      for (;;) {
        await reread();
        const open = waiting.filter(({ refused }) => refused === null);
        const [to] = open;
        if (to === undefined) sent = true;
        if (to === undefined || stopped) break;
        const together = open.filter(
          ({ address, logId }) => address === to.address && logId === to.logId,
        );
        await sendBatch(firstOf(together), to);
        sent = true;
        letIn = true;
        failures = 0;
      }
    } catch (error) {
      sent = false;
      letIn = !(error instanceof ShutOut);
      failures += 1;
      const pause = Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** (failures - 1));
      if (!stopped) timer = setTimeout(() => void flush(), pause);
      show();
    }
  };
  /** One sending at a time, so that entries arrive in order; what was pressed meanwhile is in its loop. */
  const flush = () => {
    sending ??= sendAll().finally(() => {
      sending = null;
    });
    return sending;
  };

  const following = transport.follow(destination, {
    after: () => cursor,
    heard(news) {
      if (news.whole) known.clear();
      learn(news.events);
      for (const id of news.gone) known.delete(id);
      cursor = news.cursor;
      const back = !heard;
      heard = true;
      letIn = true;
      show();
      if (back) void flush();
    },
    lost(error) {
      heard = false;
      letIn = !(error instanceof ShutOut);
      show();
    },
  });
  neighbours.hear((arrived) => {
    learn(arrived);
    void reread();
  });
  void parts.store.then(async (opened) => {
    store = opened;
    await flush();
  });

  const enter = async (pressed: Pressed<E>) => {
    const opened = await parts.store;
    const seen = [...known.values(), ...waiting.map(({ event }) => event)];
    const entry = parts.prepare(pressed, now(), seen);
    const id = uuid();
    await opened.add(
      destination,
      (deviceId, deviceSeq) => ({ ...entry, id, deviceId, deviceSeq }) as E,
    );
    await reread();
    neighbours.tell([]);
    void resend();
  };
  /** Joins a sending that is under way, and looks once more after it: it may have read the store before. */
  const resend = async () => {
    await sending;
    await flush();
  };

  return {
    enter,
    async sendAgain(id) {
      await (await parts.store).renew(id);
      await resend();
    },
    async throwAway(id) {
      await (await parts.store).remove([id]);
      await reread();
    },
    nudge() {
      following.ask();
      void flush();
    },
    stop() {
      stopped = true;
      clearTimeout(timer);
      following.stop();
      neighbours.close();
    },
  };
}

/** The first entries that fit into one sending, at least one. */
function firstOf<E extends MadeEntry>(waiting: readonly Waiting<E>[]): readonly Waiting<E>[] {
  let length = 0;
  const fits = waiting.slice(0, BATCH).findIndex(({ event }) => {
    length += JSON.stringify(event).length;
    return length > BATCH_LENGTH;
  });
  return waiting.slice(0, fits < 0 ? BATCH : Math.max(1, fits));
}
