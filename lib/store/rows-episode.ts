import { z } from 'zod';
import { dishClaimsSchema } from '#lib/episode/edit-schema';
import { DESCRIPTION_FORMS, layoutSchema } from '#lib/episode/publish-schema';
import { fractionSchema, massRangeSchema } from '#lib/episode/fields';
import {
  cookingSchema,
  LEFT_PLACES,
  recipeLineSchema,
  recipeSchema,
  weighingSchema,
} from '#lib/episode/recipe-schema';
import { creatorSchema, episodeSchema, segmentSchema, targetSchema } from '#lib/episode/schema';
import { id, instant, position, positive, text, whole } from '#lib/store/rows-basic';

const episode = episodeSchema.shape;
const target = targetSchema.shape;
const segment = segmentSchema.shape;
const recipe = recipeSchema.shape;
const line = recipeLineSchema.shape;
const weighing = weighingSchema.shape;
const claims = dishClaimsSchema.shape;
const webLink = episode.webLinks.element.shape;
const { num, den } = fractionSchema.shape;
const mass = massRangeSchema.shape.valueMg;
const cooking = cookingSchema.shape;
const permille = cooking.spreadPermille;

const allOrNone = (...cells: readonly unknown[]) =>
  cells.every((cell) => cell === null) || cells.every((cell) => cell !== null);
const inOrder = (low: number | null, value: number | null, high: number | null) =>
  low === null || value === null || high === null || (low <= value && value <= high);
const ORDER = 'low, value and high must be in order, and all given or none';

