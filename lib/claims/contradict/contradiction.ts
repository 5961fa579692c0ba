import type { StatementPlace } from '#lib/claims/judged';
import type { Statement } from '#lib/claims/statement';
import type { Nutrient } from '#lib/foods/nutrients';

/** A statement with its place. */
export interface PlacedStatement {
  readonly id: string;
  readonly place: StatementPlace;
  readonly statement: Statement;
}

/**
 * `two`: two values for one thing; `title`: what a title says is said nowhere in the video; `half`: a half that is not
 * half; `each`: one of so many does not come to the whole; `day`: dishes do not come to the day; `energy`: listed macros
 * do not come to the calories; `portions`: two counts of what a dish makes; `price`: prices do not come to what is said.
 */
export type ContradictionKind =
  'two' | 'title' | 'half' | 'each' | 'day' | 'energy' | 'portions' | 'price';

/** One side of a contradiction: a value, and where it is said. */
export interface ContradictionSide {
  /** “640 calories”. */
  readonly value: string;
  readonly said: readonly PlacedStatement[];
}

/** Statements that cannot all hold, whatever the ingredients say. */
export interface Contradiction {
  /** The same for the same statements. */
  readonly id: string;
  readonly kind: ContradictionKind;
  /** Null where it is about none: counts and prices. */
  readonly nutrient: Nutrient | null;
  /** The dish it is about; null for the day, or where nobody knows. */
  readonly segmentId: string | null;
  /** Why they cannot hold together: “half of 640 calories is 320, not 400”. */
  readonly words: string;
  readonly sides: readonly ContradictionSide[];
}

/** A contradiction with an id by what it is made of. */
export function contradiction(parts: Omit<Contradiction, 'id'>): Contradiction {
  const ids = parts.sides.map(({ said }) => said[0]?.id ?? '').join('+');
  return { id: `${parts.kind}:${parts.nutrient ?? ''}:${ids}`, ...parts };
}
