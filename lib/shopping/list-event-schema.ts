import { z } from 'zod';
import { deviceSeq, id, madeAt } from '#lib/episode/entry-fields';
import { readScope, type ListEvent, type ListScope } from '#lib/shopping/list-events';

const INT_MAX = 2_147_483_647;

/** A little shorter, since the rows that follow from an entry have a letter and a digit before its id. */
const entryId = id.max(56, 'The id of an entry has 56 characters at most');

const scope = z
  .string()
  .max(80)
  .refine((text) => readScope(text) !== null, {
    error: 'A list is episode:ID, or span:YYYY-MM-DD..YYYY-MM-DD',
  })
  .transform((text) => text as ListScope);

const text = (max: number) =>
  z
    .string()
    .max(max, `At most ${max} characters fit here`)
    .refine(
      (given) => !/\0|\p{Surrogate}/u.test(given),
      'This holds a character that cannot be stored',
    );
const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'A hash has 64 hexadecimal digits');
const currency = z.string().regex(/^[A-Z]{3}$/, 'A currency is three letters: USD, EUR, DKK');
const minor = z.int().min(0, 'A price is not less than nothing').max(INT_MAX);

const packs = z
  .array(
    z.strictObject({
      packId: id.nullable(),
      count: z.int().min(1).max(10_000),
      mg: z.int().min(1, 'A pack holds more than nothing').max(1_000_000_000).nullable(),
    }),
  )
  .max(40);

const label = z.strictObject({
  basis: z.enum(['per100g', 'per100ml', 'serving']),
  servingMg: z.int().min(1).max(10_000_000).nullable(),
  values: z.record(z.string().regex(/^\w{1,40}$/), text(20)),
});

const made = {
  id: entryId,
  scope,
  deviceId: id,
  deviceSeq,
  at: madeAt,
};

/** An entry of a shopping list as a device sends it. */
export const listEventSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    ...made,
    kind: z.literal('ticked'),
    foodId: id,
    payload: z.strictObject({ packs }),
  }),
  z.strictObject({ ...made, kind: z.literal('unticked'), foodId: id, payload: z.strictObject({}) }),
  z.strictObject({
    ...made,
    kind: z.literal('instead'),
    foodId: id,
    payload: z.strictObject({
      name: text(240).min(1, 'Say what was taken'),
      takenFoodId: id.nullable(),
      packs,
      label: label.nullable(),
      photoSha256: sha256.nullable(),
    }),
  }),
  z.strictObject({
    ...made,
    kind: z.literal('paid'),
    foodId: id.nullable(),
    payload: z.strictObject({
      shopId: id.nullable(),
      minor: minor.nullable(),
      currency,
      on: z.iso.date(),
    }),
  }),
  z.strictObject({
    ...made,
    kind: z.literal('photographed'),
    foodId: id,
    payload: z.strictObject({ photoSha256: sha256 }),
  }),
  z.strictObject({
    ...made,
    kind: z.literal('putAway'),
    foodId: id,
    payload: z.strictObject({ eventId: id }),
  }),
]) satisfies z.ZodType<ListEvent>;
