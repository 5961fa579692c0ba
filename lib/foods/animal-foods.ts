/** Foods of animals that a diet leaves out and that are no allergen of law. */
export const ANIMAL_FOODS = ['meat', 'gelatine', 'honey'] as const;
export type AnimalFood = (typeof ANIMAL_FOODS)[number];

/**
 * Words in a food's name that say what it is of. Meat by its animals, cuts and what is made of it, also what nobody has
 * to cook: stock of it, lard. A rule of thumb of ours over the words of tables, labels and ingredients.
 */
const WORDS: Readonly<Record<AnimalFood, RegExp>> = {
  meat: /\b(?:beef|pork|veal|lamb|mutton|bison|venison|rabbit|oxtail|bacon|gammon|hams?|brisket|sirloin|ribeye|chickens?|turkeys?|ducks?|goose|quails?|pheasants?|meats?|mince|sausages?|bratwursts?|frankfurters?|hot dogs?|meatballs?|meatloaf|burgers?|hamburgers?|steaks?|chorizo|salami|pepperoni|prosciutto|pancetta|pastrami|mortadella|nduja|biltong|jerky|lard|suet|tallow|bone broth)\b/i,
  gelatine: /\b(?:gelatine?s?|marshmallows?)\b/i,
  honey: /\bhoney\b/i,
};

/** Made to do without, wherever in a name it stands: 'Bacon, meatless'. */
const WITHOUT =
  /\b(?:vegan|vegetarian|veggie|plant[- ]based|meatless|(?:meat|honey|gelatine?)[- ]free|imitation|mock|substitutes?|alternatives?|replacers?)\b/i;

/** Between foods of their own: 'chicken with vegan mayo'. */
const APART = /\b(?:with|and|plus|or|in|on)\b|[&+;/()]/i;

/** The same words in names of other things. */
const ELSE =
  /\b(?:beef(?:steak)?|beef steak|lamb['’]?s) (?:tomato(?:es)?|lettuce)\b|\b(?:chicken|turkey|duck|goose|quail)['’]?s? eggs?\b|\begg, (?:duck|goose|quail|turkey)\b.*|\b(?:beans?|lentils?|chickpeas?|mushrooms?|tofu|soy|nuts?) (?:burgers?|sausages?|meat(?:balls?)?|mince)\b|\bhoney(?:dew|crisp|comb toffee)\b|\b(?:nut|coconut|crab|lobster|fish) meats?\b|\b(?:burger|hamburger|hot dog|frankfurter) (?:buns?|rolls?)\b|\brolls?, (?:hamburger|hotdog)\b.*|\b(?:steak|chicken|poultry|meat|sausage) (?:seasoning|rub|spice|fries)\b|\bvegetable suet\b|\bmeat thermometer\b/gi;

/**
 * Which foods of animals a name is of, by its words.
 * @example animalFoodsIn('Bacon, smoked, raw') // ['meat']
 * @example animalFoodsIn('vegan sausages') // []
 */
export function animalFoodsIn(name: string): AnimalFood[] {
  const own = name
    .split(APART)
    .filter((part) => !WITHOUT.test(part))
    .join(';')
    .replace(ELSE, ' ');
  return ANIMAL_FOODS.filter((each) => WORDS[each].test(own));
}
