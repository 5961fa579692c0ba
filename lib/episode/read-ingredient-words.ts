import type { LineUnit } from '#lib/episode/recipe-schema';

/**
 * The words of the grammar that reads ingredients, as data, all folded (lower case, no accents).
 * Common practice of written recipes in English, British and American; there is no standard.
 */

const list = (text: string): readonly string[] => text.split(/\s+/).filter((word) => word !== '');
const set = (text: string): ReadonlySet<string> => new Set(list(text));

/** Numbers in words. */
export const CARDINALS: ReadonlyMap<string, number> = new Map([
  ...list('one two three four five six seven eight nine ten').map(
    (word, index) => [word, index + 1] as const,
  ),
  ...list('eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty').map(
    (word, index) => [word, index + 11] as const,
  ),
  ...list('thirty forty fifty sixty seventy eighty ninety').map(
    (word, index) => [word, (index + 3) * 10] as const,
  ),
]);

/** Parts of one in words, by their divisor. */
export const FRACTIONS: ReadonlyMap<string, number> = new Map([
  ['half', 2],
  ['halves', 2],
  ['third', 3],
  ['thirds', 3],
  ['quarter', 4],
  ['quarters', 4],
  ['fourth', 4],
  ['fourths', 4],
  ['fifth', 5],
  ['fifths', 5],
  ['sixth', 6],
  ['sixths', 6],
  ['eighth', 8],
  ['eighths', 8],
]);

/** Words for an amount that is no number; the longest first. Each is a row of words. */
export const VAGUE: readonly (readonly string[])[] = [
  'a very small amount of',
  'a small amount of',
  'a good amount of',
  'a couple of',
  'a couple',
  'couple of',
  'a few',
  'a little bit of',
  'a little',
  'a bit of',
  'a lot of',
  'a touch of',
  'a hint of',
  'lots of',
  'plenty of',
  'some',
  'several',
  'few',
  'many',
  'enough',
  'any',
].map((text) => text.split(' '));

/** A unit in words: the unit of the line and how many of it one is. */
export interface UnitWord {
  readonly unit: LineUnit;
  readonly num: number;
  readonly den: number;
}

const UNIT_SPELLINGS: readonly (readonly [LineUnit, number, number, string])[] = [
  ['g', 1, 1, 'g gr grs gm gms grm grms gram grams gramme grammes gramm gramms grams'],
  ['g', 1, 1000, 'mg milligram milligrams'],
  ['kg', 1, 1, 'kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes'],
  ['oz', 1, 1, 'oz ozs ounce ounces onces ounze'],
  ['lb', 1, 1, 'lb lbs pound pounds punds'],
  ['ml', 1, 1, 'ml mls millilitre millilitres milliliter milliliters mililitre mililitres cc'],
  ['ml', 10, 1, 'cl centilitre centilitres centiliter centiliters'],
  ['ml', 100, 1, 'dl decilitre decilitres deciliter deciliters'],
  ['l', 1, 1, 'l lt ltr ltrs litre litres liter liters'],
  ['tsp', 1, 1, 'tsp tsps tspn teaspoon teaspoons teaspoonful teaspoonfuls teapsoon teaspon'],
  [
    'tbsp',
    1,
    1,
    'tbsp tbsps tbs tbl tbls tblsp tblsps tbspn tablespoon tablespoons tablespoonful ' +
      'tablespoonfuls tablespon tablespons tablspoon tablspoons tabelspoon tablesspoon',
  ],
  ['flOz', 1, 1, 'floz fl-oz'],
  ['cup', 1, 1, 'cup cups cupful cupfuls'],
  ['serving', 1, 1, 'serving servings'],
];

export const UNITS: ReadonlyMap<string, UnitWord> = new Map(
  UNIT_SPELLINGS.flatMap(([unit, num, den, words]) =>
    list(words).map((word) => [word, { unit, num, den }] as const),
  ),
);

/** Letters that stand for more than one unit: never read. */
export const UNCLEAR_UNITS = set('t c tb ts p');

/** Lengths: how long a piece is says not how much it is. */
export const LENGTHS = set(
  'inch inches in cm centimetre centimetres centimeter centimeters mm millimetre millimetres',
);

const formed = (rows: readonly (readonly [string, string])[]): ReadonlyMap<string, string> =>
  new Map(rows.flatMap(([word, forms]) => [word, ...list(forms)].map((form) => [form, word])));

