import type { MadeEntry } from './entry';
import type { Destination } from './waiting-store';

/** What the server says of entries that were sent; what it does not name has not arrived. */
export interface SendAnswer {
  /** Ids of those that it has now, from this or an earlier sending. */
  readonly arrived: readonly string[];
  readonly refused: readonly { readonly id: string; readonly why: string }[];
}

/** What another device (or this one) has entered, as the server tells it. */
export interface News<E extends MadeEntry> {
  readonly cursor: number;
  readonly whole: boolean;
  readonly events: readonly E[];
  readonly gone: readonly string[];
}

export interface Following {
  /** Asks at once. */
  ask(): void;
  stop(): void;
}

export interface Listener<E extends MadeEntry> {
  /** The cursor from which to tell. */
  after(): number;
  heard(news: News<E>): void;
  lost(error: unknown): void;
}

/** The server answered that this device is not let in; sending again helps only once it is. */
export class ShutOut extends Error {}

/** The way between a device and the server. Both calls may fail at any point; nothing is lost by it. */
export interface Transport<E extends MadeEntry> {
  /** Rejects where no answer came; then it is sent again, and arrives once all the same. */
  send(to: Destination, events: readonly E[]): Promise<SendAnswer>;
  follow(of: Destination, listener: Listener<E>): Following;
}
