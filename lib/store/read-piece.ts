import 'server-only';
import { database } from '#lib/store/client';
import { ALIVE, BY_POSITION } from '#lib/store/load';

/** A row that says of which dish a piece is. */
export interface PieceDish {
  readonly id: string;
  readonly rev: number;
  readonly segmentId: string;
}

/** The rows that say of which dishes a piece of an episode is; null where the episode has no such piece any more. */
export async function readPieceDishes(
  episodeId: string,
  pieceId: string,
): Promise<readonly PieceDish[] | null> {
  const found = await database().piece.findFirst({
    where: { id: pieceId, episodeId, ...ALIVE },
    include: { dishes: BY_POSITION },
  });
  return found?.dishes.map(({ id, rev, segmentId }) => ({ id, rev, segmentId })) ?? null;
}
