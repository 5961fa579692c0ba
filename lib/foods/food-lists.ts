/**
 * The closed lists of a food and its cells, apart from the schemas that check them, so that a form in the
 * browser can use them without carrying the schema library.
 */

/** The state in which a composition holds, or in which an ingredient was weighed. */
export const STATES = ['raw', 'cooked', 'drained', 'dry', 'asIs'] as const;

/** Where something stands in a shop; the order is the order of the printed shopping list. */
export const SECTIONS = [
  'produce',
  'bakery',
  'meatAndFish',
  'dairyAndEggs',
  'frozen',
  'tinsAndJars',
  'dryGoods',
  'spicesAndBaking',
  'oilsAndSauces',
  'drinks',
  'other',
] as const;

/**
 * Which rule maps true values to the values printed on this source.
 * `us`: 21 CFR 101.9(c); `eu`: EU rounding guidance of 2012; `asPrinted`: half a unit of the last place.
 */
export const ROUNDING_RULES = ['us', 'eu', 'asPrinted'] as const;

/** US nine (FALCPA 2004, FASTER Act 2021) and EU fourteen (Reg. 1169/2011 Annex II), as one list. */
export const ALLERGENS = [
  'milk',
  'egg',
  'fish',
  'crustaceans',
  'treeNuts',
  'peanuts',
  'wheat',
  'glutenCereals',
  'soy',
  'sesame',
  'celery',
  'mustard',
  'sulphites',
  'lupin',
  'molluscs',
] as const;
