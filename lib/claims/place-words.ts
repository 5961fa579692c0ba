import type { Phrases } from './words/phrases';

/** Words by which a text turns to a dish or to a part of it. */
export interface PlaceWords {
  /** Said before the name of the dish that the talk turns to: 'first up'. */
  readonly turns: Phrases<true>;
  /** Words of headings within a dish; what stands under them is still about it. */
  readonly partsOfDish: ReadonlySet<string>;
  /** Words that stand for a dish and are no name of one, in their singulars: “the big one”. */
  readonly noNames: ReadonlySet<string>;
  /** How big something is: tells two dishes apart and names none alone. */
  readonly sizes: ReadonlySet<string>;
  /** Words of a title behind which it says what comes with the dish. */
  readonly behindName: ReadonlySet<string>;
  /** At the start of a line: a meal at its time of day begins something else. */
  readonly timeOfDay: RegExp;
  /** A line with the total of what stands before; and that a line says energy. */
  readonly total: RegExp;
  readonly energy: RegExp;
  /** A number of a nutrient in a written line. */
  readonly nutrientNumber: RegExp;
}
