import { z } from 'zod';
import { MOST } from '#lib/episode/most';
import { pieceSchema } from '#lib/episode/publish-schema';
import { requiredText, revision, rowId } from '../../../_forms/fields';
import { DISH } from './piece-field-names';

const texts = {
  episodeId: rowId,
  kind: z.enum(['clip', 'text'], { error: 'Choose a clip or a text.' }),
  title: requiredText('what it is called', 160),
  day: z.literal('on').optional(),
  limit: z
    .string()
    .trim()
    .regex(/^\d{2,6}$/, 'Write how many characters, from 20 to 100000.')
    .transform(Number)
    .refine((limit) => pieceSchema.shape.limit.safeParse(limit).success, {
      error: 'Write how many characters, from 20 to 100000.',
    }),
};

export const addPieceForm = z.looseObject(texts).transform(ofDishes);

export const changePieceForm = z
  .looseObject({ ...texts, pieceId: rowId, rev: revision })
  .transform(ofDishes);

export const removePieceForm = z.object({ episodeId: rowId, pieceId: rowId, rev: revision });

/** The day, or the dishes that are ticked; both or neither is refused. */
function ofDishes<T extends { readonly [name: string]: unknown; readonly day?: 'on' | undefined }>(
  sent: T,
  context: z.core.$RefinementCtx,
): T & { readonly segmentIds: readonly string[] | null } {
  const ticked = Object.keys(sent)
    .filter((name) => name.startsWith(DISH) && sent[name] === 'on')
    .map((name) => name.slice(DISH.length));
  const isOfDay = sent.day === 'on';
  const refuse = (message: string) =>
    context.addIssue({ code: 'custom', path: ['day'], message, input: sent });
  if (isOfDay && ticked.length > 0) refuse('Tick the day or its dishes, not both.');
  if (!isOfDay && ticked.length === 0) refuse('Say what it is of: the day, or some dishes.');
  if (ticked.length > MOST.dishesOfPiece) {
    refuse(`A piece is of at most ${MOST.dishesOfPiece} dishes: tick fewer, or the day.`);
  }
  return { ...sent, segmentIds: isOfDay ? null : ticked };
}
