/**
 * What devices enter on a shopping list, as events that they make themselves, in the shop, with or without signal.
 * The state of the list is their fold (`fold-list.ts`), whatever way and in whatever order they arrived.
 */

/** Which list: of one episode, or of all filmed between two dates, both included. */
export type ListScope = `episode:${string}` | `span:${string}..${string}`;

interface Made {
  /** Made by the device, the same each time that the event is sent. */
  readonly id: string;
  readonly scope: ListScope;
  readonly deviceId: string;
  /** Counts up from 1 on its device. */
  readonly deviceSeq: number;
  /** An instant as `toISOString` writes it, so that text order is the order of time; see `nextAt`. */
  readonly at: string;
}

/** What was taken: so many of a pack, and what they hold as the kitchen counts it (drained for a tin). */
export interface TakenPacks {
  /** Null for what was weighed loose, or is of no pack that is known. */
  readonly packId: string | null;
  readonly count: number;
  /** Of all of them; null where nobody knows. */
  readonly mg: number | null;
}

/** It lies in the basket. */
export interface TickedEvent extends Made {
  readonly kind: 'ticked';
  readonly foodId: string;
  readonly payload: { readonly packs: readonly TakenPacks[] };
}

/** It lies there no more. */
export interface UntickedEvent extends Made {
  readonly kind: 'unticked';
  readonly foodId: string;
  readonly payload: Readonly<Record<string, never>>;
}

/** It was not there, and something else was taken. */
export interface InsteadEvent extends Made {
  readonly kind: 'instead';
  readonly foodId: string;
  readonly payload: {
    /** What was taken, in the words of its front. */
    readonly name: string;
    /** The food that it is, where that is known already. */
    readonly takenFoodId: string | null;
    readonly packs: readonly TakenPacks[];
    /** Values of its label as typed, by nutrient, and what they are for. */
    readonly label: {
      readonly basis: 'per100g' | 'per100ml' | 'serving';
      readonly servingMg: number | null;
      readonly values: Readonly<Record<string, string>>;
    } | null;
    /** The hash of a photo of its label, to be typed from later. */
    readonly photoSha256: string | null;
  };
}

/** What was paid: for one food, or in one shop for all. The last of each counts; a null amount takes it back. */
export interface PaidEvent extends Made {
  readonly kind: 'paid';
  readonly foodId: string | null;
  readonly payload: {
    readonly shopId: string | null;
    readonly minor: number | null;
    readonly currency: string;
    /** The local date on the receipt. */
    readonly on: string;
  };
}

/** A photo of a label; its bytes follow under their hash. */
export interface PhotographedEvent extends Made {
  readonly kind: 'photographed';
  readonly foodId: string;
  readonly payload: { readonly photoSha256: string };
}

/** What lay in the basket was put away: `eventId` names the entry by which it lay there. */
export interface PutAwayEvent extends Made {
  readonly kind: 'putAway';
  readonly foodId: string;
  readonly payload: { readonly eventId: string };
}

export type ListEvent =
  TickedEvent | UntickedEvent | InsteadEvent | PaidEvent | PhotographedEvent | PutAwayEvent;

export const LIST_KINDS = [
  'ticked',
  'unticked',
  'instead',
  'paid',
  'photographed',
  'putAway',
] as const satisfies readonly ListEvent['kind'][];

/** An entry in words, as the journal shows it. */
export const LIST_WORDS: Readonly<Record<ListEvent['kind'], string>> = {
  ticked: 'ticked',
  unticked: 'not ticked after all',
  instead: 'something else taken',
  paid: 'paid',
  photographed: 'photo of a label',
  putAway: 'put away',
};

/** `episodeScope('e1')` → `'episode:e1'`. */
export const episodeScope = (episodeId: string): ListScope => `episode:${episodeId}`;

/** `spanScope('2026-05-01', '2026-05-07')` → `'span:2026-05-01..2026-05-07'`. */
export const spanScope = (from: string, to: string): ListScope => `span:${from}..${to}`;

/** What a scope names; null for text that is none. */
export function readScope(
  scope: string,
): { readonly episodeId: string } | { readonly from: string; readonly to: string } | null {
  const episode = /^episode:([\w:.-]{1,64})$/.exec(scope);
  if (episode?.[1]) return { episodeId: episode[1] };
  const span = /^span:(\d{4}-\d\d-\d\d)\.\.(\d{4}-\d\d-\d\d)$/.exec(scope);
  return span?.[1] && span[2] && span[1] <= span[2] ? { from: span[1], to: span[2] } : null;
}

/**
 * The instant that a device gives its next entry: its own clock, but later than every entry that it knows of, so that
 * who sees a tick and takes it back is the later one even with a slow clock.
 * @param clock what the device's clock says, as `toISOString` writes it
 * @example nextAt('2026-05-01T10:00:00.000Z', ['2026-05-01T11:00:00.000Z']) // '2026-05-01T11:00:00.001Z'
 */
export function nextAt(clock: string, known: readonly string[]): string {
  const latest = known.reduce((last, at) => (at > last ? at : last), '');
  return clock > latest ? clock : new Date(Date.parse(latest) + 1).toISOString();
}
