import type { FreeFromWords } from './free-from-words';
import type { PlaceWords } from './place-words';
import type { AmountWords, JudgingWords, QualifyingWords } from './judging-words';
import type { Nutrient } from '#lib/foods/nutrients';
import type { Phrases } from './words/phrases';
import type { Title } from './words/title';
import type { Claim, Hedge, NutrientUnit, Scope, Against } from './statement';

/** What a unit is of. A container counts pieces of the food that follows: 'a can of beans'. */
export type UnitRole = { readonly cat: 'unit' } & (
  | { readonly of: 'mass' | 'volume' | 'energy' | 'container' | 'share'; readonly unit: string }
  | { readonly of: 'degree'; readonly unit: 'C' | 'F' | null }
  | { readonly of: 'time' | 'money'; readonly unit: string; readonly factor: number }
);

/** Roles that differ in nothing but their name. */
type Named<C extends string, Rest = unknown> = C extends string
  ? { readonly cat: C } & Rest
  : never;

/** What a word or phrase does; the reader knows these and no word. */
export type Role =
  | UnitRole
  /** The name of a nutrient; with `of`, only behind that of another: 'eleven of sugar, four of that is added'. */
  | {
      readonly cat: 'noun';
      readonly nutrient: Nutrient;
      readonly unit: NutrientUnit;
      readonly of?: Nutrient;
    }
  | { readonly cat: 'hedge'; readonly hedge: Hedge }
  | {
      readonly cat: 'scope';
      readonly scope: Scope;
      /**
       * `subject`: counts only with a copula behind it; `behind`: only right behind a number or its noun; `free`:
       * anywhere; `ahead`: of what follows alone; `counted`: each of what was counted last.
       */
      readonly link: 'subject' | 'behind' | 'free' | 'counted' | 'ahead';
      readonly against?: Against;
    }
  /** A part of a dish that is counted: bowls, slices, muffins. */
  | {
      readonly cat: 'thing';
      readonly as: 'portion' | 'slice' | 'piece' | 'whole' | 'person' | 'meal';
    }
  /** Denies what follows: 'not call it'. */
  | Named<'called'>
  /** A meal of the day, by its name. */
  | { readonly cat: 'meal'; readonly meal: string }
  /** So many times what was said before, or of the noun behind it. */
  | {
      readonly cat: 'times';
      readonly factor: number;
      readonly of: 'that' | 'noun' | 'less' | 'more';
    }
  | Named<'gas' | 'fan'>
  /** Those who have the other scale of degrees: 'if you're in the States'. */
  | Named<'scale'>
  | { readonly cat: 'place'; readonly place: 'oven' | 'inside' | 'elsewhere' | 'other' }
  /**
   * What a time is said of, before it and behind it; `soon`: also of a number without a unit; `before`: of nothing,
   * unless an action leads it; `place`: where it cooks.
   */
  | Named<
      'time' | 'timeBehind',
      { readonly as: 'ready' | 'soon' | 'action' | 'none' | 'side' | 'before' | 'place' }
    >
  /** A verb that says how many there are of it. */
  | Named<'serve' | 'serveBehind', { readonly as: 'portion' | 'piece' | 'slice' | 'any' }>
  /** What makes a number no statement: cameras, years, how many watch. */
  | Named<'trap' | 'trapBehind'>
  /** Aims, limits, wishes. */
  | Named<'target' | 'targetBehind'>
  | { readonly cat: 'ask' }
  /** Takes back what was said before; `heading` alone marks what follows. */
  | { readonly cat: 'correct'; readonly how: 'strong' | 'weak' | 'heading' }
  /** Behind words that take a number back: what it was of. */
  | Named<'mistook'>
  /** Says what was said of it before; and what others say or think who have not made it. */
  | Named<'heard' | 'hearsay'>
  /** What one aims at, as a thing: 'the budget for lunch is'. */
  | { readonly cat: 'goal' }
  | { readonly cat: 'than'; readonly against: 'less' | 'more' }
  /** Says that something was weighed; that a food goes in; what food is sold in; and that all of it goes in. */
  | Named<'weigh' | 'use' | 'pack' | 'allOfIt'>
  /** Says what something costs, or comes to. */
  | Named<'cost'>
  /** One more: 'another', 'back in for'. */
  | Named<'back'>
  /** Says that a number is of one food: 'the cheese alone', 'the cheese adds'. */
  | Named<'alone' | 'adds'>
  /** Before a difference: 'saves', 'knocks off', 'up by'; `swapped`: only where things are swapped. */
  | { readonly cat: 'by'; readonly against: 'less' | 'more'; readonly swapped?: true }
  /** Of others: by the place where it is had, who makes it, or as most do; and words of that behind its name. */
  | Named<'elsewhere', { readonly as: 'place' | 'owner' | 'usual' }>
  | Named<'elsewhereBehind', { readonly any?: true }>
  /** Behind what is saved; and what one thing is put in the place of another with. */
  | Named<'byBehind' | 'swap'>
  /** Before all pieces of a dish: 'all of the'; and before the place where something is had: 'from the'. */
  | Named<'allThe' | 'whereWord'>
  /** Things that cost money, or have numbers, and that no one eats. */
  | Named<'gear'>
  /** Before what a number was once: 'down from', 'used to be'. */
  | Named<'change'>
  /** Says that all numbers are rough. */
  | Named<'allAbout'>
  /** Between how many and how much of each: the 'x' of '2 x 150 g'. */
  | Named<'multiplied'>
  /** Small words before what something is, is of, or is in: 'as', 'of', 'in the'. */
  | Named<'asWord'>
  /** What somebody eats of it: 'I had'. */
  | Named<'eat'>
  /** 'for', before whom or how many it serves, what a price is of and how long something takes. */
  | Named<'serveTitle'>
  /** Of a unit and of no dish: 'per gram'. */
  | Named<'perUnit'>
  /** What an amount goes into: 'into this'. */
  | Named<'into'>
  /** Numbers of a person's own: 'I weigh', 'I ran'. */
  | Named<'self'>
  /** Stands for what was said before: 'of them', 'of that'. */
  | Named<'ofThem'>
  /** Before what something is compared with. */
  | Named<'thanWord'>
  /** Before degrees: 'at', 'up to', 'until it reads'. */
  | Named<'lead'>
  /** Before a year: 'since', 'back in'. */
  | Named<'yearWord'>
  /** How it was another time, which says nothing of this dish; and that this one is meant after all. */
  | Named<'otherDay' | 'now'>
  /** Between a day and what it had, and what leads to the numbers of now. */
  | Named<'was' | 'nowIs'>
  /** What is done with the food behind it, that is then no nutrient: 'I halved the sugar'. */
  | Named<'handled'>
  /** Between a share of the energy and its nutrient; and what says that numbers are shares. */
  | Named<'comesFrom' | 'split'>
  /** Before one of what is counted: 'per'. */
  | Named<'per'>
  /** Behind what a dish makes: 'out of one pot'. */
  | Named<'outOf'>
  /** Goes on with who somebody is: 'two people who asked'. */
  | Named<'who'>
  /** Before a dish that others make: 'a normal stew'. */
  | Named<'usual'>
  /** How dear a food is; so much money of it: 'two fifty worth of cheese'. */
  | Named<'dear' | 'worth'>
  /** Says that what follows is money, where 'cost' may say it of calories too: 'paid', 'price per portion'. */
  | Named<'paid'>
  /** Makes pieces: 'roll them', 'divide the dough'. */
  | Named<'shape'>
  /** What others take for theirs: 'the cafe wants', 'they charge'. */
  | Named<'charge'>
  /** Where or that something is bought. */
  | Named<'bought'>
  /** Behind what another dish is made with: 'the pork version'. */
  | Named<'kindOf'>
  /** Gives a reason or a time, and ends no row of numbers. */
  | Named<'reason'>
  /** From all that went in to what it has: 'comes out at', 'lands on'. */
  | Named<'comesTo'>
  /** Between a nutrient and its number without a verb: 'protein at forty'. */
  | Named<'at'>
  /** Goes on about what was named: 'which is', 'that's'. */
  | Named<'which'>
  /** Links a subject to what is said of it: 'is', 'has', a colon. */
  | Named<'copula'>
  /** Joins two of a row: 'and', a comma, a stroke. */
  | Named<'joiner'>
  /** Begins a clause of its own: 'so', 'but', 'then'. */
  | Named<'so'>
  /** Denies what follows. */
  | Named<'not'>
  /** Words that say nothing here: `filler` may stand within what belongs together, `small` only between. */
  | Named<'small' | 'filler'>;

