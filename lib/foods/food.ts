import { z } from 'zod';
import { ALLERGENS, ROUNDING_RULES, SECTIONS, STATES } from '#lib/foods/food-lists';
import { STATED_NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';

/**
 * The plain data of a food: its composition per 100 g, per 100 ml or per serving, as printed.
 * These schemas are the boundary: a file, a form and a database row all pass through them.
 */

export { cellOf } from '#lib/foods/cell-of';
export { ALLERGENS, ROUNDING_RULES, SECTIONS, STATES };

const id = z.string().min(1).max(64);
const text = (max: number) => z.string().max(max);
const printedSchema = z.object({
  mantissa: z.int().nonnegative(),
  scale: z.int().min(0).max(6),
});

/**
 * One printed cell of a table or label. `eq` keeps the digits ("0.0" is not "0.00"), and where the source prints
 * an error of its own ("12.4 ± 0.3") that as well;
 * `lessThan` is "<1 g"; `trace` counts as 0 and is flagged; `missing` is a blank and never 0.
 */
export const cellSchema = z.discriminatedUnion('kind', [
  printedSchema.extend({ kind: z.literal('eq'), plusMinus: printedSchema.optional() }),
  printedSchema.extend({ kind: z.literal('lessThan') }),
  z.object({ kind: z.literal('trace') }),
  z.object({ kind: z.literal('missing') }),
]);
export type Cell = z.infer<typeof cellSchema>;

const nutrientName = z.enum(STATED_NUTRIENTS as unknown as [Nutrient, ...Nutrient[]]);

/** A nutrient that is absent from the record is missing, exactly as one whose cell says so. */
export const valuesSchema = z.partialRecord(nutrientName, cellSchema);
export type Values = Partial<Record<Nutrient, Cell>>;

export const stateSchema = z.enum(STATES);
export type FoodState = z.infer<typeof stateSchema>;

export const sectionSchema = z.enum(SECTIONS);
export type Section = z.infer<typeof sectionSchema>;

export type RoundingRule = (typeof ROUNDING_RULES)[number];

/** One immutable reading of a table row or label; reading a label again adds a version. */
export const foodVersionSchema = z.object({
  id,
  seq: z.int().min(1),
  /** What the values are stated for. */
  basis: z.enum(['per100g', 'per100ml', 'serving']),
  /** The label's serving as printed: grams or millilitres with the printed digits. */
  serving: z
    .object({
      massMg: z.int().positive().nullable(),
      volumeMl: z.number().positive().nullable(),
      /** Decimals printed after the serving's amount, for its rounding bounds. */
      decimals: z.int().min(0).max(3),
      /** The household words, as in "2 slices". */
      text: text(80),
      /** Servings per pack as printed; null where the label does not say. */
      perPack: z.number().positive().nullable(),
    })
    .nullable(),
  values: valuesSchema,
  /** The same label's second column, where it prints one: a serving beside 100 g or ml, or the other way round. */
  secondColumn: z
    .object({ basis: z.enum(['per100g', 'per100ml', 'serving']), values: valuesSchema })
    .nullable(),
  /** Whether fibre is inside the carbohydrate value (US: total) or outside (EU: available). */
  carbBasis: z.enum(['total', 'available']),
  state: stateSchema,
  /** Energy factors in kcal per gram where the table gives them for this food. */
  factors: z
    .object({
      protein: printedSchema.nullable(),
      fat: printedSchema.nullable(),
      carbohydrate: printedSchema.nullable(),
      nitrogen: printedSchema.nullable(),
    })
    .nullable(),
  /** Percent of the food as bought that is not eaten, and what it is ("ends", "shell"). */
  refuse: z
    .object({
      percent: z.int().min(0).max(99),
      text: text(200),
      /** True where the values are for the food as bought ("with bone"): it is then never taken off again. */
      inValues: z.boolean().default(false),
    })
    .nullable(),
  rule: z.enum(ROUNDING_RULES),
  /** Who says so: "USDA", "package label", "my own weighing". Shown wherever a value is. */
  source: text(80),
  release: text(40),
  sourceNo: text(40),
  dateRead: z.iso.date().nullable(),
  /** Remarks that a consistency check raised and the person kept, with their reason. */
  kept: z.array(z.object({ code: text(60), reason: text(400) })),
});
export type FoodVersion = z.infer<typeof foodVersionSchema>;

/** A household measure of a food: `qtyNum/qtyDen` of `name` weighs `massMg`. */
export const foodMeasureSchema = z.object({
  id,
  name: text(120),
  qtyNum: z.int().positive(),
  qtyDen: z.int().positive(),
  massMg: z.int().positive(),
  /** Decimals of the printed gram weight. */
  digits: z.int().min(0).max(4),
  source: text(120),
});
export type FoodMeasure = z.infer<typeof foodMeasureSchema>;

/** Cooked grams from raw grams, by a person's own two weights or from a published table. */
export const yieldSchema = z.object({
  id,
  method: text(80),
  rawMg: z.int().positive(),
  cookedMg: z.int().positive(),
  source: text(200),
  /**
   * For a person's own two weights: the half-width of either reading, and the ingredient whose cooking it was;
   * null for a published one.
   */
  own: z
    .object({ halfMg: z.int().min(0), lineId: id.nullable() })
    .nullable()
    .default(null),
});
export type YieldObservation = z.infer<typeof yieldSchema>;

export const allergenSchema = z.enum(ALLERGENS);
export type Allergen = z.infer<typeof allergenSchema>;

/** `declared` and `mayContain` come from a label; `proposed` by rule; the person confirms or denies. */
export const allergenFactSchema = z.object({
  id,
  allergen: allergenSchema,
  standing: z.enum(['declared', 'mayContain', 'proposed', 'confirmed', 'denied']),
  /** Why it is proposed, or where it was read. */
  reason: text(200),
});
export type AllergenFact = z.infer<typeof allergenFactSchema>;

export const foodSchema = z.object({
  id,
  kind: z.enum(['reference', 'label', 'prepared']),
  name: text(240).min(1),
  section: sectionSchema,
  /** The reference food nearest to a label food: a second witness to its values. */
  witnessId: id.nullable(),
  /** The version in use; older ones stay in the store. */
  version: foodVersionSchema,
  measures: z.array(foodMeasureSchema),
  yields: z.array(yieldSchema),
  allergens: z.array(allergenFactSchema),
});
export type Food = z.infer<typeof foodSchema>;
