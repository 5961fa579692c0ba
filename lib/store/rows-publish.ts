import { z } from 'zod';
import {
  pieceSchema,
  replySchema,
  swapStepSchema,
  variantSchema,
} from '#lib/episode/publish-schema';
import { id, instant, positive, position } from '#lib/store/rows-basic';

const variant = variantSchema.shape;
const reply = replySchema.shape;
const piece = pieceSchema.shape;

/** A swap's step in columns: those that its kind has, and no other. */
const step = z.strictObject({
  id,
  variantId: id,
  position,
  kind: z.enum(['food', 'amount', 'leaveOut', 'add']),
  lineId: id.nullable().default(null),
  foodId: id.nullable().default(null),
  massMg: z.int().nullable().default(null),
  state: z.string().nullable().default(null),
});

/** What a step's row says; refused where its columns say no step of its kind. */
export function stepFrom(row: Omit<z.output<typeof step>, 'id' | 'variantId' | 'position'>) {
  const { kind, lineId, foodId, massMg, state } = row;
  return swapStepSchema.safeParse({ kind, lineId, foodId, massMg, state });
}

/** The tables of what an episode has for going out, column by column, without the columns that every row has. */
export const PUBLISH_ROWS = {
  Variant: z.strictObject({ id, episodeId: id, segmentId: id, name: variant.name }),
  SwapStep: step.refine(
    (row) => {
      const { kind, lineId, foodId, state } = row;
      return (
        stepFrom(row).success &&
        (kind === 'add') === (lineId === null) &&
        (kind === 'food' || kind === 'add') === (foodId !== null) &&
        (kind === 'add') === (state !== null) &&
        (kind !== 'leaveOut' || row.massMg === null)
      );
    },
    {
      path: ['kind'],
      message: 'a step changes an ingredient’s food or amount, leaves it out, or adds a food',
    },
  ),
  Reply: z.strictObject({
    id,
    episodeId: id,
    at: instant,
    comment: reply.comment,
    nutrient: reply.nutrient,
    number: reply.number,
    segmentId: reply.segmentId,
    slip: reply.slip,
    text: reply.text,
  }),
  Piece: z.strictObject({
    id,
    episodeId: id,
    position,
    kind: piece.kind,
    title: piece.title,
    ofDay: z.boolean(),
    limit: positive.pipe(piece.limit),
  }),
  PieceSegment: z.strictObject({ id, pieceId: id, position, segmentId: id }),
} as const;