/** Words of numbers. */
export interface NumberWords {
  /** 0 to 19 and the tens. */
  readonly cardinals: ReadonlyMap<string, number>;
  /** Said for a nought between: 'one oh five'. */
  readonly nought: ReadonlySet<string>;
  readonly hundred: ReadonlySet<string>;
  readonly thousand: ReadonlySet<string>;
  readonly point: ReadonlySet<string>;
  readonly and: ReadonlySet<string>;
  readonly article: ReadonlySet<string>;
  /** One more: 'another hour'. */
  readonly another: ReadonlySet<string>;
  /** Parts of one by their divisor. */
  readonly fractions: ReadonlyMap<string, number>;
  readonly half: ReadonlySet<string>;
  /** Words that count: dozen, couple, pair. */
  readonly counts: ReadonlyMap<string, number>;
  readonly of: ReadonlySet<string>;
  readonly to: ReadonlySet<string>;
  /** Between two numbers of a range that 'between' began, and without it where they are close. */
  readonly or: ReadonlySet<string>;
  /** Of these, the one for either. */
  readonly either: ReadonlySet<string>;
  readonly between: ReadonlySet<string>;
  /** What captions hear for a number before a unit. */
  readonly soundAlikes: ReadonlyMap<string, number>;
  /** Before a hundred of no known number: 'a few hundred'. */
  readonly vague: ReadonlySet<string>;
  /** Before a one that counts nothing: 'the one', 'that one'. */
  readonly pointers: ReadonlySet<string>;
  /** Leaves a number open: 'seven hundred and something'. */
  readonly open: ReadonlySet<string>;
}

