import type { Nutrient } from '#lib/foods/nutrients';
import type { Interval } from '#lib/units/interval';

/** Where the factors stand. */
export const RETENTION_SOURCE = 'USDA Table of Nutrient Retention Factors, Release 6 (2007)';

/** How much of its vitamins and minerals a food keeps when it is cooked in a certain way. */
export interface RetentionRow {
  /** The table's own code, four digits there. */
  readonly code: string;
  readonly words: string;
  /** Percent kept, as printed: in steps of 5, and 100 where all is kept. */
  readonly kept: Partial<Readonly<Record<Nutrient, number>>>;
}

const row = (code: string, words: string, kept: readonly [Nutrient, number][]): RetentionRow => ({
  code,
  words,
  kept: Object.fromEntries(kept),
});

const seven = (
  calcium: number,
  iron: number,
  potassium: number,
  vitaminC: number,
  thiamin: number,
  vitaminB6: number,
  folate: number,
): [Nutrient, number][] => [
  ['calcium', calcium],
  ['iron', iron],
  ['potassium', potassium],
  ['vitaminC', vitaminC],
  ['thiamin', thiamin],
  ['vitaminB6', vitaminB6],
  ['folate', folate],
];

/**
 * The rows that were read from a copy of the table; what a row lacks here is unknown, not all kept. The table has
 * no protein, fat or carbohydrate: of those everything stays.
 */
export const RETENTION_ROWS: readonly RetentionRow[] = [
  row('1', 'cheese, baked', seven(100, 100, 100, 65, 75, 75, 80)),
  row('151', 'fruit, fresh, not citrus, baked', [
    ...seven(95, 100, 90, 80, 80, 95, 60),
    ['magnesium', 100],
    ['phosphorus', 100],
    ['sodium', 100],
    ['zinc', 100],
    ['copper', 90],
    ['riboflavin', 95],
    ['niacin', 90],
    ['vitaminARae', 85],
    ['vitaminAIu', 85],
  ]),
  row('385', 'pasta, reheated', seven(100, 100, 100, 95, 95, 100, 95)),
  row('431', 'rice, cooked, drained', seven(95, 90, 85, 75, 75, 90, 60)),
  row('432', 'rice, cooked, water used', seven(100, 95, 95, 80, 80, 95, 70)),
];

/** Vitamins and minerals: all that the table is about, alcohol aside. */
const MICRONUTRIENTS: ReadonlySet<Nutrient> = new Set<Nutrient>([
  'calcium',
  'iron',
  'magnesium',
  'phosphorus',
  'potassium',
  'sodium',
  'zinc',
  'copper',
  'manganese',
  'selenium',
  'vitaminC',
  'thiamin',
  'riboflavin',
  'niacin',
  'pantothenicAcid',
  'vitaminB6',
  'folate',
  'folicAcid',
  'foodFolate',
  'folateDfe',
  'choline',
  'vitaminB12',
  'vitaminAIu',
  'vitaminARae',
  'retinol',
  'alphaCarotene',
  'betaCarotene',
  'betaCryptoxanthin',
  'lycopene',
  'luteinZeaxanthin',
  'vitaminE',
  'vitaminDMicrograms',
  'vitaminDIu',
  'vitaminK',
  'salt',
]);

/** Half of the table's step of 5 percent. */
const HALF_STEP = 0.025;

export type Retention =
  | { readonly kind: 'all' }
  | { readonly kind: 'share'; readonly id: string; readonly share: Interval }
  | { readonly kind: 'unknown' };

/**
 * What of a nutrient is kept by a code of the table: all of what it is not about, a share ± half its step, or
 * unknown where the row does not say.
 * @example retentionOf('431', 'folate') // { kind: 'share', share: { low: 0.575, value: 0.6, high: 0.625 }, … }
 */
export function retentionOf(code: string | null, nutrient: Nutrient): Retention {
  if (code === null || !MICRONUTRIENTS.has(nutrient)) return { kind: 'all' };
  const known = RETENTION_ROWS.find((each) => each.code === code);
  const percent = known?.kept[nutrient === 'salt' ? 'sodium' : nutrient];
  if (percent === undefined) return { kind: 'unknown' };
  const value = percent / 100;
  return {
    kind: 'share',
    // Salt is sodium in other words, and shares its error.
    id: `retention:${code}:${nutrient === 'salt' ? 'sodium' : nutrient}`,
    share: { low: Math.max(0, value - HALF_STEP), value, high: Math.min(1, value + HALF_STEP) },
  };
}
