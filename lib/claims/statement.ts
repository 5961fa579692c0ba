import type { Allergen } from '#lib/foods/food';
import type { Nutrient } from '#lib/foods/nutrients';
import type { MassUnit, VolumeUnit } from '#lib/units/units';
import type { Diet } from './free-from-words';

/** How a number is softened; the number itself stays as it was said. */
export type Hedge =
  'none' | 'about' | 'justOver' | 'under' | 'atLeast' | 'atMost' | 'almost' | 'between';

/** What a number is said of. `unknown`: nothing says it, or a part that has no name here. */
export type Scope =
  | 'dish'
  | 'whole'
  | 'portion'
  | 'each'
  | 'half'
  | 'slice'
  | 'per100g'
  | 'day'
  | 'soFar'
  | 'ingredient'
  | 'compared'
  | 'unknown';

export type Against = 'less' | 'more' | 'shareOf' | 'itsOwn';

export type Tag =
  'digits' | 'words' | 'hedge' | 'scope' | 'list' | 'fraction' | 'range' | 'correction' | 'beyond';

export type Claim = 'high' | 'source' | 'low' | 'free' | 'noAdded' | 'reduced' | 'light' | 'lean';

export type NutrientUnit = 'kcal' | 'kJ' | 'g' | 'mg' | 'µg' | 'IU' | '%' | '%DV';

export type AmountUnit = MassUnit | VolumeUnit | 'piece';

/** One step of how a statement was read: which words, by which stage, as what. */
export interface ReadingStep {
  readonly stage: 'number' | 'hedge' | 'unit' | 'noun' | 'scope' | 'dish' | 'correction' | 'kind';
  readonly start: number;
  readonly end: number;
  readonly as: string;
}

interface Common {
  /** The stretch of the text, in UTF-16 units, and its words as they stand there. */
  readonly start: number;
  readonly end: number;
  readonly words: string;
  /** Title of the dish where it is another than the one that is talked about. */
  readonly dish?: string;
  readonly tags: readonly Tag[];
  /** Another reading was possible: to be confirmed before anything is judged by it. */
  readonly unsure?: true;
  readonly how: readonly ReadingStep[];
}

interface Value {
  readonly low: number;
  readonly high: number;
  readonly hedge: Hedge;
}

interface Scoped {
  readonly scope: Scope;
  /** The food it is about, as the text names it, one of them where it is counted. */
  readonly food?: string;
  /** It is said of each of the episode's dishes: 'three lunches, all under 500 calories'. */
  readonly every?: true;
}

/** What a text says that ingredients, steps, prices or the day's log can bear out or contradict. */
export type Statement = Common &
  (
    | ({
        readonly kind: 'nutrient';
        readonly nutrient: Nutrient;
        readonly unit: NutrientUnit;
        readonly against?: Against;
      } & Value &
        Scoped)
    | ({ readonly kind: 'amount'; readonly unit: AmountUnit } & Value & Scoped)
    | ({
        readonly kind: 'ovenTemperature';
        readonly unit: 'C' | 'F' | 'gas';
        readonly fan?: true;
      } & Value)
    | ({ readonly kind: 'insideTemperature'; readonly unit: 'C' | 'F' } & Value)
    | ({ readonly kind: 'minutes' | 'readyIn'; readonly unit: 'min' } & Value)
    | ({ readonly kind: 'portions'; readonly unit: 'portion' | 'piece' | 'slice' } & Value)
    | ({ readonly kind: 'price'; readonly unit: 'USD' | 'EUR' | 'GBP' | 'unknown' } & Value &
        Scoped)
    | { readonly kind: 'claimWord'; readonly claim: Claim; readonly nutrient?: Nutrient }
    /** That nothing of it is in the dish: allergens, or what a diet leaves out. */
    | { readonly kind: 'freeFrom'; readonly from: readonly Allergen[]; readonly diet?: Diet }
    | { readonly kind: 'foodNamed'; readonly food: string }
  );

/** What is known of a text beside its words. */
export interface TextContext {
  readonly form: 'captions' | 'talkingPoint' | 'description' | 'card' | 'title' | 'comment';
  /** Titles of the dishes, and the one that is talked about. */
  readonly dishes?: readonly string[] | undefined;
  readonly dish?: string | undefined;
  /** Ingredients of that dish; without them no food is told as named and not counted. */
  readonly ingredients?: readonly string[] | undefined;
}