/** Words that count a thing, in their forms, with the singular. */
export const COUNTING = formed([
  ['slice', 'slices slc slcs'],
  ['clove', 'cloves'],
  ['handful', 'handfuls handsful handfull handfulls'],
  ['pinch', 'pinches'],
  ['sprig', 'sprigs'],
  ['stalk', 'stalks'],
  ['stick', 'sticks'],
  ['head', 'heads'],
  ['bunch', 'bunches'],
  ['rasher', 'rashers'],
  ['leaf', 'leaves'],
  ['sheet', 'sheets'],
  ['knob', 'knobs'],
  ['dash', 'dashes'],
  ['drizzle', 'drizzles'],
  ['splash', 'splashes'],
  ['glug', 'glugs'],
  ['drop', 'drops'],
  ['squeeze', 'squeezes'],
  ['squirt', 'squirts'],
  ['spray', 'sprays'],
  ['sprinkle', 'sprinkles'],
  ['sprinkling', 'sprinklings'],
  ['grind', 'grinds'],
  ['twist', 'twists'],
  ['dollop', 'dollops'],
  ['blob', 'blobs'],
  ['scoop', 'scoops'],
  ['spoonful', 'spoonfuls spoonfull'],
  ['spoon', 'spoons'],
  ['dessertspoon', 'dessertspoons dsp dstsp dessertspoonful'],
  ['piece', 'pieces pcs pc'],
  ['portion', 'portions'],
  ['chunk', 'chunks'],
  ['wedge', 'wedges'],
  ['strip', 'strips'],
  ['fillet', 'fillets filet filets'],
  ['floret', 'florets'],
  ['spear', 'spears'],
  ['bulb', 'bulbs'],
  ['ear', 'ears'],
  ['cob', 'cobs'],
  ['ball', 'balls'],
  ['block', 'blocks'],
  ['bar', 'bars'],
  ['loaf', 'loaves'],
  ['square', 'squares'],
  ['segment', 'segments'],
  ['nest', 'nests'],
  ['lump', 'lumps'],
  ['link', 'links'],
  ['patty', 'patties'],
  ['round', 'rounds'],
  ['glass', 'glasses'],
  ['bowl', 'bowls'],
  ['plate', 'plates'],
  ['mug', 'mugs'],
  ['shot', 'shots'],
  ['ladle', 'ladles ladleful ladlefuls'],
  ['pint', 'pints pt pts'],
  ['quart', 'quarts qt qts'],
  ['gallon', 'gallons gal'],
  ['thumb', 'thumbs'],
  ['fist', 'fists fistful fistfuls'],
  ['rib', 'ribs'],
]);

/** Counting words that also begin the names of foods ('rib eye'): they count only before "of" or these. */
export const COUNTING_BEFORE: ReadonlyMap<string, ReadonlySet<string>> = new Map([
  ['rib', set('celery')],
  ['round', set('')],
  ['ear', set('corn sweetcorn')],
  ['cob', set('')],
  ['spray', set('')],
  ['shot', set('espresso')],
  ['spoon', set('')],
  ['fillet', set('salmon cod haddock trout')],
  ['leaf', set('gelatine gelatin')],
]);

/** Counting words that need no number before them to be one: 'pinch of salt', 'handful spinach'. */
export const COUNTING_ALONE = set(
  'handful pinch dash drizzle splash knob glug squeeze sprinkle sprinkling dollop',
);

/** Counting words that may follow the food: '2 garlic cloves'. */
export const COUNTING_BEHIND = formed([
  ['clove', 'cloves'],
  ['slice', 'slices'],
  ['sprig', 'sprigs'],
  ['stalk', 'stalks'],
  ['stick', 'sticks'],
  ['rasher', 'rashers'],
  ['leaf', 'leaves'],
  ['fillet', 'fillets'],
  ['floret', 'florets'],
  ['wedge', 'wedges'],
  ['spear', 'spears'],
]);

/** Names of foods that end in a counting word. */
export const NAMES_WITH_COUNTING = set('bay cinnamon crab fish bread cocktail lollipop');

/** Packs, in their forms, with the singular. */
export const PACKS = formed([
  ['tin', 'tins'],
  ['can', 'cans'],
  ['jar', 'jars'],
  ['packet', 'packets pkt pkts'],
  ['pack', 'packs'],
  ['package', 'packages pkg pkgs'],
  ['carton', 'cartons'],
  ['tub', 'tubs'],
  ['bag', 'bags'],
  ['box', 'boxes'],
  ['bottle', 'bottles'],
  ['sachet', 'sachets'],
  ['pouch', 'pouches'],
  ['pot', 'pots'],
  ['container', 'containers'],
  ['punnet', 'punnets'],
  ['tube', 'tubes'],
  ['tray', 'trays'],
]);

/** Words for size, with the word they are kept as. */
export const SIZES: ReadonlyMap<string, string> = new Map([
  ...list('large medium small big jumbo huge tiny').map((word) => [word, word] as const),
  ['extra-large', 'extra large'],
  ['xl', 'extra large'],
  ['lg', 'large'],
  ['med', 'medium'],
  ['sm', 'small'],
  ['large-sized', 'large'],
  ['medium-sized', 'medium'],
  ['small-sized', 'small'],
  ['medium-size', 'medium'],
  ['average-sized', 'medium'],
]);

/** Words that stand before a unit or counting word and go with it, into the note. */
export const MODIFIERS = set(
  'heaped heaping level rounded scant generous good decent nice full packed thick thin thickly ' +
    'thinly cut small-ish very overflowing flat big whole loose',
);

