import type { Tx } from '#lib/store/client';
import { ALIVE, BY_ID, BY_POSITION } from '#lib/store/load';
import { stepFrom } from '#lib/store/rows-publish';

/** The rows of what an episode has for going out. */
export async function loadPublish(tx: Tx, episodeId: string) {
  const where = { episodeId, ...ALIVE };
  return {
    variants: await tx.variant.findMany({ ...BY_ID, where, include: { steps: BY_POSITION } }),
    replies: await tx.reply.findMany({ ...BY_ID, where }),
    pieces: await tx.piece.findMany({ ...BY_POSITION, where, include: { dishes: BY_POSITION } }),
  };
}
export type PublishTree = Awaited<ReturnType<typeof loadPublish>>;

/** Foods that saved swaps bring in. */
export function foodsOfSwaps({ variants }: PublishTree): string[] {
  return variants.flatMap(({ steps }) => steps.flatMap(({ foodId }) => foodId ?? []));
}

/**
 * What goes out as plain data, still to be checked by its schema; undefined where there is none. A step goes with its
 * ingredient; a swap that has no step left is none, and stands again when the ingredient is brought back.
 */
export function publishFrom({ variants, replies, pieces }: PublishTree) {
  const publish = {
    variants: variants
      .filter(({ steps }) => steps.length > 0)
      .map(({ id, segmentId, name, steps }) => ({
        ...{ id, segmentId, name },
        steps: steps.map((step) => stepFrom(step as Parameters<typeof stepFrom>[0]).data),
      })),
    replies: replies.map(({ id, at, comment, nutrient, number, segmentId, slip, text }) => ({
      ...{ id, comment, nutrient, number, segmentId, slip, text },
      at: at.toISOString(),
    })),
    pieces: pieces.map(({ id, kind, title, ofDay, limit, dishes }) => ({
      ...{ id, kind, title, limit },
      segmentIds: ofDay ? null : dishes.map(({ segmentId }) => segmentId),
    })),
  };
  const { length } = [...publish.variants, ...publish.replies, ...publish.pieces];
  return length === 0 ? undefined : publish;
}
