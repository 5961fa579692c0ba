import type { FoodState } from '#lib/foods/food';
import type { MassRange } from '#lib/episode/fields';
import type { LineUnit, RecipeLine } from '#lib/episode/recipe-schema';
import type { Problem } from '#lib/result';

/**
 * One ingredient as read from the words a person wrote. What could not be read is null and has a remark;
 * the words themselves are kept whole in `text`.
 */
export interface ReadIngredient {
  /** The words of this part as written, without a bullet in front. */
  readonly text: string;
  /** The amount, exact: equal ends for a single one; null where none is written or it is in doubt. */
  readonly quantity: RecipeLine['quantity'];
  readonly unit: LineUnit | null;
  /** The counting or size word of a `piece` or `pack`, singular and folded: 'slice', 'large', 'tin'. */
  readonly measure: string | null;
  /** Grams that the words state for the whole amount beside another unit: '(20 g)', '2 x 400 g tins'. */
  readonly grams: MassRange | null;
  /** As `grams`, and ounces or pounds so stated, exact to the milligram: '1 (14 oz) can'. */
  readonly weight: MassRange | null;
  /** The words that name the food, in their order. */
  readonly food: string;
  /** The state the words say; null where they say none. */
  readonly state: FoodState | null;
  /** Preparation and remarks: 'finely chopped', 'to taste'. */
  readonly note: string;
  /** The amount in the words it was written in, as in '1 1/2 cups'; empty where none was read. */
  readonly household: string;
  /** What was not understood, and how to write it. */
  readonly remarks: readonly Problem[];
}

/** A line of a pasted list. `at` counts the lines of the cleaned text from 1. */
export interface ReadLine {
  readonly at: number;
  readonly text: string;
  readonly parts: readonly ReadIngredient[];
}

/** A pasted list, read. Every word of it is in `lines`, `headings` or `rest`. */
export interface ReadIngredientList {
  readonly lines: readonly ReadLine[];
  /** Lines that name a part of the list ('For the sauce:') and are no food. */
  readonly headings: readonly { readonly at: number; readonly text: string }[];
  /** What was not read: lines that are too long, and all from the line where the list was full. */
  readonly rest: string;
  /** About the list as a whole or one of its lines (`path` is then `line 12`). */
  readonly remarks: readonly Problem[];
}
