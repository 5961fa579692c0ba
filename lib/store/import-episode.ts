import { v7 as uuid } from 'uuid';
import type { Episode, Segment } from '#lib/episode/schema';
import type { StepLink } from '#lib/episode/step-schema';
import type { Edit } from '#lib/store/command';
import { episodeColumns, segmentColumns, stepColumns } from '#lib/store/episode-columns';
import type { ImportIds } from '#lib/store/import-ids';
import { importRecipe, mintRecipe } from '#lib/store/import-recipe';
import { create } from '#lib/store/new-row';

/** An episode of a file as new rows, parents before children. Foods, ovens and scales are known by now. */
export function importEpisode(
  episode: Episode,
  episodeId: string,
  kitchenId: string | null,
  ids: ImportIds,
): Edit[] {
  mintSegments(episode.segments, ids);
  const at = 'episode';
  return [
    create('Episode', { id: episodeId, kitchenId, ...episodeColumns(episode) }),
    ...episode.webLinks.map((link, position) =>
      create('WebLink', { ...link, id: uuid(), episodeId, position }),
    ),
    ...episode.segments.flatMap((segment, position) =>
      importSegment(segment, episodeId, position, ids),
    ),
    ...episode.targets.map((target, position) =>
      create('Target', {
        ...target,
        id: uuid(),
        episodeId,
        position,
        segmentId:
          target.segmentId === null
            ? null
            : ids.of('segment', target.segmentId, `${at}.targets[${position}].segmentId`),
        portionId:
          target.portionId === null
            ? null
            : ids.of('portion', target.portionId, `${at}.targets[${position}].portionId`),
      }),
    ),
    ...episode.segments.flatMap((segment, index) =>
      importSpans(segment, `${at}.segments[${index}]`, ids),
    ),
    ...importLinks(episode.links, episodeId, 0, ids),
  ];
}

/** New ids for segments, their steps and ingredients, before anything names them. */
export function mintSegments(segments: readonly Segment[], ids: ImportIds): void {
  for (const segment of segments) {
    ids.mint('segment', segment.id);
    for (const step of segment.steps) ids.mint('step', step.id);
    for (const point of segment.talkingPoints) ids.mint('talkingPoint', point.id);
    if (segment.recipe) mintRecipe(segment.recipe, ids);
  }
}

/** Ties between steps as new rows, from a place on. */
export function importLinks(
  links: readonly StepLink[],
  episodeId: string,
  from: number,
  ids: ImportIds,
): Edit[] {
  return links.map((link, index) =>
    create('StepLink', {
      ...link,
      ...ends(link, `episode.links[${index}]`, ids),
      id: uuid(),
      episodeId,
      position: from + index,
    }),
  );
}

function ends(
  link: { readonly fromStepId: string; readonly toStepId: string },
  path: string,
  ids: ImportIds,
) {
  return {
    fromStepId: ids.of('step', link.fromStepId, `${path}.fromStepId`),
    toStepId: ids.of('step', link.toStepId, `${path}.toStepId`),
  };
}

/** A segment of a file as new rows, without the spans of its perishables. */
export function importSegment(
  segment: Segment,
  episodeId: string,
  position: number,
  ids: ImportIds,
): Edit[] {
  const path = `episode.segments[${position}]`;
  const segmentId = ids.of('segment', segment.id, `${path}.id`);
  const recipeId = segment.recipe ? ids.of('recipe', segment.recipe.id, `${path}.recipe.id`) : null;
  return [
    ...(segment.recipe && recipeId
      ? importRecipe(segment.recipe, recipeId, `${path}.recipe`, ids)
      : []),
    create('Segment', {
      id: segmentId,
      episodeId,
      position,
      recipeId,
      ...segmentColumns(segment),
    }),
    ...segment.steps.map((step, index) => {
      const columns = stepColumns(step);
      const ovenId =
        columns.ovenId === null
          ? null
          : ids.of('oven', columns.ovenId, `${path}.steps[${index}].oven.ovenId`);
      const applianceId =
        step.applianceId === null
          ? null
          : ids.of('appliance', step.applianceId, `${path}.steps[${index}].applianceId`);
      const id = ids.of('step', step.id, `${path}.steps[${index}].id`);
      return create('Step', {
        ...columns,
        id,
        segmentId,
        position: index,
        ovenId,
        applianceId,
      });
    }),
    ...segment.shots.map((shot, index) =>
      create('Shot', {
        ...shot,
        id: uuid(),
        segmentId,
        position: index,
        stepId:
          shot.stepId === null
            ? null
            : ids.of('step', shot.stepId, `${path}.shots[${index}].stepId`),
      }),
    ),
    ...segment.talkingPoints.map((point, index) =>
      create('TalkingPoint', {
        id: ids.mint('talkingPoint', point.id),
        segmentId,
        position: index,
        text: point.text,
      }),
    ),
  ];
}

/** Spans may reach into another segment, so they come after all steps. */
export function importSpans(segment: Segment, path: string, ids: ImportIds): Edit[] {
  const segmentId = ids.of('segment', segment.id, `${path}.id`);
  const lots = segment.perishables.map((perishable) => ({ perishable, id: uuid() }));
  return [
    ...lots.map(({ perishable: { name, limitS, thrownAway }, id }, position) =>
      create('Perishable', { id, segmentId, position, name, limitS, thrownAway }),
    ),
    ...lots.flatMap(({ perishable, id: perishableId }, index) =>
      perishable.spans.map((span, position) =>
        create('PerishableSpan', {
          ...span,
          ...ends(span, `${path}.perishables[${index}].spans[${position}]`, ids),
          id: uuid(),
          perishableId,
          position,
        }),
      ),
    ),
  ];
}
