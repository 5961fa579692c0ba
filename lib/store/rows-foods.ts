import { z } from 'zod';
import {
  allergenFactSchema,
  foodMeasureSchema,
  foodSchema,
  foodVersionSchema,
} from '#lib/foods/food';
import { pantryFoodSchema, STOCK_ANSWERS } from '#lib/episode/stock-schema';
import { valuesSchema, yieldSchema } from '#lib/foods/food';
import { folded } from '#lib/store/fold';
import {
  id,
  instant,
  INT_MAX,
  localDate,
  position,
  positive,
  text,
  whole,
} from '#lib/store/rows-basic';

const food = foodSchema.shape;
const version = foodVersionSchema.shape;
const serving = version.serving.unwrap().shape;
const refuse = version.refuse.unwrap().shape;
const measure = foodMeasureSchema.shape;
const observed = yieldSchema.shape;
const allergen = allergenFactSchema.shape;
const answer = pantryFoodSchema.shape.answer.unwrap().shape;
const opened = pantryFoodSchema.shape.opened.unwrap().shape;

/** The tables of foods, column by column, without the columns that every row has. */
export const FOOD_ROWS = {
  ReferenceRelease: z.strictObject({
    id,
    source: version.source,
    release: version.release,
    sha256: text(64),
    foodCount: whole,
    at: instant,
  }),
  Food: z.strictObject({
    id,
    kind: food.kind,
    name: food.name,
    section: food.section,
    mergedIntoId: id.nullable(),
    witnessId: id.nullable(),
    recipeId: id.nullable(),
  }),
  FoodVersion: z
    .strictObject({
      id,
      foodId: id,
      seq: version.seq.max(INT_MAX),
      basis: version.basis,
      servingMg: positive.nullable(),
      servingMl: serving.volumeMl,
      servingDecimals: serving.decimals.nullable(),
      servingText: serving.text.nullable(),
      servings: serving.perPack,
      values: valuesSchema,
      secondBasis: z.enum(['per100g', 'per100ml', 'serving']).nullable(),
      secondValues: valuesSchema.nullable(),
      carbBasis: version.carbBasis,
      state: version.state,
      factors: version.factors,
      refusePercent: refuse.percent.nullable(),
      refuseText: refuse.text.nullable(),
      refuseInValues: z.boolean().default(false),
      rule: version.rule,
      source: version.source,
      release: version.release,
      sourceNo: version.sourceNo,
      dateRead: version.dateRead,
      kept: version.kept,
      gtin: text(40).nullable().default(null),
      brand: text(160).nullable().default(null),
      ingredients: text(8000).nullable().default(null),
    })
    .refine((row) => (row.servingDecimals === null) === (row.servingText === null), {
      path: ['servingText'],
      message: 'a serving has both its decimals and its words, or the label states none',
    })
    .refine((row) => (row.secondBasis === null) === (row.secondValues === null), {
      path: ['secondValues'],
      message: 'a second column has both what it is stated for and its values',
    }),
  FoodMeasure: z.strictObject({
    id,
    versionId: id,
    position,
    name: measure.name,
    qtyNum: measure.qtyNum.max(INT_MAX),
    qtyDen: measure.qtyDen.max(INT_MAX),
    massMg: measure.massMg.max(INT_MAX),
    digits: measure.digits,
    source: measure.source,
  }),
  YieldObservation: z.strictObject({
    id,
    foodId: id,
    position,
    method: observed.method,
    rawMg: observed.rawMg.max(INT_MAX),
    cookedMg: observed.cookedMg.max(INT_MAX),
    source: observed.source,
    ownHalfMg: whole.nullable().default(null),
    lineId: id.nullable().default(null),
    at: instant,
  }),
  AllergenFact: z.strictObject({
    id,
    foodId: id,
    position,
    allergen: allergen.allergen,
    standing: allergen.standing,
    reason: allergen.reason,
    at: instant,
  }),
  LineMatch: z.strictObject({
    id,
    wordsFolded: text(400).transform(folded),
    foodId: id,
    at: instant,
  }),
  FoodToken: z.strictObject({ id, token: text(80), foodId: id, rank: whole }),
  StockLot: z.strictObject({
    id,
    foodId: id,
    place: text(80),
    openedOn: localDate.nullable(),
    useBy: localDate.nullable(),
  }),
  PantryFood: z
    .strictObject({
      id,
      foodId: id,
      answer: z.enum(STOCK_ANSWERS).nullable(),
      answeredOn: localDate.nullable(),
      remark: answer.remark,
      openedDays: opened.days.nullable(),
      openedSource: opened.source,
    })
    .refine((row) => (row.answer === null) === (row.answeredOn === null), {
      path: ['answeredOn'],
      message: 'an answer has the day on which it was given',
    }),
} as const;
