'use server';

import { v7 as uuid } from 'uuid';
import { dishesOf } from '#lib/episode/context';
import { failed, ok, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { nextPlace, nextPlaces } from '#lib/store/next-place';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readPieceDishes } from '#lib/store/read-piece';
import { removalEdits } from '#lib/store/remove-rows';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { change } from '../change';
import { addPieceForm, changePieceForm, removePieceForm } from './piece-schema';

/** Adds something that goes out by itself, after the others. */
export async function addPiece(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(addPieceForm, state, form, async (sent): Promise<Result<string>> => {
    const { episodeId, kind, title, limit, segmentIds } = sent;
    const known = await onlyDishes(episodeId, segmentIds);
    if (!known.ok) return known;
    const id = uuid();
    const position = await nextPlace('Piece', episodeId);
    const row = { id, episodeId, position, kind, title, limit, ofDay: segmentIds === null };
    return change(episodeId, `Add the piece ${title}`, [
      { op: 'create', entity: 'Piece', row },
      ...known.value.map((segmentId, at) => dishRow(id, at, segmentId)),
    ]);
  });
}

/** Changes a piece and of which dishes it is; the dishes that stay keep their rows. */
export async function changePiece(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(changePieceForm, state, form, async (sent): Promise<Result<string>> => {
    const { episodeId, pieceId, rev, kind, title, limit, segmentIds } = sent;
    const before = await readPieceDishes(episodeId, pieceId);
    if (!before) return failed({ path: '', code: 'gone', message: NO_PIECE });
    const known = await onlyDishes(episodeId, segmentIds);
    if (!known.ok) return known;
    const kept = new Set(before.map(({ segmentId }) => segmentId));
    const added = known.value.filter((segmentId) => !kept.has(segmentId));
    const places = await nextPlaces('PieceSegment', pieceId, added.length);
    const patch = { kind, title, limit, ofDay: segmentIds === null };
    return change(episodeId, `Change the piece ${title}`, [
      { op: 'update', entity: 'Piece', id: pieceId, rev, patch },
      ...before
        .filter(({ segmentId }) => !known.value.includes(segmentId))
        .map((row): Edit => ({ op: 'remove', entity: 'PieceSegment', id: row.id, rev: row.rev })),
      ...added.map((segmentId, at) => dishRow(pieceId, places[at] ?? at, segmentId)),
    ]);
  });
}

/** Takes a piece out with what says of which dishes it is; undoing it brings both back. */
export async function removePiece(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removePieceForm, state, form, async (sent): Promise<Result<string>> => {
    const { episodeId, pieceId, rev } = sent;
    const edits = await removalEdits('Piece', pieceId, rev);
    const done = await change(episodeId, 'Take a piece out', edits);
    return done.ok ? ok('Taken out.') : done;
  });
}

const NO_PIECE = 'This piece was taken out meanwhile: add it anew to keep what you typed.';

function dishRow(pieceId: string, position: number, segmentId: string): Edit {
  return {
    op: 'create',
    entity: 'PieceSegment',
    row: { id: uuid(), pieceId, position, segmentId },
  };
}

/** The dishes that were ticked, none for the day; refused where one is not in the episode any more. */
async function onlyDishes(
  episodeId: string,
  segmentIds: readonly string[] | null,
): Promise<Result<readonly string[]>> {
  const file = await readEpisodeFile(episodeId, new Date().toISOString());
  if (!file) return failed({ path: '', code: 'gone', message: 'This episode is no longer there.' });
  const dishes = new Set(dishesOf(file.episode.segments).map(({ id }) => id));
  const ticked = segmentIds ?? [];
  if (ticked.every((id) => dishes.has(id))) return ok(ticked);
  const message = 'A dish that was ticked is no longer in the episode: tick the others again.';
  return failed({ path: 'day', code: 'gone', message });
}
