import type { InsteadEvent, ListEvent, TickedEvent } from '#lib/shopping/list-events';
import type { ListState } from '#lib/shopping/fold-list';

/** A lot that bought goods become, with the one move that brings them in. */
export interface NewLot {
  readonly lotId: string;
  readonly moveId: string;
  readonly foodId: string;
  readonly mg: number;
}

/** Entries whose goods lie in the basket and are to be put away, in the order of their foods. */
export function toPutAway(state: ListState): readonly (TickedEvent | InsteadEvent)[] {
  return Object.values(state.basket).filter(
    (event): event is TickedEvent | InsteadEvent =>
      event.kind !== 'unticked' && !state.putAway.includes(event.id),
  );
}

/**
 * The lots that the goods of an entry become, one for each kind of pack. Their ids follow from the entry's, so that
 * they are there once, whoever puts them away and however often.
 * @returns why it cannot be done: nobody knows how much it is, or which food was taken instead
 */
export function lotsOf(event: ListEvent): readonly NewLot[] | 'amount-open' | 'food-open' {
  if (event.kind !== 'ticked' && event.kind !== 'instead') return [];
  const foodId = event.kind === 'ticked' ? event.foodId : event.payload.takenFoodId;
  if (foodId === null) return 'food-open';
  const { packs } = event.payload;
  if (packs.length === 0 || packs.some(({ mg }) => mg === null)) return 'amount-open';
  return packs.map(({ mg }, at) => ({
    lotId: `l${at}-${event.id}`,
    moveId: `b${at}-${event.id}`,
    foodId,
    mg: mg ?? 0,
  }));
}
