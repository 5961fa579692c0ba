import type { Allergen } from '#lib/foods/food';
import type { Phrases } from './words/phrases';

/** How somebody eats who leaves out some foods of animals. */
export type Diet = 'vegan' | 'vegetarian' | 'meatFree';

/** What a dish is said to be free of: allergens, or what a diet leaves out. */
export interface FreeOf {
  readonly from: readonly Allergen[];
  readonly diet?: Diet;
}

/** Words that say of a dish that something is not in it, and words that keep them from saying so. */
export interface FreeFromWords {
  /** What it is free of: 'nut', 'gluten'; one may follow another behind these marks and words. */
  readonly names: Phrases<FreeOf>;
  readonly joined: ReadonlySet<string>;
  /** Behind a name: 'free'; not where one of these follows: free range. */
  readonly behind: ReadonlySet<string>;
  readonly notBehind: ReadonlySet<string>;
  /** All in one: 'vegan', 'eggless', 'safe for coeliacs'. */
  readonly alone: Phrases<FreeOf>;
  /**
   * Before a name: `sure` says it of the dish ('contains no'), `own` unless words behind say of something else
   * ('without'), `loose` only where words behind say that it is of the dish ('no').
   */
  readonly before: Phrases<'sure' | 'own' | 'loose'>;
  /** Behind a name, with it another food: egg noodles. */
  readonly compounds: ReadonlySet<string>;
  /** Behind 'no eggs': that it is said of the dish; and what 'in' may lead to. */
  readonly ofDish: Phrases<true>;
  readonly within: ReadonlySet<string>;
  readonly inIt: ReadonlySet<string>;
  /** How far, before what is said: 'naturally'. */
  readonly degree: ReadonlySet<string>;
  /** Of what something may be said: 'these', 'everything'. */
  readonly subjects: ReadonlySet<string>;
  /** Of these, those with their verb, as captions write them: 'theyre'. */
  readonly withVerb: ReadonlySet<string>;
  /** Kinds of dishes that are ingredients as often: pasta. */
  readonly asIngredients: ReadonlySet<string>;
  /** Between a food and what is said of it: 'tamari, which is gluten free'. */
  readonly relative: ReadonlySet<string>;
  /** Make it a choice, a wish or a doubt, before it in its clause; and before the subject of it. */
  readonly choices: Phrases<true>;
  readonly doubts: Phrases<true>;
  /** Right before it: a denial, or no more than almost; 'not only' is none. */
  readonly denied: ReadonlySet<string>;
  readonly only: ReadonlySet<string>;
  /** Begins a condition behind it, and how one goes on that is none: 'if you need that'. */
  readonly conditions: Phrases<true>;
  readonly forWhom: ReadonlySet<string>;
  /** Others than the dish: people that are so, and what is looked for by it. */
  readonly people: ReadonlySet<string>;
  readonly others: ReadonlySet<string>;
  /** One of several kinds of the dish: 'a vegan version'. */
  readonly versions: ReadonlySet<string>;
}