/** Words of foods, in their singulars. */
export interface FoodWords {
  /** A food by itself; and what may stand before one as part of its name. */
  readonly heads: ReadonlySet<string>;
  readonly modifiers: ReadonlySet<string>;
  /** What ends a name behind a food, and is none alone: the shoulder of pork shoulder. */
  readonly tails: ReadonlySet<string>;
  /** What is done to a food, or says how good it is: left out at the front of its name. */
  readonly plain: ReadonlySet<string>;
  /** What a label says before a food's name: 'full fat milk'. */
  readonly labels: Phrases<true>;
  /** In what state a food is weighed: drained, cooked, raw. */
  readonly prepared: ReadonlySet<string>;
  /** Other names of a food: of a word, and of several in their singulars. */
  readonly synonyms: ReadonlyMap<string, string>;
  readonly longSynonyms: ReadonlyMap<string, string>;
  /** Foods that take another before them as their kind: peanut butter; chicken peppers are two. */
  readonly takesKind: ReadonlySet<string>;
  /** Words of foods that are things done as well, what may stand before one as done, and behind it. */
  readonly done: {
    readonly verbs: ReadonlySet<string>;
    readonly before: ReadonlySet<string>;
    readonly behind: ReadonlySet<string>;
  };
  /** Says that what follows was once so; and what ends that. */
  readonly formerly: Phrases<true>;
  readonly nowadays: ReadonlySet<string>;
  /** Foods that are never told as named: water, plain kinds. */
  readonly uncounted: ReadonlySet<string>;
  /** The same with any word before: 'sparkling water'. */
  readonly nothing: ReadonlySet<string>;
  /** Words that keep a food behind them from being named: no, without, instead of, could, tastes like. */
  readonly blockers: Phrases<true>;
  /** Endings of words that are no names of foods. */
  readonly noName: RegExp;
  /** Sayings that hold the word of a food. */
  readonly sayings: Phrases<true>;
  /** Last words of names, and the words behind which they are left out: cocoa is cocoa powder, garlic no garlic powder. */
  readonly leftOut: ReadonlyMap<string, ReadonlySet<string>>;
  /** What is got of a food and is not counted apart where its name follows: the 'juice' of a lemon. */
  readonly gotOf: ReadonlySet<string>;
}

export interface ClaimWords {
  /** Before the nutrient, and behind it; alone. */
  readonly before: Phrases<Claim>;
  readonly behind: Phrases<Claim>;
  readonly alone: Phrases<Claim>;
  /** Words that may stand before what is claimed alone: 'it is', 'a'. */
  readonly aloneAfter: ReadonlySet<string>;
  /** How much: 'really light'; and what may be said to be so: 'this is light'. */
  readonly degree: ReadonlySet<string>;
  readonly subjects: ReadonlySet<string>;
  /** Of these with their verb, what stands for all that was listed: 'it's'. */
  readonly its: ReadonlySet<string>;
  /** Stands for several, also with its verb. */
  readonly they: ReadonlySet<string>;
  /** Begin a condition, and what would be under it. */
  readonly ifs: ReadonlySet<string>;
  readonly would: ReadonlySet<string>;
  /** Words that point at a dish that nobody names. */
  readonly pointing: ReadonlySet<string>;
  /** Of these, those before a name: 'this stew'. */
  readonly thisOne: ReadonlySet<string>;
  /** Persons, with their verbs: 'with the rice you're at 520' is no longer about the rice. */
  readonly persons: ReadonlySet<string>;
  /** Those who do something in words of their own: 'and I filmed the whole thing'. */
  readonly doers: ReadonlySet<string>;
  /** Deny what follows. */
  readonly denied: ReadonlySet<string>;
  readonly asked: Phrases<true>;
  /** Denies what was claimed: 'low calorie it is not', 'sugar free, no'; the last one only before a mark. */
  readonly deniedBehind: Phrases<'always' | 'alone'>;
  /** Dishes by kind, which an ingredient's name is not: soup, dinner, lunch. */
  readonly dishes: ReadonlySet<string>;
}

