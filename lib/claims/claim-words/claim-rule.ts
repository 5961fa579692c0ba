import type { Claim } from '#lib/claims/statement';
import type { Nutrient } from '#lib/foods/nutrients';

/** What a claim word says of a nutrient: the words of the grammar, and finer ones that the rules tell apart. */
export type ClaimLevel = Claim | 'veryLow' | 'extraLean' | 'percentFree';

/** An amount of a dish that a rule holds a nutrient of. */
export type Measure =
  /** Of a reference amount (21 CFR 101.12(b)), and of 50 g as well where that is small; of 100 g; of each portion. */
  | {
      readonly kind: 'mass';
      readonly nutrients: readonly Nutrient[];
      readonly per: 'racc' | '100g' | 'serving';
      /** Per 50 g as well where the reference amount is 30 g or less. */
      readonly small?: true;
      /** Protein that counts by PDCAAS (21 CFR 101.9(c)(7)). */
      readonly corrected?: true;
    }
  /** Percent of the energy that the nutrient brings, at so many kcal in a gram. */
  | {
      readonly kind: 'energyShare';
      readonly nutrients: readonly Nutrient[];
      readonly kcalPerG: number;
    }
  /** In so much of the dish as has 100 kcal. */
  | { readonly kind: 'per100kcal'; readonly nutrients: readonly Nutrient[] };

/** `under` leaves its end out. */
export type ClaimRelation = 'atLeast' | 'atMost' | 'under';

/** One number of a rule. */
export interface Condition {
  readonly measure: Measure;
  readonly relation: ClaimRelation;
  /** In the nutrient's unit, or in percent. */
  readonly limit: number;
  /** For drinks, where they have another, per 100 ml. */
  readonly liquidLimit?: number;
}

/** What a claim word stands for. */
export interface ClaimRule {
  readonly level: ClaimLevel;
  /** Null where the word stands alone: light, lean. */
  readonly nutrient: Nutrient | null;
  /** The provision, as it is cited. */
  readonly section: string;
  /** `meal`: meals and main dishes (21 CFR 101.13(l), (m)); `plain`: of one ingredient. */
  readonly of: 'food' | 'plain' | 'meal' | 'any';
  /** Any one of these is enough; all conditions of it must hold. */
  readonly ways: readonly (readonly Condition[])[];
  /** What else the provision asks for, in a sentence. */
  readonly also?: string;
}

/** How much less than what it is compared with a 'reduced' dish has. */
export interface ReducedRule {
  readonly nutrient: Nutrient;
  readonly section: string;
  /** Percent less, at least. */
  readonly percent: number;
}
