import { dishesOf } from '#lib/episode/context';
import type { Piece } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { NumbersToPublish } from '#lib/publish/from-lock';
import { pieceText, type PieceText } from '#lib/publish/pieces';

/** A piece as it goes out, and what has happened to its dishes. */
export interface PieceRow {
  readonly piece: Piece;
  readonly made: PieceText;
  /** Titles of its dishes as they are called now, in viewing order; null is the day. */
  readonly of: readonly string[] | null;
  /** All its dishes were taken out of the episode. */
  readonly gone: boolean;
  /** Titles of its dishes that came after the lock whose numbers go out: they are not in the text. */
  readonly afterLock: readonly string[];
  /** What has changed under the lock in its dishes (of the day: in any), "Loaf: 1409 → 1420 kcal". */
  readonly changed: readonly string[];
}

/**
 * The pieces of an episode, each with its text and what its lock lacks.
 * @param live the episode as it is now, read with what it has for going out
 * @example pieceRows(numbersToPublish(file, snapshot), file).map(({ made }) => made.text)
 */
export function pieceRows(publish: NumbersToPublish, live: EpisodeFile): readonly PieceRow[] {
  const alive = dishesOf(live.episode.segments);
  const written = new Set(dishesOf(publish.file.episode.segments).map(({ id }) => id));
  return (live.publish?.pieces ?? []).map((piece): PieceRow => {
    const { segmentIds } = piece;
    const isOf = (segmentId: string) => segmentIds === null || segmentIds.includes(segmentId);
    const own = alive.filter(({ id }) => isOf(id));
    const titles = own.map(({ title }) => title);
    const touched = (publish.changed?.dishes ?? []).filter(({ segmentId }) => isOf(segmentId));
    return {
      piece,
      made: pieceText(publish, piece),
      of: segmentIds === null ? null : titles,
      gone: segmentIds !== null && own.length === 0,
      afterLock: own.filter(({ id }) => !written.has(id)).map(({ title }) => title),
      changed: touched.map(({ title, words }) => `${title}: ${words}`),
    };
  });
}
