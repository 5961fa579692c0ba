/** What a filming day's log and the shops say of a dish, as far as words about it can be held against it. */
export interface DishFacts {
  readonly segmentId: string;
  /** From the first hand on it to its plate, in seconds; null where the day was not logged. */
  readonly readyAfterS: number | null;
  /** What each step took, in seconds. */
  readonly steps: readonly { readonly stepId: string; readonly tookS: number }[];
  /** Inside temperatures that were read, in thousandths of a degree Celsius. */
  readonly coreMilliC: readonly number[];
  /** What all of it costs; null where a price is missing. */
  readonly cost: Cost | null;
  /** The least inside temperatures that are published for what may go in raw, the strictest first. */
  readonly inside: readonly LeastPublished[];
}

/** A published least inside temperature of what may go into a dish raw. */
export interface LeastPublished {
  /** The words of its ingredients, with the names of their foods. */
  readonly ingredients: readonly { readonly text: string; readonly foods: readonly string[] }[];
  readonly milliC: number;
  /** As published, in whole degrees Fahrenheit. */
  readonly fahrenheit: number;
  /** What is published, by whom, and that the local code decides. */
  readonly caution: string;
}

/** Money in minor units of one ISO 4217 currency, with its bounds. */
export interface Cost {
  readonly lowMinor: number;
  readonly minor: number;
  readonly highMinor: number;
  readonly currency: string;
}

/** All that the log and the shops say, by dish, and of the day together. */
export interface EditFacts {
  readonly dishes: readonly DishFacts[];
  readonly dayCost: Cost | null;
}

/** Nothing logged and no price known. */
export const NO_FACTS: EditFacts = { dishes: [], dayCost: null };
