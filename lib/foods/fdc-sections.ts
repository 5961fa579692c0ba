import type { Section } from '#lib/foods/food';

/**
 * Where a product stands in a shop, by words of its category ("branded_food_category"); the first rule that fits.
 * The sections are ours; the categories are free words of the data's providers. Source: none, common practice.
 */
const RULES: readonly (readonly [RegExp, Section])[] = [
  [/\bfrozen\b|\bice cream\b|\bsorbet\b/i, 'frozen'],
  [/\bcanned\b|\btinned\b|\bsoups?\b|\bpickles?\b|\bolives\b|\bstew/i, 'tinsAndJars'],
  [
    /\boils?\b|\bsauces?\b|\bdressings?\b|\bvinegar|\bcondiments?\b|\bmayonnaise\b|\bketchup\b|\bdips?\b|\bgrav(?:y|ies)\b/i,
    'oilsAndSauces',
  ],
  [
    /\bspices?\b|\bherbs?\b|\bseasonings?\b|\bbaking\b|\bsugars?\b|\bsweeteners?\b|\bextracts?\b|\bsalts?\b/i,
    'spicesAndBaking',
  ],
  [/\b(?:drinks?|beverages?|juices?|sodas?|waters?|coffees?|teas?|wines?|beers?)\b/i, 'drinks'],
  [
    /\bmilks?\b|\bcheeses?\b|\byogh?urts?\b|\bbutters? ?&|\bbutter\b(?!.*\bnut\b)|\bcreams?\b|\beggs?\b|\bdairy\b/i,
    'dairyAndEggs',
  ],
  [
    /\bmeats?\b|\bpoultry\b|\bchicken\b|\bbeef\b|\bpork\b|\bturkey\b|\bfish\b|\bseafood\b|\bsausages?\b|\bbacon\b|\bham\b|\bdeli\b/i,
    'meatAndFish',
  ],
  [
    /\bbreads?\b|\bbuns?\b|\bbakery\b|\bcakes?\b|\bcroissants?\b|\btortillas?\b|\bmuffins?\b|\bpastr(?:y|ies)\b/i,
    'bakery',
  ],
  [
    /\bpre-?packaged fruit|\bfresh\b|\bproduce\b|\bvegetables?\b|\bsalads?\b|\bfruits?\b/i,
    'produce',
  ],
  [
    /\bcereals?\b|\bpastas?\b|\brice\b|\bgrains?\b|\bflours?\b|\bbeans?\b|\bnuts?\b|\bseeds?\b|\bsnacks?\b|\bchips\b|\bcrackers?\b|\bcookies?\b|\bbiscuits?\b|\bcandy\b|\bchocolates?\b|\bpopcorn\b|\bbars?\b|\bjams?\b|\bhoney\b/i,
    'dryGoods',
  ],
];

/** `sectionOfCategory('Frozen Vegetables')` → `'frozen'`; words that no rule knows give `'other'`. */
export function sectionOfCategory(category: string): Section {
  return RULES.find(([words]) => words.test(category))?.[1] ?? 'other';
}
