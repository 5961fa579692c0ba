import { v7 as uuid } from 'uuid';
import type { EpisodePublish, SwapStep } from '#lib/episode/publish-schema';
import type { Edit } from '#lib/store/command';
import { create } from '#lib/store/new-row';
import type { ImportIds } from '#lib/store/import-ids';

/** What of a file goes out beside the video, as new rows; its dishes, ingredients and foods have their ids by now. */
export function importPublish(
  { variants, replies, pieces }: EpisodePublish,
  episodeId: string,
  ids: ImportIds,
): Edit[] {
  return [
    ...variants.flatMap(({ segmentId, name, steps }, index) => {
      const path = `publish.variants[${index}]`;
      const id = uuid();
      const of = ids.of('segment', segmentId, `${path}.segmentId`);
      return [
        create('Variant', { id, episodeId, segmentId: of, name }),
        ...steps.map((step, position) =>
          create('SwapStep', {
            ...{ id: uuid(), variantId: id, position },
            ...stepColumns(ofRows(step, `${path}.steps[${position}]`, ids)),
          }),
        ),
      ];
    }),
    ...replies.map(({ segmentId, ...reply }, index) => {
      const path = `publish.replies[${index}].segmentId`;
      const of = segmentId === null ? null : ids.of('segment', segmentId, path);
      return create('Reply', { ...reply, id: uuid(), episodeId, segmentId: of });
    }),
    ...pieces.flatMap(({ segmentIds, kind, title, limit }, position) => {
      const id = uuid();
      const ofDay = segmentIds === null;
      return [
        create('Piece', { id, episodeId, position, kind, title, ofDay, limit }),
        ...(segmentIds ?? []).map((segmentId, at) => {
          const path = `publish.pieces[${position}].segmentIds[${at}]`;
          const of = ids.of('segment', segmentId, path);
          return create('PieceSegment', { id: uuid(), pieceId: id, position: at, segmentId: of });
        }),
      ];
    }),
  ];
}

/** A step of a swap in columns. */
export function stepColumns(step: SwapStep) {
  return {
    kind: step.kind,
    lineId: 'lineId' in step ? step.lineId : null,
    foodId: 'foodId' in step ? step.foodId : null,
    massMg: 'massMg' in step ? step.massMg : null,
    state: 'state' in step ? step.state : null,
  };
}

function ofRows(step: SwapStep, path: string, ids: ImportIds): SwapStep {
  const line = (id: string) => ids.of('line', id, `${path}.lineId`);
  const food = (id: string) => ids.of('food', id, `${path}.foodId`);
  if (step.kind === 'add') return { ...step, foodId: food(step.foodId) };
  if (step.kind === 'food') {
    return { ...step, lineId: line(step.lineId), foodId: food(step.foodId) };
  }
  return { ...step, lineId: line(step.lineId) };
}