/** The tables of an episode and its recipes, column by column, without the columns that every row has. */
export const EPISODE_ROWS = {
  Creator: z.strictObject({
    id,
    name: text(120),
    wordsPerMinute: creatorSchema.shape.wordsPerMinute,
    layout: layoutSchema.nullable().default(null),
  }),
  Episode: z
    .strictObject({
      id,
      title: episode.title,
      hook: episode.hook,
      region: episode.region,
      publishOn: episode.publishOn,
      rateNum: positive,
      rateDen: positive,
      dropFrame: episode.dropFrame,
      anythingElseKind: z.enum(['nothing', 'notCounted']).nullable(),
      anythingElseWhat: text(200).nullable(),
      disclosure: episode.disclosure,
      energyStep: episode.energyStep,
      kitchenId: id.nullable(),
    })
    .refine((row) => (row.anythingElseKind === 'notCounted') === (row.anythingElseWhat !== null), {
      path: ['anythingElseWhat'],
      message: 'say what else was eaten where it is not counted, and only there',
    }),
  WebLink: z.strictObject({
    id,
    episodeId: id,
    position,
    label: webLink.label,
    url: webLink.url,
  }),
  Target: z.strictObject({
    id,
    episodeId: id,
    position,
    nutrient: target.nutrient,
    relation: target.relation,
    amount: target.amount,
    segmentId: target.segmentId,
    portionId: id.nullable(),
  }),
  Segment: z.strictObject({
    id,
    episodeId: id,
    position,
    kind: segment.kind,
    title: segment.title,
    recipeId: id.nullable(),
    batchesNum: num,
    batchesDen: den,
    eatenNum: num,
    eatenDen: den,
    ateKind: z.enum(['share', 'byEye', 'mass']).default('share'),
    atePermille: permille.nullable().default(null),
    ateLowMg: mass.nullable().default(null),
    ateMg: mass.nullable().default(null),
    ateHighMg: mass.nullable().default(null),
    inFrame: segment.inFrame,
    outFrame: segment.outFrame,
    chapter: segment.chapter,
    plannedS: segment.plannedS,
    spareTakes: segment.spareTakes,
    spareScope: segment.spareScope,
    pickupReserve: segment.pickupReserve,
    washUpS: segment.washUpS,
    filmedWhen: segment.filmedWhen.unwrap(),
    proteinPermille: claims.proteinPermille.default(null),
    raccMg: claims.raccMg.default(null),
    claimsMeal: claims.meal.nullable().default(null),
  }),
  Recipe: z
    .strictObject({
      id,
      title: recipe.title,
      method: recipe.method,
      forkedFromId: id.nullable(),
      moisturePermille: cooking.moisturePermille.nullable().default(null),
      fatPermille: cooking.fatPermille.nullable().default(null),
      cookingSpreadPermille: permille.nullable().default(null),
      cookingSource: cooking.source.nullable().default(null),
    })
    .refine(
      (row) =>
        allOrNone(
          row.moisturePermille,
          row.fatPermille,
          row.cookingSpreadPermille,
          row.cookingSource,
        ),
      {
        path: ['cookingSource'],
        message: 'a change of weight has water, fat, how far it may miss and who says so, or none',
      },
    ),
  RecipeLine: z
    .strictObject({
      id,
      recipeId: id,
      position,
      text: line.text,
      lowNum: num.nullable(),
      lowDen: den.nullable(),
      highNum: num.nullable(),
      highDen: den.nullable(),
      unit: line.unit,
      measureName: line.measureName,
      foodId: line.foodId,
      match: line.match,
      orFoodId: line.orFoodId,
      madeFromId: id.nullable(),
      madeFromRev: positive.nullable(),
      state: line.state,
      asBought: line.asBought,
      plannedLowMg: mass.nullable(),
      plannedMg: mass.nullable(),
      plannedHighMg: mass.nullable(),
      leftKind: z.enum(['none', 'mass', 'weighed']),
      leftLowMg: mass.nullable(),
      leftMg: mass.nullable(),
      leftHighMg: mass.nullable(),
      leftWhere: z.enum(LEFT_PLACES).default('pan'),
      leftMade: z.enum(['alike', 'fat']).default('alike'),
      cookMethod: line.cookMethod,
      retention: line.retention,
      bounded: line.bounded.unwrap().nullable().default(null),
      spoiltByTake: line.spoiltByTake,
      note: line.note,
      shopNote: line.shopNote,
    })
    .refine((row) => allOrNone(row.lowNum, row.lowDen, row.highNum, row.highDen), {
      path: ['lowNum'],
      message: 'an amount has both its ends as fractions, or there is none',
    })
    .refine(
      (row) =>
        allOrNone(row.plannedLowMg, row.plannedMg, row.plannedHighMg) &&
        inOrder(row.plannedLowMg, row.plannedMg, row.plannedHighMg),
      { path: ['plannedMg'], message: ORDER },
    )
    .refine(
      (row) =>
        allOrNone(row.leftLowMg, row.leftMg, row.leftHighMg) &&
        (row.leftKind === 'mass') === (row.leftMg !== null) &&
        inOrder(row.leftLowMg, row.leftMg, row.leftHighMg),
      { path: ['leftMg'], message: ORDER },
    ),
  Weighing: z.strictObject({
    id,
    recipeId: id,
    kind: weighing.kind,
    afterId: weighing.afterId,
    grossMg: weighing.grossMg,
    tareMg: weighing.tareMg,
    scaleId: id,
    method: weighing.method,
    at: instant,
  }),
  WeighingShare: z.strictObject({ id, weighingId: id, lineId: id, position, num, den }),
  Portion: z
    .strictObject({
      id,
      recipeId: id,
      position,
      kind: z.enum(['count', 'mass', 'byEye']),
      name: text(80),
      ofCount: positive.max(1000).nullable(),
      massMg: mass.min(1).nullable(),
      shareNum: num.nullable().default(null),
      shareDen: den.nullable().default(null),
      permille: permille.nullable().default(null),
    })
    .refine(
      (row) =>
        (row.kind === 'count') === (row.ofCount !== null) &&
        (row.kind === 'mass') === (row.massMg !== null) &&
        allOrNone(row.shareNum, row.shareDen, row.permille) &&
        (row.kind === 'byEye') === (row.shareNum !== null),
      {
        path: ['ofCount'],
        message: 'a portion is one of so many, so many grams, or a share by eye',
      },
    ),
  NumbersLock: z.strictObject({
    id,
    episodeId: id,
    seq: positive,
    snapshot: z.string().min(2),
    sha256: text(64).min(64),
    schemaVersion: whole,
    engineVersion: text(80),
    at: instant,
  }),
  Published: z.strictObject({
    id,
    lockId: id,
    text: z.string().max(200_000),
    form: z.enum(DESCRIPTION_FORMS).default('plain'),
    at: instant,
  }),
  Correction: z.strictObject({
    id,
    oldLockId: id,
    newLockId: id,
    reason: text(600).min(1),
    on: z.iso.date(),
  }),
} as const;
