/** A row of the reference amounts customarily consumed (21 CFR 101.12(b), table 2), as sold ready to eat. */
export interface ReferenceAmount {
  readonly what: string;
  /** Null where it is a volume: then somebody has to weigh it. */
  readonly massMg: number | null;
  /** As the table says it: "140 g", "1 cup". */
  readonly amount: string;
}

type Row = readonly [what: string, amount: string, grams: number | null, words: string];

/** Rows for what is cooked at home, with the words of a title that speak for each (the words: common practice). */
const ROWS: readonly Row[] = [
  ['eggs', '50 g', 50, 'egg, eggs, omelette, omelet, frittata'],
  ['cottage cheese', '110 g', 110, 'cottage cheese'],
  ['cheese', '30 g', 30, 'cheese'],
  ['yogurt', '170 g', 170, 'yogurt, yoghurt, skyr, parfait'],
  ['milk and milk drinks', '240 mL', null, 'milk, latte, shake, smoothie, lassi, kefir'],
  [
    'bread and rolls',
    '50 g',
    50,
    'bread, flatbread, flatbreads, loaf, roll, rolls, bun, buns, naan, focaccia, cornbread',
  ],
  ['bagels, toaster pastries and muffins', '110 g', 110, 'bagel, bagels, muffin, muffins'],
  ['pancakes', '110 g', 110, 'pancake, pancakes, crepe, crepes, fritter, fritters'],
  ['waffles', '85 g', 85, 'waffle, waffles'],
  ['cookies', '30 g', 30, 'cookie, cookies, biscuit, biscuits'],
  ['brownies', '40 g', 40, 'brownie, brownies, blondie, blondies'],
  ['cakes, heavy', '125 g', 125, 'cheesecake, fruitcake'],
  ['cakes, medium', '80 g', 80, 'cake, cakes, cupcake, cupcakes'],
  ['grain bars', '40 g', 40, 'bar, bars, flapjack, flapjacks'],
  ['breakfast cereals, hot', '1 cup prepared, 40 g dry', null, 'porridge, oatmeal, oats, congee'],
  ['pasta, prepared, plain', '140 g', 140, 'pasta, noodles, spaghetti, macaroni, orzo'],
  [
    'rice and other grains, prepared, plain',
    '140 g',
    140,
    'rice, quinoa, couscous, bulgur, barley',
  ],
  [
    'beans, plain or in sauce',
    '90 g; 130 g in sauce or liquid',
    90,
    'beans, lentils, chickpeas, hummus',
  ],
  [
    'vegetables',
    '85 g',
    85,
    'vegetable, vegetables, zucchini, courgette, broccoli, carrots, greens, slaw, sprouts, kale, cauliflower',
  ],
  ['salads with meat, egg, fish, potato or pasta', '140 g', 140, 'salad'],
  ['fruit, raw or cooked', '140 g', 140, 'fruit, berries, apple, apples, compote'],
  ['nuts and seeds', '30 g', 30, 'nuts, granola, trail mix'],
  ['dressings', '30 g', 30, 'dressing, vinaigrette, mayo'],
  ['dips and spreads', '2 tbsp', 30, 'dip, spread, hummus'],
  ['major sauces', '125 g', 125, 'sauce, ragu, bolognese'],
  ['soups', '245 g', 245, 'soup, chowder, bisque, broth, ramen, pho'],
  ['puddings and custards', '1/2 cup', null, 'pudding, custard, mousse, panna cotta'],
  ['ice cream and frozen desserts', '2/3 cup', null, 'ice cream, gelato, sorbet, nice cream'],
  ['potatoes, plain; fries', '110 g; 70 g fried', 110, 'potato, potatoes, fries, wedges, mash'],
  [
    'cooked meat, fish and poultry, plain',
    '85 g',
    85,
    'chicken, salmon, steak, cod, prawns, shrimp, fish, turkey, pork, beef',
  ],
  [
    'mixed dishes not measured with a cup',
    '140 g; 195 g with gravy or sauce on top',
    140,
    'pizza, burrito, burritos, taco, tacos, wrap, wraps, sandwich, burger, quiche, lasagne, lasagna, enchilada, enchiladas, meatloaf, pie, meatballs, casserole, bake, traybake, kebab, dumplings, patties, egg rolls, quesadilla',
  ],
  [
    'mixed dishes measured with a cup',
    '1 cup',
    null,
    'stew, chili, chilli, curry, hash, hotpot, mac, stir fry, skillet, bowl, risotto, casserole, goulash, pilaf, paella, dal, dhal, pots',
  ],
];

const TABLE = ROWS.map(([what, amount, grams, words]) => {
  const row: ReferenceAmount = { what, amount, massMg: grams === null ? null : grams * 1000 };
  return { row, words: words.split(', ') };
});

/** The table, in its order here. */
export const REFERENCE_AMOUNTS: readonly ReferenceAmount[] = TABLE.map(({ row }) => row);

/** How many rows are offered. */
const MOST = 3;

/**
 * The rows that a dish's title speaks for, the last word of the title first; both rows of mixed dishes where it speaks for none. Only
 * ever proposed: what is customarily eaten of it is the person's to say.
 * @example likelyAmounts('Tray-baked turkey meatloaf').map(({ what }) => what)
 *   // ['mixed dishes not measured with a cup', 'cooked meat, fish and poultry, plain']
 */
export function likelyAmounts(title: string): readonly ReferenceAmount[] {
  const said = ` ${title.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ')} `;
  const found = TABLE.map(({ row, words }) => ({
    row,
    last: Math.max(...words.map((word) => said.lastIndexOf(` ${word} `))),
  })).filter(({ last }) => last >= 0);
  // The word that stands last names the dish: a turkey meatloaf is a meatloaf.
  const rows = found.sort((a, b) => b.last - a.last).map(({ row }) => row);
  return (rows.length > 0 ? rows : REFERENCE_AMOUNTS.slice(-2)).slice(0, MOST);
}
