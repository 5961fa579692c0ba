import type { Card, CardRow } from '#lib/publish/cards/card';
import { readable, type CardWords } from '#lib/publish/cards/readable';
import type { LockStanding } from '#lib/lock/lock-standing';

/** What a card of a swap or a correction says; all of it text, with numbers as they are published. */
export interface ChangeOnCard {
  /** What the numbers are of: "Barley skillet, one of two". */
  readonly title: string;
  /** Without its unit: "846", "at least 9". */
  readonly before: string;
  readonly after: string;
  /** With what it is of: "kcal", "g protein". */
  readonly unit: string;
  readonly reason?: string;
  /** Other numbers that change with it, a line for each. */
  readonly also?: readonly CardRow[];
  /** The day as read: "30 Nov". */
  readonly on?: string;
  /** Of which segment; left out for the whole episode. */
  readonly segmentId?: string;
  /** The frame of the cut at which the number was said, where it is known. */
  readonly atFrame?: number;
}

/** A card of swaps with one line for each thing. */
export interface SwapsOnCard {
  /** "Skyr pots, a portion"; left out for swaps of several dishes. */
  readonly kicker?: string;
  readonly title: string;
  readonly rows: readonly CardRow[];
}

const BARE = { segmentId: null, atFrame: null, lead: null, others: [] };

/**
 * A card that puts a published number right: the old one struck through, the new one, the reason.
 * @example correctionCard({ title: 'Barley skillet', before: '846', after: '870', unit: 'kcal', on: '30 Nov' }, 'locked')
 */
export function correctionCard(change: ChangeOnCard, standing: LockStanding): Card {
  return changeCard('correction', 'Correction', change, standing);
}

/**
 * A card of one swap: the number before, the number with it, what else it does.
 * @example swapCard({ title: 'With full-fat cheese', before: '423', after: '464', unit: 'kcal' }, 'locked')
 */
export function swapCard(change: ChangeOnCard, standing: LockStanding): Card {
  return changeCard('swap', 'If you swap', change, standing);
}

function changeCard(
  kind: 'swap' | 'correction',
  kicker: string,
  { title, before, after, unit, reason = '', also = [], on, segmentId, atFrame }: ChangeOnCard,
  standing: LockStanding,
): Card {
  const words: CardWords = {
    ...{ kicker: on === undefined ? kicker : `${kicker}, ${on}`, title, say: reason },
    ...{ change: { before, after, unit }, rows: also, notes: [] },
  };
  return {
    ...BARE,
    ...{ kind, standing, name: `${title} ${kind}` },
    ...{ segmentId: segmentId ?? null, atFrame: atFrame ?? null },
    ...readable(words, kicker),
  };
}

/** A card of what swaps do, a line for each. */
export function swapTableCard(
  { kicker = 'Swaps', title, rows }: SwapsOnCard,
  standing: LockStanding,
): Card {
  const words: CardWords = { kicker, title, say: '', change: null, rows, notes: [] };
  return {
    ...BARE,
    ...{ kind: 'swap', standing, name: `${title} swap` },
    ...readable(words, 'Swaps'),
  };
}
