/** English words by which an ingredient's words are held against the names of the reference table. */

const set = (words: string): ReadonlySet<string> => new Set(words.split(/\s+/).filter(Boolean));

/** Said of a food without saying which it is: its size, how good it is, how it is cut (singulars). */
export const ASIDE = set(`
  fillet filet piece fresh freshly ripe large small medium big jumbo organic free range good best quality streaky rasher
  king extra virgin new floret loaf chopped diced sliced crumbled crushed minced cubed halved torn homemade shop store
  bought runny clear fine coarse flaky kosher cold warm hot leftover style bunch head stick knob sprig stalk rib
  boneless skinless lean mini natural thick thin heaped level little whole raw dry uncooked cooked drained rinsed
  clove of some extra
`);

/** Said aside of the foods of one section alone: ground cumin is cumin, ground beef is not any beef. */
export const ASIDE_IN: ReadonlyMap<string, ReadonlySet<string>> = new Map([
  ['spicesAndBaking', set('ground powdered')],
]);

/** How a food was kept or made ready, and what a name must then say. */
export const KEPT: readonly (readonly [said: RegExp, name: RegExp])[] = [
  [/\bfrozen\b/, /\bfrozen\b/],
  [/\b(?:canned|tinned)\b/, /\bcanned\b/],
  [/\bdried\b/, /\b(?:dried|dry|dehydrated|freeze-dried)\b/],
  [/\bsmoked\b/, /\bsmoked\b|\bpaprika\b/],
];
/** The words of those states, without which a name is looked up among the synonyms. */
export const STATES_SAID = set(
  'frozen canned tinned tin dried raw dry uncooked cooked drained boiled roasted baked grilled fried steamed',
);

/**
 * Kinds of which the table's names begin ('Nuts, almonds'), so that nobody needs to say them: the singulars of a
 * name's first part, in their order.
 */
export const KINDS: ReadonlySet<string> = new Set(
  `nut|seed|spice|oil|cheese|fish|crustacean|mollusk|sauce|candy|beverage|leavening agent|salad dressing|soup|squash
  |cabbage|lettuce|mushroom|pepper|bean|seaweed|pork|beef|veal|lamb|chicken|turkey|game meat|sausage|alcoholic beverage
  |wheat flour|sugar|syrup|tomato product|noodle|pasta|sweetener|pickle|milk|cream|egg
  |onion|vinegar|rice|pea|melon|grape|orange|plum|pear|apple|cherry|potato|pork sausage|dip|gelatin|vegetable oil
  |seasoning mix|cocoa|baking chocolate`
    .split('|')
    .map((kind) => kind.trim()),
);

/** Behind these a part of a name says how it was made or what is in it, and no longer what it is. */
export const TAIL = /\b(?:made|prepared|from|packed|processed)\b.*$/;

/** Words of which one rules the other out: what is said, and what a name must then not say. */
export const OPPOSITES: readonly (readonly [said: RegExp, name: RegExp])[] = [
  [
    /\bunsweetened|no (?:added )?sugar|sugar[- ]free\b/,
    /(?<!un)(?<!not )\bsweetened\b|\bheavy syrup\b/,
  ],
  [/(?<!un)\bsweetened\b/, /\bunsweetened|not sweetened\b/],
  [/\bunsalted|salt[- ]free|without salt\b/, /(?<!lightly )\bsalted\b|\bwith salt\b/],
  [/(?<!un)\bsalted\b/, /\bwithout salt|unsalted\b/],
  [/\bskinless|without skin|no skin\b/, /\bmeat and skin|with skin|\bskin \(|, skin\b(?! eaten)/],
  [/\bskin[- ]on|with skin\b/, /\bmeat only|skinless|without skin\b/],
  [/\bfresh\b/, /\b(?:dried|canned|frozen|freeze-dried|pickled|powder)\b/],
  [/\bboneless\b/, /\bbone-in\b/],
  [/\bin (?:water|brine|spring water)\b/, /\bin oil\b/],
  [/\bin (?:olive |sunflower )?oil\b/, /\bin water\b/],
];

/** How much of its fat is left in a food, as words say it; the first that is found counts. */
export const FAT_LEVELS: readonly (readonly [level: 'none' | 'less' | 'full', words: RegExp])[] = [
  ['less', /\b(?:semi[- ]?skim(?:med)?|half[- ]?skim(?:med)?|part[- ]skim)\b/],
  ['none', /\b(?:non[- ]?fat|fat[- ]free|zero[- ]fat|skim(?:med)?)\b/],
  ['less', /\b(?:low[- ]?fat|reduced[- ]fat|half[- ]fat|lower[- ]fat|lighter|light|lite)\b/],
  ['full', /\b(?:full[- ]fat|full cream|whole(?:[- ]milk)?(?! ?-?(?:wheat|grain|meal)))\b/],
];

/** Sections in whose foods 'light' or 'whole' speak of fat: elsewhere tuna, rye flour and soy sauce are light. */
export const FAT_SECTIONS: ReadonlySet<string> = new Set(['dairyAndEggs', 'oilsAndSauces']);

/**
 * Lean meat has less than 10 g of fat in 100 g (9 CFR 317.362(e)); of ground meat that is called lean without a number
 * more rules out.
 */
export const LEAN = { word: /\blean\b/, below: 10 } as const;

/** Forms of a food that are seldom meant unless they are said. */
export const FORMS = set(`
  toasted glazed sweetened flavored seasoned breaded smoked stuffed cured baby enhanced fortified minced whipped
  creamed chocolate diluted condensed imitation instant precooked parboiled microwaved salted sprouted
`);

/** Words by which the table calls the food that is meant where nothing else is said. */
export const USUAL = /\b(?:plain|original|all types|all varieties|most common type)\b/i;

/** What stands for something that it is not, or has taken the thing itself out; never meant unless it is said. */
export const STANDS_IN =
  /\b(?:imitation|substitutes?|meatless|mix|replacement|analogs?|commodity)\b|-(?:like|type)\b/i;
