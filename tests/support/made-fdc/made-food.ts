import { checkDigit } from '#lib/foods/gtin';
import { declareUs } from '#lib/foods/label-rounding';
import type { Nutrient } from '#lib/foods/nutrients';
import { uniform } from '../uniform';

/** A made-up product as its label has it; no brand, owner or barcode of it is anybody's. */
export interface MadeProduct {
  readonly fdcId: number;
  readonly description: string;
  readonly brandName: string;
  readonly brandOwner: string;
  readonly gtin: string;
  readonly ingredients: string;
  readonly category: string;
  readonly servingSize: number;
  readonly servingUnit: 'g' | 'ml';
  readonly household: string;
  /** What the label prints for a serving. */
  readonly label: Readonly<Partial<Record<Nutrient, string>>>;
  readonly published: string;
}

const KINDS =
  'oat,rye,barley,spelt,millet,almond,hazel,walnut,sesame,poppy,apple,pear,plum,quince,cherry,lentil,chickpea,pea,carrot,beet,leek,fennel,tomato,pepper,squash,cocoa,vanilla,ginger,cumin,mustard,chocolate,milk,cheese,yogurt,butter,cream,chicken,salmon,trout,mushroom'.split(
    ',',
  );
const FORMS =
  'bar,crunch,soup,spread,sauce,crackers,drink,granola,noodles,dumplings,bites,puree,relish,flakes,biscuits,loaf,patties,salad,dip,porridge'.split(
    ',',
  );
const WAYS =
  'toasted,smooth,chunky,spicy,mild,sweet,salted,unsalted,organic,roasted,creamy,crisp,classic,light,hearty,golden,dark,tangy,rustic,whole'.split(
    ',',
  );
const PLACES =
  'Hollowbrook,Fernmarch,Quillmoor,Saltwick,Bramblehythe,Oddenfell,Larkstow,Wrenholt,Tarnside,Pebblecombe,Mosswater,Cindermere,Hazelbeck,Drumlow,Eiderby,Thornquay'.split(
    ',',
  );
const HOUSES =
  'Larder,Mill,Kitchen,Pantry,Farmstead,Provisions,Bakehouse,Cellar,Grange,Garden'.split(',');

const STATED: readonly (readonly [Nutrient, number])[] = [
  ['energyKcal', 420],
  ['fat', 22],
  ['saturated', 9],
  ['transFat', 0.4],
  ['cholesterol', 45],
  ['sodium', 700],
  ['carbohydrate', 55],
  ['fibre', 8],
  ['sugars', 30],
  ['addedSugars', 20],
  ['protein', 18],
];

/** The numbers by which the tables name what a label states, with id and unit. */
export const MADE_NUTRIENTS = [
  [1008, 'Energy', 'KCAL', '208', 'energyKcal'],
  [1004, 'Total lipid (fat)', 'G', '204', 'fat'],
  [1258, 'Fatty acids, total saturated', 'G', '606', 'saturated'],
  [1257, 'Fatty acids, total trans', 'G', '605', 'transFat'],
  [1253, 'Cholesterol', 'MG', '601', 'cholesterol'],
  [1093, 'Sodium, Na', 'MG', '307', 'sodium'],
  [1005, 'Carbohydrate, by difference', 'G', '205', 'carbohydrate'],
  [1079, 'Fiber, total dietary', 'G', '291', 'fibre'],
  [2000, 'Total Sugars', 'G', '269', 'sugars'],
  [1235, 'Sugars, added', 'G', '539', 'addedSugars'],
  [1003, 'Protein', 'G', '203', 'protein'],
  [1051, 'Water', 'G', '255', 'water'],
  [1087, 'Calcium, Ca', 'MG', '301', 'calcium'],
] as const satisfies readonly (readonly [number, string, string, string, Nutrient])[];

/**
 * The made-up product of a place in a list, the same for the same seed. One of four comes from a small list of
 * names, so that words are as unevenly spread as in a shop.
 */
export function madeProduct(seed: number, place: number, products = Infinity): MadeProduct {
  // Records after so many products are later readings of the same ones, some of them under another name.
  const product = Number.isFinite(products) ? place % products : place;
  const reading = Number.isFinite(products) ? Math.floor(place / products) : 0;
  const draw = uniform(seed * 1_000_003 + product + (reading % 4 === 3 ? 500_009 : 0));
  const of = <T>(list: readonly T[]): T => list[Math.floor(draw() ** 1.7 * list.length)] as T;
  const kinds = [of(KINDS), of(KINDS)];
  const description = [of(WAYS), ...new Set(kinds), of(FORMS)].join(' ').toUpperCase();
  const owner = `${of(PLACES)} ${of(HOUSES)}`;
  const servingUnit = draw() < 0.15 ? 'ml' : 'g';
  const servingSize = servingUnit === 'ml' ? 240 : 10 + Math.floor(draw() * 90);
  const label: Partial<Record<Nutrient, string>> = {};
  for (const [nutrient, most] of STATED) {
    const true100 = draw() ** 2 * most;
    const said = declareUs(nutrient, (true100 * servingSize) / 100);
    label[nutrient] = said[Math.floor(draw() * said.length)] ?? '0';
  }
  // Prefix 02 is for numbers inside a shop: no product on sale anywhere has one of these.
  const before = String(20_000_000_000 + product);
  return {
    fdcId: 9_000_000 + place,
    description,
    brandName: draw() < 0.5 ? `${of(PLACES)} ${place % 997}` : '',
    brandOwner: owner,
    gtin: before + checkDigit(before),
    ingredients: `${kinds.join(', ').toUpperCase()}, WATER, SALT ("SEA"), SPICE`,
    category: of(['Snack Bars', 'Canned Soup', 'Dips & Salsa', 'Frozen Vegetables', 'Cheese']),
    servingSize,
    servingUnit,
    household: servingUnit === 'ml' ? '1 cup' : `${1 + (place % 3)} pieces`,
    label,
    published: `20${20 + (place % 6)}-0${1 + (place % 9)}-15`,
  };
}

/** The amount per 100 that the tables give for what a label prints, and how it was worked out. */
export function publishedAmount(
  printed: string,
  servingSize: number,
): { readonly amount: string; readonly derivation: 'LCCS' | 'LCSL' } {
  const value = Number(printed.replace('<', ''));
  const per100 = Math.round((value / servingSize) * 10_000) / 100;
  return { amount: String(per100), derivation: printed.startsWith('<') ? 'LCSL' : 'LCCS' };
}
