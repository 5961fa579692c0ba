import type { Nutrient } from '#lib/foods/nutrients';

/** Why a part of a figure has no value, and which ingredient it is. */
export interface MissingPart {
  readonly lineId: string;
  /** The ingredient's words, for the sentence. */
  readonly text: string;
  readonly reason:
    | 'noLines'
    | 'noFood'
    | 'noGrams'
    | 'noValue'
    | 'noFibre'
    | 'noDivisor'
    | 'states'
    | 'leftBehind'
    /** What stayed behind was to be weighed and has not been. */
    | 'leftNotWeighed'
    /** Of the fat that was poured off it is not known how much of this went with it. */
    | 'fatLeft'
    /** How much of it is lost in cooking is not published. */
    | 'noRetention'
    /** An ingredient that is made from itself. */
    | 'cycle';
}

/**
 * An ingredient that waits for the person: its food is the search's best match (`match`), or what the scale showed was
 * photographed and is not typed yet (`photo`).
 */
export interface ProvisionalPart {
  readonly why: 'match' | 'photo';
  readonly lineId: string;
  readonly text: string;
  readonly foodName: string;
}

/**
 * A number with its bounds. `low` or `high` null means unbounded on that side:
 * both bounds known; high null: 'at least'; low null: 'at most'; both null: open.
 * `likelyLow` and `likelyHigh` (95 %) lie inside the hard bounds and are null where those are.
 */
export interface Figure {
  readonly nutrient: Nutrient;
  /** The sum of what is known; a person is never shown it alone where the figure is open. */
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly likelyLow: number | null;
  readonly likelyHigh: number | null;
  readonly missing: readonly MissingPart[];
  /** Ingredients in it whose food nobody has confirmed, or whose weight waits in a photo; while there are any it is never copied. */
  readonly provisional: readonly ProvisionalPart[];
  /** Ids of the uncertain inputs it rests on; the same id is one error. */
  readonly sources: readonly string[];
}

export type FigureStatus = 'known' | 'atLeast' | 'atMost' | 'open';

/** Which of its sides are bounded. `figureStatus({ …, low: 4, high: null })` → `'atLeast'`. */
export function figureStatus(figure: Pick<Figure, 'low' | 'high'>): FigureStatus {
  if (figure.low !== null) return figure.high !== null ? 'known' : 'atLeast';
  return figure.high !== null ? 'atMost' : 'open';
}
