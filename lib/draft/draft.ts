import type { ReadIngredient } from '#lib/episode/read-ingredient-types';

/** The texts of an episode that is already out, as they were pasted. */
export interface OutTexts {
  /** Captions, or a transcript of what is said. */
  readonly captions?: string | undefined;
  readonly description?: string | undefined;
  readonly title?: string | undefined;
}

export type OutKind = keyof OutTexts;

/** A text that parts of a draft are read in: one of an episode that is out, or a recipe as data. */
export type FromKind = OutKind | 'recipeData';

/** Where a part of a draft was read. */
export interface From {
  readonly text: FromKind;
  /** Line of what was pasted, counted from 1. */
  readonly line: number;
  /** When it is said; null in texts without times. */
  readonly startMs: number | null;
  /** The words that it was read from. */
  readonly words: string;
}

/** Words of a part, and where they stand. */
export interface Said {
  readonly text: string;
  readonly from: From;
}

/** An ingredient in the words it was written or said in, and what they mean. */
export interface DraftLine extends Said {
  readonly parts: readonly ReadIngredient[];
}

/** Into how many equal portions a dish goes. */
export interface DraftPortions {
  readonly count: number;
  readonly from: From;
}

/** A stretch of the episode: a dish, or talk. */
export interface DraftSegment {
  readonly kind: 'recipe' | 'talk';
  readonly title: string;
  readonly from: From;
  /** Where it begins and ends in the edit; null where no text says so. */
  readonly inMs: number | null;
  readonly outMs: number | null;
  /** None where no text has any: nothing is made up. */
  readonly lines: readonly DraftLine[];
  readonly portions: DraftPortions | null;
  /** The method, a line of it each. */
  readonly method: readonly Said[];
}

export interface DraftLink {
  readonly label: string;
  readonly url: string;
  readonly from: From;
}

/** Why a line became no part of the draft. */
export type LeftWhy =
  | 'prose'
  | 'numbers'
  | 'allergens'
  | 'elsewhere'
  | 'portions'
  | 'amount'
  | 'unclear'
  | 'link'
  | 'tooLong'
  | 'full'
  | 'captions';

/** A line that became no part of the draft, and why, in a sentence. */
export interface LeftOut {
  readonly why: LeftWhy;
  readonly message: string;
  readonly from: From;
}

/** An episode as its texts propose it. Every part says where it was read; what was not understood is `left`. */
export interface Draft {
  readonly title: Said | null;
  readonly hook: Said | null;
  /** In viewing order. */
  readonly segments: readonly DraftSegment[];
  readonly links: readonly DraftLink[];
  readonly disclosure: Said | null;
  readonly left: readonly LeftOut[];
}