/** Words before a number that leave it as it is: how exact it is, how a measure is filled. */
export const FILLERS = set(
  'about approx approximately roughly around ca circa say maybe nearly almost exactly just another ' +
    'the between scant generous heaped heaping level rounded good',
);

/** Those among them, and signs, that say that an amount is rough. */
export const ROUGH = set(
  'about approx approximately roughly around ca circa say maybe nearly almost ~ ≈',
);

/** Words before a number that make it one-sided: the amount is then open. */
export const ONE_SIDED: readonly (readonly string[])[] = [
  'at least',
  'at most',
  'up to',
  'more than',
  'less than',
  'over',
  'under',
  'max',
  'min',
  'minimum',
  'maximum',
  'no more than',
].map((text) => text.split(' '));

/** What is done to the food: left out of its name. */
export const PREPARATION = set(
  'chopped diced sliced minced grated shredded crushed peeled trimmed halved quartered cubed mashed ' +
    'melted softened beaten whisked sifted rinsed washed picked torn crumbled zested juiced deseeded ' +
    'de-seeded seeded cored pitted destoned stoned shelled toasted julienned shaved cut sieved ' +
    'separated squeezed thawed defrosted warmed chilled cooled room-temperature packed unpeeled ' +
    'ripe overripe organic free-range leftover skinned deboned scrubbed cleaned soaked strained ' +
    'pressed marinated spiralized spiralised flaked slivered bashed bruised smashed scored patted ' +
    'podded hulled stemmed destemmed topped tailed lightly-beaten finely-chopped pre-grated ' +
    'pre-shredded optional divided crosswise lengthwise lengthways cooked-weight warm cold hot',
);

/** How it is done, before a word of preparation. */
export const ADVERBS = set(
  'finely roughly coarsely thinly thickly freshly lightly well very loosely firmly tightly newly ' +
    'just gently evenly heavily',
);

/** Words of preparation that belong to the name before these words: 'minced beef', 'mashed potato'. */
export const KEPT_BEFORE: ReadonlyMap<string, ReadonlySet<string>> = new Map([
  ['minced', set('beef pork lamb turkey chicken veal meat')],
  ['mashed', set('potato potatoes')],
  ['baked', set('beans')],
  ['fried', set('rice')],
  ['raw', set('sugar honey cacao')],
  ['pressed', set('cottage')],
  [
    'hot',
    set('sauce chocolate dog dogs pepper peppers paprika chilli chili mustard smoked dogs cross'),
  ],
  ['cold', set('cuts brew coffee-brew')],
  ['whipped', set('cream')],
  ['boiled', set('sweets')],
]);

/** Words that make a food's state plain. */
export const STATES: ReadonlyMap<string, 'raw' | 'cooked' | 'drained' | 'dry'> = new Map([
  ...list(
    'cooked boiled roasted steamed grilled fried baked poached braised stewed broiled barbecued ' +
      'microwaved simmered scrambled hard-boiled soft-boiled pan-fried deep-fried oven-baked ' +
      'oven-roasted stir-fried pre-cooked precooked air-fried slow-cooked',
  ).map((word) => [word, 'cooked'] as const),
  ['raw', 'raw'],
  ['uncooked', 'raw'],
  ['drained', 'drained'],
]);

/** 'dry' and 'dried' are a state of these, and part of the name of all else ('dried oregano'). */
export const DRY_WORDS = set('dry dried');
export const SOLD_DRY = set(
  'rice lentil pasta spaghetti penne macaroni noodle bean chickpea quinoa couscous bulgur barley ' +
    'oat pea pulse legume orzo fusilli linguine tagliatelle farro millet polenta buckwheat grain ' +
    'freekeh rigatoni fettuccine lasagne lasagna conchiglie vermicelli',
);

/** Words that stand before a food and are none by themselves. */
export const ADJECTIVES = set(
  'fresh frozen boneless skinless lean low-fat fat-free reduced-fat dried dry smoked plain raw cooked ' +
    'large medium small whole ripe organic free-range unsalted salted sweet baby young thick thin ' +
    'good-quality tinned canned extra-virgin extra-lean roasted boiled grilled drained red green ' +
    'yellow white black brown dark light soft hard mild strong mature',
);

/** Words with which the note begins, inside a run of words. */
export const NOTE_STARTS = set(
  'for plus optional if until cut such e.g eg preferably ideally approx approximately about roughly ' +
    'weighing from left to or-more garnish',
);

/** After "in", what says how it is cut and not what it lies in. */
export const CUT_INTO = set(
  'chunks pieces strips half halves slices cubes rings quarters wedges dice matchsticks batons ' +
    'ribbons thirds two thin thick small bite-sized large',
);

/** After "with" or "without", what is part of the plant or animal. */
export const WITH_PARTS = set(
  'skin skins peel bone bones shell shells rind seeds juice juices liquid the their its leaves tops ' +
    'stone stones pits core',
);

/** Parts of a fruit or egg that are named with "of": 'juice of 1 lemon'. */
export const PART_OF = set('juice zest rind peel flesh pulp seeds');
export const EGG_PARTS = set('white whites yolk yolks');
