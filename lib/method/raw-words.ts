/** A run of words that names animal food in a text. */
export interface FoodPhrase {
  /** One name for each of its words, without the 's' of many: "chicken", "thigh". */
  readonly words: readonly string[];
  /** By the words beside it: cooked or out of a tin is ready, what is only called after it is something else. */
  readonly as: 'raw' | 'ready' | 'other';
}

/*
 * Raw animal food in the words of written methods, folded. Common practice of written recipes; what counts as raw
 * animal food is FDA Food Code 2022, 3-302.11(A): beef, fish, lamb, pork, poultry; and raw shell eggs.
 */
const ANIMALS =
  'chicken turkey ducks? ducklings? goose geese poultry quails? pheasants? poussins? hens? partridges? pigeons? ' +
  'beef veal pork lamb mutton venison rabbit bacon gammon pancetta meatballs? koftas? burgers? patties ' +
  'livers? giblets sausage-?meat sausages? fish salmon cod haddock pollock trout tuna mackerel seabass snapper ' +
  'bream plaice halibut sole hake tilapia monkfish turbot catfish swordfish barramundi prawns? shrimps? scallops? ' +
  'mussels? clams? squid octopus lobster crab eggs? egg-?wash yolks? egg-?whites?';
/** Cuts, which are said without the animal too. */
const ALONE =
  'meat steaks? fillets? thighs? drumsticks? wings? breasts? tenderloins? sirloin rump brisket cutlets? escalopes? ' +
  'schnitzels?';
/** Cuts whose names are those of other things too: only beside an animal, or where the dish has such a food. */
const BESIDE =
  'legs? loin shoulder belly shanks? necks? ribs? chops? carcass joints? quarters? mince';
/** Before such a word: it is not raw. */
const READY = alternatives(
  'cooked pre-?cooked left-?over rotisserie tinned canned smoked cured dried jarred hard-boiled soft-boiled boiled ' +
    'poached fried scrambled roast roasted grilled baked',
);
/** Before such a word: it is of no animal. */
const OF_NONE = alternatives('vegan vegetarian veggie plant-based meat-free meatless mock');
/** A steak or a burger of these is of no animal. */
const OF_PLANTS = alternatives(
  'cauliflower tofu tempeh seitan halloumi aubergine eggplant celeriac cabbage beans? lentils? chickpeas? mushrooms?',
);
const SHAPE = /^(?:steak|burger|pattie|sausage|meatball|kofta|cutlet|schnitzel|escalope|bacon)$/;
/** What may stand between such a word and the food. */
const BETWEEN =
  '(?:flaked|shredded|sliced|diced|chopped|cold|cooled|drained|boneless|skinless|streaky|free-range)';
/** After such a word: it names something else. */
const NOT_AFTER = alternatives(
  'stock broth bouillon cubes? sauce powder seasoning noodles? tomato(?:es)? slice timer cups? substitute salad ' +
    'shop pan brush sandwich(?:es)? gravy soup spices? rub',
);
const MINCED = String.raw`(?:the|your|raw)\s+mince`;

/**
 * The animal foods that words name, in their order, each run of them as one: "chicken thighs" is one food. Words of
 * the dish's own ingredients count as well as those that methods have in common.
 * @param words folded
 * @param own further words of this dish that name animal food
 * @example foodPhrases('cut the chicken thighs', []) // [{ words: ['chicken', 'thigh'], as: 'raw' }]
 */
export function foodPhrases(words: string, own: readonly string[]): FoodPhrase[] {
  const known = [ANIMALS, ALONE, ...own.map(safely)].join(' ');
  const word = alternatives(known).source;
  const beside = alternatives(BESIDE).source;
  const phrase = new RegExp(
    String.raw`${MINCED}\b|${word}(?:\s+(?:${word}|${beside}))*|\bleg(?=s? of (?:lamb|pork))`,
    'g',
  );
  return [...words.matchAll(phrase)].map((match) => {
    const before = words.slice(0, match.index);
    const after = words.slice(match.index + match[0].length);
    const names = match[0].replace(/^(?:the|your|raw)\s+/, '').split(/\s+/);
    const named = names.map(singular);
    const ofPlants = SHAPE.test(named[0] ?? '') && ENDS_OF_PLANTS.test(before);
    const other = ofPlants || ENDS_OF_NONE.test(before) || BEGINS_NOT_AFTER.test(after);
    return { words: named, as: other ? 'other' : ENDS_READY.test(before) ? 'ready' : 'raw' };
  });
}

const ENDS_READY = new RegExp(
  String.raw`${READY.source}(?:[\s-]+|,? (?:and )?(?:${BETWEEN},? ){1,2})$`,
);
const ENDS_OF_NONE = new RegExp(String.raw`${OF_NONE.source}[\s-]+$`);
const ENDS_OF_PLANTS = new RegExp(String.raw`${OF_PLANTS.source}[\s-]+$`);
const BEGINS_NOT_AFTER = new RegExp(String.raw`^[\s-]+${NOT_AFTER.source}`);
const IS_CUT = new RegExp(`^(?:${`${ALONE} ${BESIDE}`.split(' ').join('|')})$`);

/** Whether a word names a cut and leaves open of which animal it is. */
export const isCut = (word: string): boolean => IS_CUT.test(word);

/** One name for one food, so that "the eggs" later is the egg of before. */
export const singular = (food: string): string =>
  /(?:ss|fish)$/.test(food) ? food : food.replace(/s$/, '');

/** One of some words, whole; a dash behind it makes it another word. */
export function alternatives(words: string): RegExp {
  return new RegExp(String.raw`\b(${words.split(' ').join('|')})\b(?!-)`);
}

const safely = (word: string): string => `${word.replaceAll(/[^a-z]/g, '')}s?`;
