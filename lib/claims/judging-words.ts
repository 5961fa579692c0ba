/** Words around a number, and in the names of foods and portions, that tell what it is held against. */
export interface JudgingWords {
  /** Between clauses; and words behind which another food stands than the one that is spoken of. */
  readonly clauses: RegExp;
  readonly beside: RegExp;
  /** Where the words of another amount may begin. */
  readonly otherAmount: RegExp;
  readonly cooked: RegExp;
  readonly raw: RegExp;
  /** Words for one part of a dish: a slice may be called a square, a portion a bowl. */
  readonly called: Readonly<Record<'slice' | 'piece' | 'portion', RegExp>>;
  readonly half: RegExp;
  /** A share of the dish, with the word for which: 'a quarter of it', 'a quarter each'; and how one is said. */
  readonly shareOfIt: RegExp;
  readonly aShare: (name: string) => string;
  /** Behind these stands what a food is kept in or made with: 'tuna in water' is tuna. */
  readonly keptIn: RegExp;
  /** Between two times of which the second goes on from the first. */
  readonly then: RegExp;
  /** Right behind a time: 'in the microwave'; by what an appliance is called, its kind. */
  readonly inAppliance: RegExp;
  readonly appliances: ReadonlyMap<string, string>;
  /** That something is in the oven; and that it is somewhere else, or that something else is done with it. */
  readonly byOven: RegExp;
  readonly besideOven: RegExp;
  /** Behind these another thing is done. */
  readonly meanwhile: RegExp;
  /** The unit of a time. */
  readonly aTime: RegExp;
  /** Behind these, in the words that follow a time, the next thing is done. */
  readonly nextClause: RegExp;
  /** That a time is of all that is done. */
  readonly wholeTime: RegExp;
  /** Words that say nothing of what is done or to what. */
  readonly small: ReadonlySet<string>;
  /** What grammar adds to a word, and a letter that it doubled. */
  readonly endings: RegExp;
  readonly doubled: RegExp;
  /** Parts of an animal: 'chicken breast' may be called chicken, 'chicken stock' may not. */
  readonly cuts: ReadonlySet<string>;
  /** What sweetens or salts, by its name (common practice, no source); and names that only seem to. */
  readonly sweet: RegExp;
  readonly notSweet: RegExp;
  readonly salty: RegExp;
  readonly notSalty: RegExp;
  /** Finer claim words: less and more of it, very low, so many per cent free, extra lean. */
  readonly lessOrMore: RegExp;
  readonly more: RegExp;
  readonly veryLow: RegExp;
  readonly percentBefore: RegExp;
  readonly extra: RegExp;
}

/** Words around an amount that say how much of it is used, or of what it is said. */
export interface AmountWords {
  /** Vessels and what is scooped or bunched, by a number that those have in common which are called alike. */
  readonly vessels: ReadonlyMap<string, number>;
  /** How often, or which part of it: 'both', 'half'. */
  readonly times: ReadonlyMap<string, number>;
  /** That so many of them, or such a part of it, is used; in groups those words, and the vessel or food. */
  readonly used: RegExp;
  /** Right before an amount: 'half of it goes in now, so that is'; in groups the share, and of which food. */
  readonly shareBefore: RegExp;
  /** That each portion has what follows. */
  readonly eachHas: RegExp;
}

/** Words around a number that say of which several it is, or of what else than the dish; looked for in plain text. */
export interface QualifyingWords {
  /** Right before a number: 'without the cheese it's'; in a group what is left out, and which of these is a pronoun. */
  readonly without: RegExp;
  readonly pronouns: RegExp;
  /** 'than most bars', with what they are and the words from there to the number in groups. */
  readonly thanOthers: RegExp;
  /** Right before a number: 'all', 'every one of them is'; in a group its verb. */
  readonly allOf: RegExp;
  /** The same of what is pointed at: 'all of them are'. */
  readonly allOfThem: RegExp;
  /** Of each of them, behind a number. */
  readonly each: RegExp;
  /** Right before a number: 'each' that belongs to the amount before it, as '57 grams of protein each at'. */
  readonly amountEach: RegExp;
  /** So many dishes, but for what one dish makes; the same right before a number. */
  readonly countedDishes: RegExp;
  readonly countedRight: RegExp;
  /** 'all three of these', 'both', 'together'; in a group how many; and what says that they are added: 'if you eat'. */
  readonly together: RegExp;
  readonly ofAll: RegExp;
  readonly added: RegExp;
  /** 'in one day', which counts none of them; and one of something: 'one bowl of chili'. */
  readonly aDay: RegExp;
  readonly oneOf: RegExp;
  /** Right before a number that is what was listed: 'so that is only'. */
  readonly soThat: RegExp;
}
