/** What a device makes itself and sends: an entry of a filming day, of a shopping list. */
export interface MadeEntry {
  /** Made by the device, the same each time that it is sent. */
  readonly id: string;
  readonly deviceId: string;
  /** Counts up from 1 on its device. */
  readonly deviceSeq: number;
  /** An instant as `toISOString` writes it, so that text order is the order of time. */
  readonly at: string;
}

type WithoutMade<E> = E extends MadeEntry ? Omit<E, keyof MadeEntry> : never;

/** An entry as it is pressed, before its device gives it an id, a number and a time. */
export type Pressed<E extends MadeEntry> = WithoutMade<E>;
