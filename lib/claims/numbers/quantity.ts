import type { Nutrient } from '#lib/foods/nutrients';
import type { UnitRole } from '../language';
import type { Part } from './number-words';
import type { Against, Hedge, NutrientUnit, ReadingStep, Scope, Statement } from '../statement';

/** What a number counts, where a noun says it. */
export interface Noun {
  readonly nutrient: Nutrient;
  readonly unit: NutrientUnit;
  readonly from: number;
  readonly to: number;
  /** Said in a claim: only grams behind it are its own. */
  readonly claimed?: true;
}

/** A number with its hedge and unit, and what the stages find out about it one after the other. */
export interface Quantity {
  /** The tokens of the number alone, and of all that is told with it. */
  readonly from: number;
  readonly to: number;
  begin: number;
  end: number;
  low: number;
  high: number;
  readonly digits: boolean;
  readonly words: boolean;
  fraction: boolean;
  readonly parts: readonly Part[] | undefined;
  readonly money: number | undefined;
  unsure: boolean;
  hedge: Hedge;
  unit: UnitRole | null;
  /** Token behind the unit, or behind the number where it has none. */
  readonly unitEnd: number;
  readonly sentence: number;
  noun: Noun | null;
  list: boolean;
  corrected: boolean;
  /** The share of what was said before that it is said to be: 'half of that is 630'. */
  partOf?: number;
  /** It is what another day or way of making it had, beside this one's. */
  against?: Against;
  /** Why it is no statement. */
  killed: string | null;
  said: Said | null;
  readonly how: ReadingStep[];
}

/** What a number says, without its place, the number itself and its hedge; its scope may still be open. */
export interface Said {
  readonly kind: Exclude<Statement['kind'], 'claimWord' | 'freeFrom' | 'foodNamed'>;
  readonly unit: string;
  readonly nutrient?: Nutrient;
  readonly scope?: Scope;
  readonly against?: Against;
  readonly food?: string;
  readonly fan?: true;
  readonly dish?: string;
}

/** Where a number ends with the noun behind it: the token after both. */
export const endWithNoun = ({ end, noun }: Pick<Quantity, 'end' | 'noun'>): number =>
  Math.max(end, noun?.to ?? 0);

/** Most parts of a dish that somebody eats at once (common practice, no source). */
export const MOST_EATEN = 6;
