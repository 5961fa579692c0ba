/** A food that a search found, in the words of a list. */
export interface FoodHit {
  readonly id: string;
  readonly name: string;
  /** Its source and what 100 g hold, in a few words. */
  readonly note: string;
}
