import type { Refer, Say } from '#lib/episode/recipe-references';
import type { EpisodeFile } from '#lib/episode/schema';

/**
 * Faults of what goes out that a schema cannot see: an id given twice, a swap of an ingredient that its dish does not
 * have, a dish or food that the file does not have.
 */
export function publishProblems(
  { publish, episode: { segments }, foods }: EpisodeFile,
  say: Say,
  refer: Refer,
): void {
  if (publish === undefined) return;
  for (const part of ['variants', 'replies', 'pieces'] as const) {
    const ids = publish[part].map(({ id }) => id);
    ids.forEach((id, index) => {
      if (ids.indexOf(id) < index) {
        say(`publish.${part}[${index}]`, 'duplicate', 'the id is given twice');
      }
    });
  }
  const known = new Set(segments.map(({ id }) => id));
  const food = new Set(foods.map(({ id }) => id));
  publish.variants.forEach(({ segmentId, steps }, index) => {
    const path = `publish.variants[${index}]`;
    refer(`${path}.segmentId`, 'segment', known, segmentId);
    const recipe = segments.find(({ id }) => id === segmentId)?.recipe;
    const lines = new Set(recipe?.lines.map(({ id }) => id));
    steps.forEach((step, at) => {
      const stepPath = `${path}.steps[${at}]`;
      if ('lineId' in step) {
        refer(`${stepPath}.lineId`, 'ingredient of that dish', lines, step.lineId);
      }
      if ('foodId' in step) refer(`${stepPath}.foodId`, 'food', food, step.foodId);
    });
  });
  publish.replies.forEach(({ segmentId }, index) => {
    refer(`publish.replies[${index}].segmentId`, 'segment', known, segmentId);
  });
  publish.pieces.forEach(({ segmentIds }, index) => {
    (segmentIds ?? []).forEach((id, at) => {
      refer(`publish.pieces[${index}].segmentIds[${at}]`, 'segment', known, id);
    });
  });
}
