import type { Figure } from '#lib/figures/figure';
import type { LockStanding } from '#lib/lock/lock-standing';

/** What a card is about. */
export const CARD_KINDS = [
  'dish',
  'day',
  'ingredients',
  'step',
  'swap',
  'correction',
  'thumbnail',
] as const;
export type CardKind = (typeof CARD_KINDS)[number];

/** A number as a card shows it; always with its unit. */
export interface CardNumber {
  /** "protein"; energy is known by its unit. */
  readonly label: string;
  /** "at least", "at most", or nothing. */
  readonly hedge: string;
  /** With its mark: "846", "846†"; null where it is open. */
  readonly number: string | null;
  readonly unit: string;
  /** "likely 829–863"; empty where the number says it all or is open. */
  readonly range: string;
  /** Bounds of its whisker; null where it has none. */
  readonly whisker: Pick<Figure, 'value' | 'low' | 'high' | 'likelyLow' | 'likelyHigh'> | null;
}

/** A line of a list: words, and what belongs to them. */
export interface CardRow {
  readonly words: string;
  /** "397 g raw"; empty where the words say it all. */
  readonly amount: string;
}

/** An old and a new value, as text, of one unit. */
export interface CardChange {
  readonly before: string;
  readonly after: string;
  readonly unit: string;
}

/**
 * A card, without where it stands and how large it is. All its words have a form in the shipped fonts; what had none is
 * named in `lost`. Made by `cardsOf`, `swapCard`, `swapTableCard` and `correctionCard`.
 */
export interface Card {
  readonly kind: CardKind;
  /** Of which segment; null for the whole episode. */
  readonly segmentId: string | null;
  /** The frame of the cut from which it belongs; null where its segment says it, or nobody. */
  readonly atFrame: number | null;
  /** What its file is called after its place: "barley-skillet-macros". */
  readonly name: string;
  /** The line above the title: "the whole dish". */
  readonly kicker: string;
  readonly title: string;
  readonly standing: LockStanding;
  readonly lead: CardNumber | null;
  readonly others: readonly CardNumber[];
  readonly change: CardChange | null;
  /** One sentence or two. */
  readonly say: string;
  readonly rows: readonly CardRow[];
  /** Remarks under it: why a number is open, what a mark means. */
  readonly notes: readonly string[];
  readonly lost: readonly string[];
}

/** Words that mark a card whose numbers may not be the published ones. */
export const STANDING_MARK: Readonly<Record<LockStanding, string | null>> = {
  draft: 'not locked',
  locked: null,
  broken: 'lock broken',
};
