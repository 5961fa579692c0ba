import { z } from 'zod';
import { deviceSeq, id, madeAt } from '#lib/episode/entry-fields';
import { CORE_MILLI_C, OVEN_MILLI_C } from '#lib/episode/step-limits';
import { cameraClockPayload } from '#lib/shoot/camera-clock-schema';
import {
  LONGER_MAX,
  NOTE_MAX,
  ORDER_MAX,
  ROW_KINDS,
  storable,
  type DayEvent,
} from '#lib/shoot/day-log';
import { saidPayload } from '#lib/shoot/said-entries-schema';
import { displayPayload, weighedPayload } from '#lib/shoot/scale-entries-schema';

const made = { id, deviceId: id, deviceSeq, at: madeAt };

const row = z.union([z.strictObject({ stepId: id }), z.strictObject({ entryId: id })], {
  error: 'Names one row, by stepId or entryId',
});
const nothing = z.strictObject({});

const rowOrNone = z.union([row, nothing], {
  error: 'Names one row, by stepId or entryId, or none',
});

const text = z
  .string()
  .max(NOTE_MAX, `A note has at most ${NOTE_MAX} characters`)
  .refine((note) => note.trim() !== '', 'A note has some text')
  .refine((note) => storable(note) === note, {
    error: 'The note holds a character that cannot be stored',
  });

const degrees = { error: 'An inside temperature lies between 0 and 120 °C, in thousandths' };
const milliC = z.int(degrees).min(CORE_MILLI_C.min, degrees).max(CORE_MILLI_C.max, degrees);

const longer = { error: `Minutes are a whole number from 1 to ${LONGER_MAX}` };
const minutes = z.int(longer).min(1, longer).max(LONGER_MAX, longer);

/** Minutes of the day that an order may name: a night before it and some days after. */
const minute = z.int().min(-1440).max(20_160);
/** A plan's own ids have two others in them. */
const entryId = z.string().regex(/^[\w:.-]{1,160}$/, 'Names an entry of the plan');
const inOrder = { id: entryId, startMin: minute, endMin: minute, ovenId: id.nullable() };
const ends = ({ startMin, endMin }: { readonly startMin: number; readonly endMin: number }) =>
  startMin <= endMin;
const backwards = { error: 'An entry ends before it starts' };
const heatTitle = z
  .string()
  .min(1)
  .max(NOTE_MAX)
  .refine((title) => storable(title) === title, {
    error: 'A title holds a character that cannot be stored',
  });
const most = { error: `An order has at most ${ORDER_MAX} rows` };
const order = z.strictObject({
  rows: z.array(z.strictObject(inOrder).refine(ends, backwards)).min(1).max(ORDER_MAX, most),
  heats: z
    .array(
      z
        .strictObject({
          ...inOrder,
          kind: z.enum(['preheat', 'coolDown']),
          title: heatTitle,
          milliC: z.int().min(0).max(OVEN_MILLI_C.max),
        })
        .refine(ends, backwards),
    )
    .max(ORDER_MAX, most),
});

/** One event of a filming day as it is sent and kept; its type is the domain's own. */
export const dayEventSchema: z.ZodType<DayEvent> = z.discriminatedUnion('kind', [
  z.strictObject({ ...made, kind: z.enum(ROW_KINDS), refs: row, payload: nothing }),
  z.strictObject({
    ...made,
    kind: z.literal('note'),
    refs: rowOrNone,
    payload: z.strictObject({ text }),
  }),
  z.strictObject({
    ...made,
    kind: z.literal('pickup'),
    refs: rowOrNone,
    payload: z.strictObject({ text, minutes: minutes.optional() }),
  }),
  z.strictObject({
    ...made,
    kind: z.literal('take'),
    refs: rowOrNone,
    payload: z.strictObject({ shotId: id, good: z.boolean() }),
  }),
  z.strictObject({
    ...made,
    kind: z.literal('without'),
    refs: rowOrNone,
    payload: z.strictObject({ shotId: id }),
  }),
  z.strictObject({
    ...made,
    kind: z.literal('temperature'),
    refs: z.strictObject({ stepId: id }, { error: 'A reading names its step' }),
    payload: z.strictObject({ milliC }),
  }),
  z.strictObject({
    ...made,
    kind: z.literal('longer'),
    refs: row,
    payload: z.strictObject({ minutes }),
  }),
  z.strictObject({ ...made, kind: z.literal('replanned'), refs: nothing, payload: order }),
  z.strictObject({
    ...made,
    // The reading that it becomes has a longer one.
    id: id.max(60, 'The id of a weighing has at most 60 characters'),
    kind: z.literal('weighed'),
    refs: rowOrNone,
    payload: weighedPayload,
  }),
  z.strictObject({ ...made, kind: z.literal('display'), refs: rowOrNone, payload: displayPayload }),
  z.strictObject({
    ...made,
    kind: z.literal('struckOut'),
    refs: nothing,
    payload: z.strictObject({ weighingId: id }),
  }),
  z.strictObject({ ...made, kind: z.literal('said'), refs: rowOrNone, payload: saidPayload }),
  z.strictObject({
    ...made,
    kind: z.literal('unsaid'),
    refs: nothing,
    payload: z.strictObject({ saidId: id }),
  }),
  z.strictObject({
    ...made,
    kind: z.literal('orderBack'),
    refs: nothing,
    payload: z.strictObject({ replannedId: id }),
  }),
  z.strictObject({
    ...made,
    kind: z.literal('cameraClock'),
    refs: nothing,
    payload: cameraClockPayload,
  }),
]);
