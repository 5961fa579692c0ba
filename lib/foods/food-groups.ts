import type { Section } from '#lib/foods/food';

/**
 * The 25 food groups of USDA SR28 (SR28 documentation, "Food Group Description File"),
 * each with the shop section in which most of its foods stand. The sections are ours.
 */
export const FOOD_GROUPS = {
  '0100': { name: 'Dairy and Egg Products', section: 'dairyAndEggs' },
  '0200': { name: 'Spices and Herbs', section: 'spicesAndBaking' },
  '0300': { name: 'Baby Foods', section: 'other' },
  '0400': { name: 'Fats and Oils', section: 'oilsAndSauces' },
  '0500': { name: 'Poultry Products', section: 'meatAndFish' },
  '0600': { name: 'Soups, Sauces, and Gravies', section: 'tinsAndJars' },
  '0700': { name: 'Sausages and Luncheon Meats', section: 'meatAndFish' },
  '0800': { name: 'Breakfast Cereals', section: 'dryGoods' },
  '0900': { name: 'Fruits and Fruit Juices', section: 'produce' },
  '1000': { name: 'Pork Products', section: 'meatAndFish' },
  '1100': { name: 'Vegetables and Vegetable Products', section: 'produce' },
  '1200': { name: 'Nut and Seed Products', section: 'dryGoods' },
  '1300': { name: 'Beef Products', section: 'meatAndFish' },
  '1400': { name: 'Beverages', section: 'drinks' },
  '1500': { name: 'Finfish and Shellfish Products', section: 'meatAndFish' },
  '1600': { name: 'Legumes and Legume Products', section: 'dryGoods' },
  '1700': { name: 'Lamb, Veal, and Game Products', section: 'meatAndFish' },
  '1800': { name: 'Baked Products', section: 'bakery' },
  '1900': { name: 'Sweets', section: 'dryGoods' },
  '2000': { name: 'Cereal Grains and Pasta', section: 'dryGoods' },
  '2100': { name: 'Fast Foods', section: 'other' },
  '2200': { name: 'Meals, Entrees, and Side Dishes', section: 'other' },
  '2500': { name: 'Snacks', section: 'dryGoods' },
  '3500': { name: 'American Indian/Alaska Native Foods', section: 'other' },
  '3600': { name: 'Restaurant Foods', section: 'other' },
} as const satisfies Record<string, { name: string; section: Section }>;

export type FoodGroup = keyof typeof FOOD_GROUPS;

/** Whether a text is the code of one of the 25 groups. */
export function isFoodGroup(text: string): text is FoodGroup {
  return Object.hasOwn(FOOD_GROUPS, text);
}

/** Words that say more than the group does about where a food stands in a shop; the first match wins. */
const SECTION_BY_WORDS: readonly {
  readonly groups: readonly FoodGroup[];
  readonly words: RegExp;
  readonly section: Section;
}[] = [
  { groups: ['0900', '1100', '1500', '1800'], words: /\bfrozen\b/i, section: 'frozen' },
  { groups: ['1900'], words: /\b(ice cream|frozen|sherbet)\b/i, section: 'frozen' },
  { groups: ['0900', '1100', '1500', '1600'], words: /\bcanned\b/i, section: 'tinsAndJars' },
  { groups: ['0900'], words: /^(lemon|lime) juice\b/i, section: 'produce' },
  { groups: ['0900', '1100'], words: /\bjuice\b/i, section: 'drinks' },
  { groups: ['0600', '1600'], words: /\bsauce\b/i, section: 'oilsAndSauces' },
  { groups: ['0200'], words: /^vinegar\b/i, section: 'oilsAndSauces' },
  { groups: ['1600'], words: /^(tofu|tempeh)\b/i, section: 'produce' },
  { groups: ['1800'], words: /^leavening agents\b/i, section: 'spicesAndBaking' },
  { groups: ['1900'], words: /^sugars?\b/i, section: 'spicesAndBaking' },
  { groups: ['0400'], words: /^butter\b/i, section: 'dairyAndEggs' },
  { groups: ['0200'], words: /\bfresh\b/i, section: 'produce' },
];

/**
 * The shop section of a reference food, from its group and, where that says more, from words in its name.
 * `sectionOf('1100', 'Peas, green, frozen, unprepared')` → `'frozen'`.
 * Source: none; common practice of shops.
 */
export function sectionOf(group: FoodGroup, name: string): Section {
  for (const rule of SECTION_BY_WORDS) {
    if (rule.groups.includes(group) && rule.words.test(name)) return rule.section;
  }
  return FOOD_GROUPS[group].section;
}
