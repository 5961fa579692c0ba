import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import type { Role } from '../language';
import type { NutrientUnit } from '../statement';
import { all, framed, phrasesOf } from './words';

const SPELLINGS: readonly (readonly [Nutrient, string])[] = [
  [
    'energyKcal',
    'calorie, calories, cal, cals, kcal, kcals, kilocalorie, kilocalories, kay cals, kay cal, k cals, k cal, calories wise, calorie wise, caloriewise, calorieswise, the energy, the total energy, energy',
  ],
  ['protein', 'protein, proteins, prot, pro, prot., pro., protein wise, proteinwise'],
  [
    'carbohydrate',
    'carb, carbs, carbohydrate, carbohydrates, total carbs, total carbohydrate, total carbohydrates, total carb, carb wise, carbs wise',
  ],
  ['netCarbohydrate', 'net carbs, net carb, net carbohydrate, net carbohydrates'],
  ['fat', 'fat, fats, total fat, fat wise, fats wise'],
  [
    'saturated',
    'sat fat, sat fats, saturated fat, saturated fats, saturates, saturated, of which saturates, of which saturated, of which is saturated, of which are saturated, of that saturated, sats, sat, sat., satfat',
  ],
  ['monounsaturated', 'monounsaturated fat, monounsaturates, monounsaturated'],
  ['polyunsaturated', 'polyunsaturated fat, polyunsaturates, polyunsaturated'],
  ['transFat', 'trans fat, trans fats'],
  ['fibre', 'fibre, fiber, dietary fibre, dietary fiber, fibre wise, fiber wise'],
  [
    'sugars',
    'sugar, sugars, natural sugar, natural sugars, naturally occurring sugar, naturally occurring sugars, sugar wise, total sugars, total sugar, of which sugars, of which sugar, of which are sugars, of which are sugar, of which is sugar',
  ],
  ['addedSugars', 'added sugar, added sugars'],
  ['salt', 'salt, salt wise'],
  ['sodium', 'sodium, sodium wise'],
  ['cholesterol', 'cholesterol'],
  ['potassium', 'potassium'],
  ['calcium', 'calcium'],
  ['iron', 'iron'],
  ['magnesium', 'magnesium'],
  ['zinc', 'zinc'],
  ['phosphorus', 'phosphorus'],
  ['selenium', 'selenium'],
  ['copper', 'copper'],
  ['manganese', 'manganese'],
  ['choline', 'choline'],
  ['folate', 'folate'],
  ['folicAcid', 'folic acid'],
  ['thiamin', 'thiamin, thiamine, vitamin b1'],
  ['riboflavin', 'riboflavin, vitamin b2'],
  ['niacin', 'niacin, vitamin b3'],
  ['pantothenicAcid', 'pantothenic acid'],
  ['vitaminC', 'vitamin c'],
  ['vitaminB6', 'vitamin b6'],
  ['vitaminB12', 'vitamin b12, b12'],
  ['vitaminARae', 'vitamin a'],
  ['vitaminDMicrograms', 'vitamin d'],
  ['vitaminE', 'vitamin e'],
  ['vitaminK', 'vitamin k'],
  ['polyols', 'polyols, sugar alcohols'],
  ['alcohol', 'alcohol'],
];

/** What may be said of each name. */
const NAMED =
  "{}'s, {} count, {} content, {} total, {} figure, {} number, {} tally, {} level, of that being {}, of which being {}";

/** Names of nutrients in speech, on labels of the United States and of Europe. */
export const NUTRIENT_NOUNS: [string, Role][] = SPELLINGS.flatMap(([nutrient, names]) =>
  all<Role>(`${names}, ${framed(NAMED, phrasesOf(names)).join(', ')}`, {
    cat: 'noun',
    nutrient,
    unit: NUTRIENTS[nutrient].unit as NutrientUnit,
  }),
);

/** What a part of a nutrient is called behind it. */
const PARTS: readonly (readonly [Nutrient, Nutrient, string])[] = [
  ['addedSugars', 'sugars', 'added'],
  ['addedSugars', 'carbohydrate', 'added sugar'],
  ['saturated', 'fat', 'saturated, saturates'],
  ['sugars', 'carbohydrate', 'sugar, sugars'],
];

/** 'eleven grams of sugar and four of that is added'. */
export const PART_NOUNS: [string, Role][] = PARTS.flatMap(([nutrient, of, names]) =>
  all<Role>(
    framed(
      'of that is {}, of that are {}, of which is {}, of which are {}, of those are {}, of them are {}, of it is {}, of it {}, of that {}, of which {}, of them {}',
      phrasesOf(names),
    ).join(', '),
    { cat: 'noun', nutrient, unit: NUTRIENTS[nutrient].unit as NutrientUnit, of },
  ),
);

/** Letters for the three macronutrients beside a number. */
export const LETTERS: ReadonlyMap<string, Nutrient> = new Map([
  ['P', 'protein'],
  ['C', 'carbohydrate'],
  ['F', 'fat'],
]);