/** Turns of speech that are looked for in plain text, where words may stand between. */
export interface Patterns {
  /** In a title: that it is of several dishes, or of the day. */
  readonly severalDishes: RegExp;
  /** For how many a dish is, in its title; in a group the number. */
  readonly servesSoMany: RegExp;
  /** Names and letters of nutrients with strokes between: 'kcal/P/C/F'. */
  readonly namesInRow: RegExp;
  /** Small letters of the macronutrients behind their numbers: '42p, 30c, 9f'. */
  readonly lettersInRow: RegExp;
  /** An oven’s fan; and that it does not run: 'without the fan', 'fan off', 'non-convection'. */
  readonly fan: RegExp;
  readonly noFan: RegExp;
  /**
   * A temperature of an oven as it is written in a step; in groups its `number`, its `unit`, and the word for a fan
   * right `before` it or `behind` it.
   */
  readonly ovenDegrees: RegExp;
  /** Right before degrees: that something gets to them; and what may, of whose inside they are then said. */
  readonly reaches: RegExp;
  readonly reachedBy: RegExp;
  /** A word behind which 'one' is no number: 'last one, my flapjack'. */
  readonly behindPronoun: RegExp;
  /** Counted, these may be portions of one dish, and the dishes of an episode. */
  readonly meals: RegExp;
  /** In the name of a portion: that it is cut off a whole. */
  readonly slices: RegExp;
  /** In the last word of a name: that it owns what follows, or has its verb with it: 'the bun's 140'. */
  readonly ownsOrIs: RegExp;
  /** What ends the words that belong to a number before them. */
  readonly endOfNumber: RegExp;
  /** At the end of what stands before a name that a number has taken: '115 calories in …', '12 g of protein for …'. */
  readonly takenByNumber: RegExp;
}

/** All that the reader knows of a language. */
export interface Language {
  readonly lexicon: Phrases<readonly Role[]>;
  /** How a part is called that the title names in the plural: 'per lolly' of mango lollies; null where none is. */
  readonly titleParts: (title: Pick<Title, 'tokens'>) => Phrases<readonly Role[]> | null;
  /** How a portion is called that the title does not name: 'per pot' of a mousse; null where none is. */
  readonly titleVessels: (title: Pick<Title, 'tokens'>) => Phrases<readonly Role[]> | null;
  /** How big or good a part is, left out of its phrase: 'a generous bowl'. */
  readonly adjectives: ReadonlySet<string>;
  /** Sounds that somebody makes while a word is looked for. */
  readonly hesitations: ReadonlySet<string>;
  /** Hedges that stand behind a number, its unit or its noun. */
  readonly hedgesBehind: Phrases<Hedge>;
  readonly numbers: NumberWords;
  /** Letters that stand for a nutrient beside a number: '42P'. */
  readonly letters: ReadonlyMap<string, Nutrient>;
  /** Units of mass that are money where no food follows: 'two pounds fifty'. */
  readonly moneyUnits: ReadonlyMap<string, string>;
  readonly currencies: ReadonlyMap<string, 'USD' | 'EUR' | 'GBP' | 'unknown'>;
  /** Letters glued before a sign of money that leave it what it is, where others make it another's: 'US$', not 'A$'. */
  readonly currencyLetters: ReadonlySet<string>;
  /** Letters behind a number that are money, unless they stand for a nutrient: '89p'. */
  readonly moneyLetters: ReadonlyMap<string, { readonly unit: string; readonly factor: number }>;
  readonly foods: FoodWords;
  readonly claims: ClaimWords;
  readonly freeFrom: FreeFromWords;
  readonly patterns: Patterns;
  readonly places: PlaceWords;
  readonly judging: JudgingWords;
  readonly amounts: AmountWords;
  readonly qualifying: QualifyingWords;
  /** Words with a full stop that ends no sentence, where a small letter or digits follow. */
  readonly shortened: ReadonlySet<string>;
  /** The singular of a folded word. */
  readonly singular: (word: string) => string;
  /** Bare degrees from these on are Fahrenheit. */
  readonly fahrenheitFrom: { readonly oven: number; readonly inside: number };
}
