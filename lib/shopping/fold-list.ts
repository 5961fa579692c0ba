import type {
  InsteadEvent,
  ListEvent,
  PaidEvent,
  TickedEvent,
  UntickedEvent,
} from '#lib/shopping/list-events';

/** An entry that says whether something lies in the basket. */
export type BasketEvent = TickedEvent | UntickedEvent | InsteadEvent;

/**
 * The state of a shopping list as plain data: what the latest entry says of each food, what was paid, and what was
 * photographed and put away. Two states merge into one, so devices need no order and no clock in common.
 */
export interface ListState {
  /** By food, the latest entry. */
  readonly basket: Readonly<Record<string, BasketEvent>>;
  /** By shop and food, the latest entry. */
  readonly paid: Readonly<Record<string, PaidEvent>>;
  /** By food, the hashes of photos of labels, in order. */
  readonly photos: Readonly<Record<string, readonly string[]>>;
  /** Entries whose goods were put away, in order. */
  readonly putAway: readonly string[];
}

export const EMPTY_LIST_STATE: ListState = { basket: {}, paid: {}, photos: {}, putAway: [] };

/** The state after entries, in whatever order and however often each arrived. */
export function foldList(events: readonly ListEvent[]): ListState {
  return events.reduce((state, event) => mergeLists(state, stateOf(event)), EMPTY_LIST_STATE);
}

function stateOf(event: ListEvent): ListState {
  switch (event.kind) {
    case 'ticked':
    case 'unticked':
    case 'instead':
      return { ...EMPTY_LIST_STATE, basket: { [event.foodId]: event } };
    case 'paid': {
      const key = JSON.stringify([event.payload.shopId, event.foodId]);
      return { ...EMPTY_LIST_STATE, paid: { [key]: event } };
    }
    case 'photographed':
      return { ...EMPTY_LIST_STATE, photos: { [event.foodId]: [event.payload.photoSha256] } };
    case 'putAway':
      return { ...EMPTY_LIST_STATE, putAway: [event.payload.eventId] };
  }
}

/**
 * Two states as one: of each food and each payment the later entry, of photos and of what was put away all.
 *
 * Law: it commutes, is associative and idempotent.
 */
export function mergeLists(a: ListState, b: ListState): ListState {
  return {
    basket: mergeRecords(a.basket, b.basket, later),
    paid: mergeRecords(a.paid, b.paid, later),
    photos: mergeRecords(a.photos, b.photos, union),
    putAway: union(a.putAway, b.putAway),
  };
}

/** Keys in order, so that equal states are equal data. */
function mergeRecords<T>(
  a: Readonly<Record<string, T>>,
  b: Readonly<Record<string, T>>,
  merge: (one: T, other: T) => T,
): Readonly<Record<string, T>> {
  const found = new Map(Object.entries(a));
  for (const [key, value] of Object.entries(b)) {
    const known = found.get(key);
    found.set(key, known === undefined ? value : merge(known, value));
  }
  return Object.fromEntries([...found].sort(([x], [y]) => (x < y ? -1 : 1)));
}

const union = (a: readonly string[], b: readonly string[]) => [...new Set([...a, ...b])].sort();

/** By its instant; where two are of one, by device and number, so that every device takes the same for the later. */
function later<E extends ListEvent>(a: E, b: E): E {
  const keys = (event: E) => [event.at, event.deviceId, event.id] as const;
  if (a.at === b.at && a.deviceId === b.deviceId && a.deviceSeq !== b.deviceSeq) {
    return a.deviceSeq > b.deviceSeq ? a : b;
  }
  const [x, y] = [keys(a), keys(b)];
  const at = x.findIndex((value, index) => value !== y[index]);
  return at >= 0 && (x[at] ?? '') < (y[at] ?? '') ? b : a;
}

/** How a food of a list stands. */
export type BasketStanding = 'open' | 'inBasket' | 'instead' | 'putAway';

/** Whether a food is still to be bought, lies in the basket (itself, or something else for it), or is put away. */
export function standingOf(state: ListState, foodId: string): BasketStanding {
  const latest = state.basket[foodId];
  if (!latest || latest.kind === 'unticked') return 'open';
  if (state.putAway.includes(latest.id)) return 'putAway';
  return latest.kind === 'instead' ? 'instead' : 'inBasket';
}
