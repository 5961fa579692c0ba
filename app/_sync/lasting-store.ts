import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { v7 as uuid } from 'uuid';
import type { MadeEntry } from './entry';
import { inMadeOrder, type Waiting, type WaitingStore } from './waiting-store';

const SELF = 'self';

interface Device {
  readonly deviceId: string;
  readonly lastSeq: number;
}

interface Schema<E extends MadeEntry> extends DBSchema {
  readonly device: { key: string; value: Device };
  readonly waiting: { key: string; value: Waiting<E> };
}

type Database<E extends MadeEntry> = IDBPDatabase<Schema<E>>;

/**
 * Keeps entries in the browser's own database, so that a reload, a crash or an empty battery loses none.
 * Number and entry are written in one transaction, which the browser runs one after the other over all
 * its tabs. Rejects where the browser keeps nothing.
 * @param name of the browser's database
 */
export async function lastingStore<E extends MadeEntry>(name: string): Promise<WaitingStore<E>> {
  let open = openDatabase<E>(name);
  await open;
  /** Some browsers close the connection of a page that was in the background: it is opened once more. */
  const using = async <T>(work: (database: Database<E>) => Promise<T>): Promise<T> => {
    try {
      return await work(await open);
    } catch (error) {
      if (!(error instanceof DOMException) || error.name !== 'InvalidStateError') throw error;
      open = openDatabase<E>(name);
      return work(await open);
    }
  };
  return {
    add: (destination, make) =>
      using(async (database) => {
        const tx = both(database);
        const { deviceId, lastSeq } = await nextNumber(tx.objectStore('device'));
        const event = make(deviceId, lastSeq);
        await tx.objectStore('waiting').add({ ...destination, id: event.id, event, refused: null });
        await tx.done;
        return event;
      }),
    all: () => using(async (database) => inMadeOrder(await database.getAll('waiting'))),
    remove: (ids) =>
      using(async (database) => {
        const tx = database.transaction('waiting', 'readwrite');
        await Promise.all([...ids.map((id) => tx.store.delete(id)), tx.done]);
      }),
    refuse: (id, why) =>
      using(async (database) => {
        const tx = database.transaction('waiting', 'readwrite');
        const found = await tx.store.get(id);
        if (found) await tx.store.put({ ...found, refused: why });
        await tx.done;
      }),
    renew: (id) =>
      using(async (database) => {
        const tx = both(database);
        const found = await tx.objectStore('waiting').get(id);
        if (found) {
          const { deviceId, lastSeq } = await nextNumber(tx.objectStore('device'));
          const event = { ...found.event, deviceId, deviceSeq: lastSeq };
          await tx.objectStore('waiting').put({ ...found, event, refused: null });
        }
        await tx.done;
      }),
  };
}

function openDatabase<E extends MadeEntry>(name: string): Promise<Database<E>> {
  return openDB<Schema<E>>(name, 2, {
    upgrade(database, from, _to, tx) {
      if (from < 1) {
        database.createObjectStore('device');
        database.createObjectStore('waiting', { keyPath: 'id' });
      } else void renamed(tx.objectStore('waiting'));
    },
  });
}

interface Renamed<E extends MadeEntry> {
  getAll(): Promise<Waiting<E>[]>;
  put?(entry: Waiting<E>): Promise<unknown>;
}

/** What waits since before had its log under another name. */
async function renamed<E extends MadeEntry>(waiting: Renamed<E>): Promise<void> {
  for (const entry of await waiting.getAll()) {
    const { dayId = entry.logId } = entry as { readonly dayId?: string };
    await waiting.put?.({ ...entry, logId: dayId });
  }
}

/** Over both tables; told as done only once it is on the disk, where the browser can say so. */
function both<E extends MadeEntry>(database: Database<E>) {
  return database.transaction(['device', 'waiting'], 'readwrite', { durability: 'strict' });
}

interface Devices {
  get(key: string): Promise<Device | undefined>;
  put(device: Device, key: string): Promise<unknown>;
}

async function nextNumber(devices: Devices): Promise<Device> {
  const self = (await devices.get(SELF)) ?? { deviceId: uuid(), lastSeq: 0 };
  const next = { ...self, lastSeq: self.lastSeq + 1 };
  await devices.put(next, SELF);
  return next;
}
