import type { MadeEntry } from './entry';

/** Where an entry goes: the address that takes it, and the log there: a filming day, a shopping list. */
export interface Destination {
  readonly address: string;
  readonly logId: string;
}

/** An entry that the server has not named yet. */
export interface Waiting<E extends MadeEntry> extends Destination {
  readonly id: string;
  readonly event: E;
  /** Why the server would not have it; null while it is (or will be) sent. */
  readonly refused: string | null;
}

/** Makes an entry once its device and its number are known. */
export type MakeEvent<E extends MadeEntry> = (deviceId: string, deviceSeq: number) => E;

/** Entries between the press and the server's word that they have arrived. */
export interface WaitingStore<E extends MadeEntry> {
  /** Gives the entry its number and keeps it, both or neither; no two entries of a device share one. */
  add(destination: Destination, make: MakeEvent<E>): Promise<E>;
  /** All that wait, of every log, in the order they were made. */
  all(): Promise<readonly Waiting<E>[]>;
  remove(ids: readonly string[]): Promise<void>;
  refuse(id: string, why: string): Promise<void>;
  /** Lets a refused entry be sent again, under a new number. */
  renew(id: string): Promise<void>;
}

/** The order in which entries of a device were made. */
export function inMadeOrder<E extends MadeEntry>(waiting: readonly Waiting<E>[]): Waiting<E>[] {
  return [...waiting].sort(
    (a, b) =>
      (a.event.deviceId < b.event.deviceId ? -1 : a.event.deviceId > b.event.deviceId ? 1 : 0) ||
      a.event.deviceSeq - b.event.deviceSeq,
  );
}
