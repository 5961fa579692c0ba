import type { LeftWhy } from '#lib/draft/draft';
import type { Offered } from '#lib/draft/offer';

/** One thing that is offered, as it is drawn. */
export interface OfferView {
  readonly key: string;
  readonly kind: Offered['kind'];
  readonly words: string;
  /** The same food in the dish already: then it is not ticked at first; null for none. */
  readonly has: string | null;
  /** Where it was read: 'description, line 12'. */
  readonly from: string;
  /** The words that it was read from. */
  readonly said: string;
}

/** A line that became nothing. */
export interface LeftView {
  readonly why: LeftWhy;
  readonly message: string;
  readonly from: string;
  readonly said: string;
}

export interface DraftView {
  readonly episodeId: string;
  readonly title: string;
  readonly version: string;
  readonly hasTexts: boolean;
  readonly count: number;
  /** What the episode consists of, in words; null where it has nothing yet. */
  readonly made: string | null;
  readonly episode: readonly OfferView[];
  readonly segments: readonly {
    readonly key: string;
    readonly kind: 'recipe' | 'talk';
    readonly title: string;
    readonly isNew: boolean;
    readonly from: string;
    readonly said: string;
    readonly parts: readonly OfferView[];
  }[];
  readonly left: readonly LeftView[];
}
