import type { FoodClass } from '#lib/safety/safe-temperatures';

/** Kinds of animal food that words tell apart; of a ham they leave open whether it is raw. */
type Kind = Extract<FoodClass, 'poultry' | 'groundMeat' | 'wholeCut' | 'fish' | 'eggDish'> | 'ham';

const anyOf = (words: string) =>
  new RegExp(`\\b(?:${words.trim().split(/\s+/).join('|')})\\b`, 'i');

const POULTRY =
  anyOf(`chickens? turkeys? ducks? ducklings? goose geese poultry quails? pheasants? hens? poussins?
  capons? fowls? partridges? pigeons? squabs? giblets? thighs? drumsticks? wings?`);
const MEAT =
  anyOf(`beef pork veal lamb mutton bison venison goat rabbit elk boar oxtail bacon gammon brisket sirloin
  ribeye rib-eye steaks? short[-\\s]ribs? spare[-\\s]?ribs? pork[-\\s]chops? lamb[-\\s]chops? meats?`);
/** Made of ground meat, whether they say so or not. */
const OF_GROUND = anyOf(
  'sausages? bratwursts? burgers? hamburgers? meatballs? meatloaf koftas? kebabs? patty patties',
);
const GROUND = anyOf('ground minced? mince');
const HAM = anyOf('hams?');
const FISH =
  anyOf(`fish salmon cod haddock trout tuna halibut tilapia mackerel herring plaice sole pollock sardines?
  swordfish perch pike carp catfish monkfish hake whiting turbot bream bass snapper grouper flounder barramundi`);
const EGG = anyOf('eggs?');
const EGG_OF_POULTRY = /\b(?:chicken|turkey|duck|goose|quail|hen|pheasant)s?['’]?s?\s+eggs?$/i;
const ANIMAL = [POULTRY, MEAT, OF_GROUND, HAM, FISH, EGG];

/** What is made of an animal food, or only called after it, and is not that food. */
const PRODUCT =
  anyOf(`broths? stocks? bouillons? gravy gravies soups? powder sauces? noodles? fat tallow lard dripping
  schmaltz oil seasonings? flavou?rings? rub spices? granules extract buns? breads? pasta paste mayonnaise mayo ketchup
  crackers? lettuces? tomato(?:es)? leaves pods mushrooms?`);
const MEATLESS =
  anyOf(`vegan vegetarian veggie plant-based meatless [a-z]+-free imitation mock substitutes? replacers?
  alternatives?`);
/** Patties and sausages of these are of no meat. */
const OF_PLANTS = anyOf(
  'beans? lentils? chickpeas? falafels? halloumi tofu tempeh seitan mushrooms? beetroots? quinoa',
);
/** Eaten as it is bought: no inside temperature is published for it. */
const AS_BOUGHT =
  anyOf(`canned tinned jarred smoked jerky deli luncheon pastrami prosciutto salami pepperoni pâté pate
  dried dehydrated freeze-dried baby-?food fast-foods? sandwich(?:es)?`);
/** Smoked, and no meat. */
const SMOKED_SPICE = /\bsmoked\s+(?:paprika|salt|garlic|chill?i|pepper)\b/gi;

/** Between foods of their own: 'chicken with chorizo', 'beans in duck fat'. */
const APART = /\b(?:with|and|plus|or|in|on)\b|[&+;/()]/i;
/** What follows is not what it is: 'rice for the chicken'. */
const BESIDE = /\b(?:for|under|beside|without|instead\s+of)\b.*$/i;

/** Whether a name says that there is no meat, fish or egg in what is called after them. */
export function isMeatless(name: string): boolean {
  return MEATLESS.test(name);
}

/** What a shop sells by these is in them already: "1 tin tuna", "2 x 400 g cans of salmon". */
const IN_TINS =
  /\b(?<=(?:\d|\ba|\bone|\btwo|½|¼)\W*(?:small |large |g |ml |oz |ounce )?)(?:tins?|cans?|jars?)\s+(?:\([^)]*\)\s*)?(?:of\s+)?/gi;

/** The same words, where they say that a food comes in a tin, as the names of foods say it: "1 tinned tuna". */
export function withTins(text: string): string {
  return text.replace(IN_TINS, 'tinned ');
}

/**
 * The kinds of animal food that words name, one for each food among them, the strictest where one may be two
 * ('turkey bacon' is poultry). What is made of them is none of them: chicken stock, egg noodles, lamb’s lettuce.
 * @param raw somebody says that it is raw: then it is not eaten as it is bought
 * @example foodKinds('500 g chicken thighs in soy sauce', false) // ['poultry']
 */
export function foodKinds(text: string, raw: boolean): Kind[] {
  return withTins(text)
    .replace(SMOKED_SPICE, ' ')
    .split(APART)
    .flatMap((group) => kindOf(group.replace(BESIDE, ' '), raw) ?? []);
}

function kindOf(group: string, raw: boolean): Kind | null {
  if (isMeatless(group)) return null;
  // Tables say what it is first: 'Soup, chicken'.
  const [first = '', ...others] = group.split(',');
  if (isProduct(first)) return null;
  const parts = [first, ...others.filter((part) => !isProduct(part))];
  const kept = raw ? parts : withoutBought(parts);
  return kept.length === 0 ? null : ofWords(kept);
}

/** Whether the last food that words name is a product: 'chicken stock' is, 'soup chicken' is not. */
function isProduct(part: string): boolean {
  // 'stock from chicken bones'
  const [own = ''] = part.split(/\b(?:from|of)\b/i);
  const product = lastAt(own, PRODUCT);
  return product >= 0 && ANIMAL.every((words) => lastAt(own, words) < product);
}

/** The parts without what is eaten as it is bought; none where a part says it of all: 'Fish, salmon, smoked'. */
function withoutBought(parts: readonly string[]): readonly string[] {
  const bought = parts.filter((part) => AS_BOUGHT.test(part));
  const isAnimal = (part: string) => ANIMAL.some((words) => words.test(part));
  // "1 tin of beans, 4 chicken thighs": two foods in one line.
  const another = parts.some((part, index) => index > 0 && /^\s*\d/.test(part) && isAnimal(part));
  const ofAll = !another && bought.some((part) => part === parts[0] || !isAnimal(part));
  return ofAll ? [] : parts.filter((part) => !bought.includes(part));
}

function ofWords(parts: readonly string[]): Kind | null {
  const words = parts.join(',');
  const [first = ''] = parts;
  const isEgg = EGG.test(words);
  if (isEgg && (/^\W*eggs?\b/i.test(first) || EGG_OF_POULTRY.test(first.trim()))) return 'eggDish';
  if (POULTRY.test(words)) return 'poultry';
  if (HAM.test(words)) return 'ham';
  if (OF_GROUND.test(words) && !OF_PLANTS.test(words)) return 'groundMeat';
  if (MEAT.test(words)) return GROUND.test(words) ? 'groundMeat' : 'wholeCut';
  if (/\bmince$/i.test(first.trim())) return 'groundMeat';
  if (FISH.test(words)) return 'fish';
  return isEgg ? 'eggDish' : null;
}

function lastAt(text: string, words: RegExp): number {
  const all = [...text.matchAll(new RegExp(words.source, 'gi'))];
  return all.at(-1)?.index ?? -1;
}
