import { v7 as uuid } from 'uuid';
import type { MadeEntry } from './entry';
import { inMadeOrder, type Waiting, type WaitingStore } from './waiting-store';

/** Keeps entries for as long as the page stands open; a device of its own each time. */
export function memoryStore<E extends MadeEntry>(): WaitingStore<E> {
  const deviceId = uuid();
  const waiting = new Map<string, Waiting<E>>();
  let lastSeq = 0;
  return {
    add(destination, make) {
      lastSeq += 1;
      const event = make(deviceId, lastSeq);
      waiting.set(event.id, { ...destination, id: event.id, event, refused: null });
      return Promise.resolve(event);
    },
    all: () => Promise.resolve(inMadeOrder([...waiting.values()])),
    remove(ids) {
      for (const id of ids) waiting.delete(id);
      return Promise.resolve();
    },
    refuse(id, why) {
      const found = waiting.get(id);
      if (found) waiting.set(id, { ...found, refused: why });
      return Promise.resolve();
    },
    renew(id) {
      const found = waiting.get(id);
      if (found) {
        lastSeq += 1;
        const event = { ...found.event, deviceId, deviceSeq: lastSeq };
        waiting.set(id, { ...found, event, refused: null });
      }
      return Promise.resolve();
    },
  };
}
