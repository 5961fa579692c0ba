import type { TextKind } from '#lib/episode/edit-schema';
import type { NumberScope } from '#lib/figures/published-numbers';
import type { Nutrient } from '#lib/foods/nutrients';
import type { Statement } from '#lib/claims/statement';

/**
 * What the working says of a statement (MODEL D). It never says that a number is true.
 * `unknown`: the figure is open, incomplete where that matters, or nobody knows what the words are about.
 */
export type Verdict = 'agrees' | 'edge' | 'off' | 'unknown';

/** A text of the episode in which something is said, written or shown. */
export interface SaidText {
  readonly id: string;
  /** `talkingPoint`: a sentence that is planned to be said. */
  readonly kind: TextKind | 'talkingPoint';
  readonly name: string;
}

/** Where a statement stands. */
export interface StatementPlace {
  readonly textId: string;
  readonly kind: SaidText['kind'];
  /** Line of what was pasted, counted from 1. */
  readonly line: number;
  /** In the edit; null where the text has no times. */
  readonly startMs: number | null;
  readonly endMs: number | null;
  /** The dish that is talked about there; null for the day, or where nobody knows. */
  readonly segmentId: string | null;
}

/** What a statement was held against, so that a page can lead to it. */
export type HeldAgainst =
  | { readonly kind: 'figure'; readonly nutrient: Nutrient; readonly scope: NumberScope }
  | { readonly kind: 'line'; readonly segmentId: string; readonly lineId: string }
  | { readonly kind: 'step'; readonly segmentId: string; readonly stepId: string }
  | { readonly kind: 'portions'; readonly segmentId: string }
  | { readonly kind: 'price'; readonly segmentId: string | null }
  | { readonly kind: 'log'; readonly segmentId: string | null }
  | { readonly kind: 'rule'; readonly segmentId: string | null };

/** Another hearing of words that captions may have misheard, and that would agree. */
export interface Misheard {
  /** What may have been said: "fifteen". */
  readonly heard: string;
  /** Why: "captions often write 50 for fifteen". */
  readonly why: string;
}

/** One number of a rule for a claim word, with what the dish has. */
export interface ClaimRow {
  /** "at most 3 g of fat". */
  readonly threshold: string;
  /** What it is counted in: "140 g", "100 kcal of it". */
  readonly per: string;
  /** "2.1 g, likely 1.9–2.3", or why there is none. */
  readonly has: string;
  readonly verdict: Verdict;
}

/** A reference amount that may be meant, with what the word would come to by it. */
export interface ClaimOffer {
  readonly what: string;
  /** As the table says it: "140 g", "1 cup". */
  readonly amount: string;
  /** Null where it is a volume: then somebody has to weigh it, and nothing is known of the verdict. */
  readonly massMg: number | null;
  readonly verdict: Verdict | null;
}

/** How a claim word was judged, and what the person may say so that it can be. */
export interface ClaimWorking {
  /** The provision; null where no rule knows the word. */
  readonly section: string | null;
  readonly rows: readonly ClaimRow[];
  /** Where the rule counts in a reference amount: those that the dish’s title speaks for. */
  readonly offers: readonly ClaimOffer[];
  /** What it would come to judged as a meal or main dish; null where that makes no difference. */
  readonly asMeal: Verdict | null;
}

/** A statement with what the working says of it, in words for the person. */
export interface Judged {
  /** The text's id and the statement's place in it, counted from 0: the same for the same text. */
  readonly id: string;
  readonly place: StatementPlace;
  readonly statement: Statement;
  /** The id of the reading that the person put right; null where none was needed. */
  readonly mendId: string | null;
  readonly verdict: Verdict;
  /** What it was held against, with its range; or "can’t say: …" with the cause. */
  readonly why: string;
  /** How far off: "38 calories more than your breakdown"; null where it is not off. */
  readonly difference: string | null;
  /** The right words to say: "about 610 calories"; null where nothing better can be said. */
  readonly sayInstead: string | null;
  /**
   * `tally`: it is the number that was published for it. `possibleNotLikely`: off, and still within the hard bounds.
   * `toConfirm`: it could be read in two ways, or rests on a food nobody has confirmed.
   */
  readonly remark: 'tally' | 'possibleNotLikely' | 'toConfirm' | null;
  readonly against: HeldAgainst | null;
  /** Only where it is off, most likely first. */
  readonly misheard: readonly Misheard[];
  /** Only of claim words that are said of a dish. */
  readonly claim?: ClaimWorking | undefined;
}
