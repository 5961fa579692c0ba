/** Where something of a method happens; `none` is the counter, a bowl, the air, and whatever is on no list. */
export type Place =
  'oven' | 'air fryer' | 'grill' | 'microwave' | 'burner' | 'fridge' | 'freezer' | 'none';

/** Whether an action takes the person's hands or runs by itself. */
export type Hands = 'by hand' | 'by itself';

/** A setting as it is printed: degrees or a gas mark. */
export interface Setting {
  readonly value: number;
  readonly unit: 'C' | 'F' | 'gas';
  /** True where it is said for moving air (fan, convection). */
  readonly fan?: true;
}

/** Minutes as they are said; an end that is left open is null. Seconds are fractions of a minute. */
export interface SaidMinutes {
  readonly low: number | null;
  readonly high: number | null;
}

/** A stretch of the text that was read, as it was cleaned: `text.slice(start, end)` are its words. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** What a sentence asks for in one action, and the words each part was read from. */
export interface ReadStep {
  readonly minutes: SaidMinutes | null;
  readonly degrees: readonly Setting[];
  readonly equipment: Place;
  readonly hands: Hands;
  readonly inside: Setting | null;
  /** Its verb, as 'bake'; empty where none is known. */
  readonly verb: string;
  readonly kind: ActionKind;
  /** Heats an empty oven, air fryer, grill or pan. */
  readonly preheats: boolean;
  /** What is to be done meanwhile and halfway: turned, shaken or stirred; null where nothing is. */
  readonly halfway: string | null;
  /** Runs beside what the step before it does. */
  readonly meanwhile: boolean;
  /** The words of the action, of its minutes, degrees and inside temperature. */
  readonly words: Stretch;
  readonly minutesFrom: Stretch | null;
  readonly degreesFrom: Stretch | null;
  readonly insideFrom: Stretch | null;
}

/**
 * What a verb of a method asks for: `oven` (bake), `boil` (runs on a burner by itself), `fry` (on a burner, watched),
 * `heat` (wherever the food is), `grill`, `airFry`, `microwave`, `chill`, `freeze`, `wait` (rest, cool, soak),
 * `put` (into a place), `set` (a setting is changed), `check` (a reading), `prep` (by hand).
 */
export type ActionKind =
  | 'oven'
  | 'boil'
  | 'fry'
  | 'heat'
  | 'grill'
  | 'airFry'
  | 'microwave'
  | 'chill'
  | 'freeze'
  | 'wait'
  | 'put'
  | 'set'
  | 'check'
  | 'prep';
