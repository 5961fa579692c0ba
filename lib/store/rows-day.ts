import { z } from 'zod';
import { appointmentSchema, filmingDaySchema, pinSchema } from '#lib/episode/day-schema';
import { segmentSchema } from '#lib/episode/schema';
import { perishableSchema, shotSchema, stepLinkSchema, stepSchema } from '#lib/episode/step-schema';
import { packSchema, stockLotSchema, packPriceSchema, shopSchema } from '#lib/episode/stock-schema';
import { LIST_KINDS } from '#lib/shopping/list-events';
import {
  anchor,
  id,
  instant,
  jsonObject,
  localDate,
  position,
  signed,
  text,
  whole,
} from '#lib/store/rows-basic';

const step = stepSchema.shape;
const oven = step.oven.unwrap().shape;
const choose = step.choose.unwrap().shape;
const link = stepLinkSchema.shape;
const perishable = perishableSchema.shape;
const shot = shotSchema.shape;
const day = filmingDaySchema.shape;
const daySegment = day.segments.element.shape;
const pin = pinSchema.shape;
const appointment = appointmentSchema.shape;
const pack = packSchema.shape;
const price = packPriceSchema.shape;
const move = stockLotSchema.shape.moves.element.shape;

/** The tables of steps, filming days and shopping, column by column, without the columns that every row has. */
export const DAY_ROWS = {
  Step: z
    .strictObject({
      id,
      segmentId: id,
      position,
      title: step.title,
      role: step.role,
      lowS: step.lowS,
      usualS: step.usualS,
      highS: step.highS,
      chooseMinS: choose.minS.nullable(),
      chooseMaxS: choose.maxS.nullable(),
      hands: step.hands,
      burners: step.burners,
      racks: step.racks,
      ovenId: oven.ovenId,
      ovenMilliC: oven.milliC.nullable(),
      coreMilliC: step.coreMilliC,
      restS: step.restS,
      contact: step.contact.unwrap(),
      evening: step.evening.unwrap(),
      cameraSetUp: step.cameraSetUp.unwrap(),
      applianceId: step.applianceId.unwrap(),
      counter: step.counter.unwrap(),
      onCamera: step.onCamera,
      daylight: step.daylight,
      note: step.note,
    })
    .refine((row) => row.lowS <= row.usualS && row.usualS <= row.highS, {
      path: ['usualS'],
      message: 'shortest, usual and longest must be in order',
    })
    .refine((row) => (row.chooseMinS === null) === (row.chooseMaxS === null), {
      path: ['chooseMaxS'],
      message: 'a length to choose has both its ends',
    })
    .refine((row) => row.ovenId === null || row.ovenMilliC !== null, {
      path: ['ovenMilliC'],
      message: 'a step in the oven needs its temperature',
    }),
  StepLink: z.strictObject({
    id,
    episodeId: id,
    position,
    fromStepId: id,
    toStepId: id,
    fromAnchor: anchor,
    toAnchor: anchor,
    minLagS: link.minLagS,
    maxLagS: link.maxLagS,
    reason: link.reason,
  }),
  Perishable: z.strictObject({
    id,
    segmentId: id,
    position,
    name: perishable.name,
    limitS: perishable.limitS,
    thrownAway: perishable.thrownAway,
  }),
  PerishableSpan: z.strictObject({
    id,
    perishableId: id,
    position,
    fromStepId: id,
    fromAnchor: anchor,
    toStepId: id,
    toAnchor: anchor,
  }),
  Shot: z.strictObject({
    id,
    segmentId: id,
    position,
    title: shot.title,
    stepId: shot.stepId,
    framing: shot.framing,
    lengthS: shot.lengthS,
  }),
  TalkingPoint: z.strictObject({
    id,
    segmentId: id,
    position,
    text: segmentSchema.shape.talkingPoints.element.shape.text,
  }),
  FilmingDay: z.strictObject({
    id,
    date: day.date,
    kitchenId: id,
    kind: day.kind,
    startMin: day.startMin,
    wrapByMin: day.wrapByMin,
    mealGapMin: day.mealGapMin,
    lightMarginMin: day.lightMarginMin.unwrap(),
    outfit: day.outfit.unwrap(),
  }),
  DayEpisode: z.strictObject({ id, dayId: id, episodeId: id }),
  DaySegment: z.strictObject({
    id,
    dayId: id,
    segmentId: id,
    position,
    pickup: z.boolean(),
    part: daySegment.part.unwrap(),
    fate: daySegment.fate.unwrap(),
  }),
  Appointment: z.strictObject({
    id,
    dayId: id,
    position,
    title: appointment.title,
    startMin: appointment.startMin,
    endMin: appointment.endMin,
    hands: appointment.hands,
  }),
  Pin: z
    .strictObject({
      id,
      dayId: id,
      position,
      stepId: id,
      notBeforeMin: pin.notBeforeMin,
      notAfterMin: pin.notAfterMin.unwrap(),
    })
    .refine((row) => row.notBeforeMin !== null || row.notAfterMin !== null, {
      path: ['notBeforeMin'],
      message: 'pins to no time',
    }),
  Plan: z.strictObject({
    id,
    dayId: id,
    inputHash: text(64),
    engine: text(80),
    seed: signed,
    result: jsonObject,
    at: instant,
  }),
  DayEvent: z.strictObject({
    id,
    dayId: id,
    deviceId: id,
    deviceSeq: whole,
    at: instant,
    kind: text(40).min(1),
    refs: jsonObject,
    payload: jsonObject,
  }),
  StockMove: z.strictObject({
    id,
    lotId: id,
    kind: move.kind,
    deltaMg: move.deltaMg,
    at: instant,
    eventId: id.nullable(),
  }),
  Shop: z.strictObject({
    id,
    name: shopSchema.shape.name,
    sections: shopSchema.shape.sections.unwrap().nullable().default(null),
  }),
  Pack: z.strictObject({
    id,
    foodId: id,
    name: pack.name,
    netMg: pack.netMg,
    netMl: pack.netMl,
    drainedMg: pack.drainedMg,
    gtin: pack.gtin,
    stepMg: pack.stepMg,
  }),
  Price: z.strictObject({
    id,
    packId: id,
    shopId: id.nullable(),
    minor: whole,
    currency: text(3).min(3),
    seenOn: localDate,
    offer: z.boolean(),
    count: price.count,
    most: price.most,
    until: price.until,
  }),
  Tick: z.strictObject({
    id,
    scope: text(80).min(1),
    episodeId: id.nullable(),
    foodId: id.nullable(),
    deviceId: id,
    deviceSeq: whole,
    at: instant,
    kind: z.enum(LIST_KINDS),
    payload: jsonObject,
  }),
} as const;
