import { MOST_MENDS, MOST_NAMED, MOST_TEXTS } from '#lib/episode/edit-schema';
import { MOST } from '#lib/episode/most';
import { MOST_SHOTS, MOST_STEPS } from '#lib/episode/step-limits';
import type { Problem } from '#lib/result';
import type { Tx } from '#lib/store/client';
import type { JournalEntry } from '#lib/store/journal';
import { problemAt } from '#lib/store/refusals';
import { ENTITY_NAMES, type EntityName } from '#lib/store/rows';
import { tableOf } from '#lib/store/table';

interface Room {
  /** The column that names the parent. */
  readonly column: string;
  /** As many as the episode file may hold: with one more it could not be read. */
  readonly most: number;
  /** Whose they are, and what they are. */
  readonly words: readonly [parent: string, parts: string];
}

const ROOM: Partial<Record<EntityName, Room>> = {
  Segment: { column: 'episodeId', most: MOST.segments, words: ['An episode', 'segments'] },
  Target: { column: 'episodeId', most: MOST.targets, words: ['An episode', 'targets'] },
  StepLink: { column: 'episodeId', most: MOST.ties, words: ['An episode', 'ties between steps'] },
  WebLink: { column: 'episodeId', most: MOST.webLinks, words: ['An episode', 'links'] },
  RecipeLine: { column: 'recipeId', most: MOST.ingredients, words: ['A dish', 'ingredients'] },
  Weighing: { column: 'recipeId', most: MOST.readings, words: ['A dish', 'readings'] },
  Portion: { column: 'recipeId', most: MOST.portions, words: ['A dish', 'portions'] },
  Perishable: { column: 'segmentId', most: MOST.lots, words: ['A dish', 'lots'] },
  TalkingPoint: {
    column: 'segmentId',
    most: MOST.talkingPoints,
    words: ['A segment', 'talking points'],
  },
  Step: { column: 'segmentId', most: MOST_STEPS, words: ['A segment', 'steps'] },
  Shot: { column: 'segmentId', most: MOST_SHOTS, words: ['A segment', 'shots'] },
  EditText: { column: 'episodeId', most: MOST_TEXTS, words: ['An episode', 'texts'] },
  ReadingMend: {
    column: 'episodeId',
    most: MOST_MENDS,
    words: ['An episode', 'readings put right'],
  },
  NamedFood: { column: 'episodeId', most: MOST_NAMED, words: ['An episode', 'answers to foods'] },
  Variant: { column: 'episodeId', most: MOST.swaps, words: ['An episode', 'saved swaps'] },
  SwapStep: { column: 'variantId', most: MOST.swapSteps, words: ['A saved swap', 'steps'] },
  Reply: { column: 'episodeId', most: MOST.replies, words: ['An episode', 'replies'] },
  Piece: { column: 'episodeId', most: MOST.pieces, words: ['An episode', 'pieces'] },
  PieceSegment: { column: 'pieceId', most: MOST.dishesOfPiece, words: ['A piece', 'dishes'] },
};

/**
 * The problems of rows that are more than their parent may have, each with code 'too-many': with them the episode
 * could not be read any more. Asked inside the transaction that writes them, so that of two at once the last is
 * refused.
 * @param entries what the command did, one for each of its edits and in their order
 */
export async function crowdProblems(tx: Tx, entries: readonly JournalEntry[]): Promise<Problem[]> {
  const problems: Problem[] = [];
  const asked = new Set<string>();
  for (const [index, { entity, before, after }] of entries.entries()) {
    const table = ENTITY_NAMES.find((name) => name === entity);
    const room = table && ROOM[table];
    const arrives = after?.deletedAt === null && before?.deletedAt !== null;
    const parent = after?.[room?.column ?? ''];
    if (!table || !room || !arrives || typeof parent !== 'string') continue;
    if (asked.has(`${entity} ${parent}`)) continue;
    asked.add(`${entity} ${parent}`);
    const there = await tableOf(tx, table).count({
      where: { [room.column]: parent, deletedAt: null },
    });
    if (there <= room.most) continue;
    const [whose, parts] = room.words;
    const words = `${whose} has up to ${room.most} ${parts}: take one out first.`;
    problems.push(problemAt(`edits[${index}]`, 'too-many', words, { most: room.most }));
  }
  return problems;
}
