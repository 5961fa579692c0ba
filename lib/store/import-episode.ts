import { v7 as uuid } from 'uuid';
import type { FilmingDay } from '#lib/episode/day-schema';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { Episode, Segment } from '#lib/episode/schema';
import type { StepLink } from '#lib/episode/step-schema';
import type { Edit } from '#lib/store/command';
import {
  dayColumns,
  episodeColumns,
  lineColumns,
  portionColumns,
  recipeColumns,
  segmentColumns,
  stepColumns,
} from '#lib/store/episode-columns';
import type { ImportIds } from '#lib/store/import-ids';
import type { EntityName, RowInput } from '#lib/store/rows';

/** One new row. */
export function create<E extends EntityName>(entity: E, row: RowInput<E>): Edit {
  return { op: 'create', entity, row } as unknown as Edit;
}

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

/** New ids for a recipe, its ingredients and portions. */
export function mintRecipe(recipe: Recipe, ids: ImportIds): void {
  ids.mint('recipe', recipe.id);
  for (const line of recipe.lines) ids.mint('line', line.id);
  for (const portion of recipe.portions) ids.mint('portion', portion.id);
}

/** The recipes that ingredients are made from, as new rows; `mintRecipe` comes first. */
export function importRecipes(recipes: readonly Recipe[], ids: ImportIds): Edit[] {
  return recipes.flatMap((recipe, index) =>
    importRecipe(
      recipe,
      ids.of('recipe', recipe.id, `recipes[${index}].id`),
      `recipes[${index}]`,
      ids,
    ),
  );
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

function importRecipe(recipe: Recipe, recipeId: string, path: string, ids: ImportIds): Edit[] {
  const weighings = recipe.weighings.map((weighing) => ({ weighing, id: ids.fresh(weighing.id) }));
  const readingId = new Map(weighings.map(({ weighing, id }) => [weighing.id, id]));
  const forkedFromId = ids.ofRows ? recipe.id : null;
  return [
    create('Recipe', { id: recipeId, ...recipeColumns(recipe), forkedFromId }),
    ...recipe.lines.map((line, position) => {
      const at = `${path}.lines[${position}]`;
      return create('RecipeLine', {
        ...lineColumns(line),
        id: ids.of('line', line.id, `${at}.id`),
        recipeId,
        position,
        foodId: line.foodId === null ? null : ids.of('food', line.foodId, `${at}.foodId`),
        orFoodId: line.orFoodId === null ? null : ids.of('food', line.orFoodId, `${at}.orFoodId`),
        ...madeFromColumns(line, `${at}.madeFrom.recipeId`, ids),
      });
    }),
    ...recipe.portions.map((portion, position) => {
      const id = ids.of('portion', portion.id, `${path}.portions[${position}].id`);
      return create('Portion', { ...portionColumns(portion), id, recipeId, position });
    }),
    ...weighings.map(({ weighing, id }, index) => {
      const { kind, grossMg, tareMg, method, at } = weighing;
      const afterId = readingId.get(weighing.afterId ?? '') ?? null;
      const scaleId = ids.of('scale', weighing.scaleId, `${path}.weighings[${index}].scaleId`);
      const of = { kind, grossMg, tareMg, afterId, method, at };
      return create('Weighing', { id, recipeId, scaleId, ...of });
    }),
    ...weighings.flatMap(({ weighing, id: weighingId }, index) =>
      weighing.shares.map(({ lineId, share }, position) => {
        const at = `${path}.weighings[${index}].shares[${position}].lineId`;
        const line = ids.of('line', lineId, at);
        return create('WeighingShare', {
          id: uuid(),
          weighingId,
          lineId: line,
          position,
          ...share,
        });
      }),
    ),
  ];
}

/** A recipe of the file is at its first revision once it is a row. */
function madeFromColumns({ madeFrom }: RecipeLine, path: string, ids: ImportIds) {
  if (!madeFrom) return { madeFromId: null, madeFromRev: null };
  const madeFromId = ids.of('recipe', madeFrom.recipeId, path);
  const stays = !ids.keep && madeFromId === madeFrom.recipeId;
  return { madeFromId, madeFromRev: stays ? madeFrom.rev : 1 };
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

/** The row that another episode of a file's day has become. */
export interface OtherOfDay {
  readonly id: string;
}

/** A filming day of a file as new rows. */
export function importDay(
  day: FilmingDay,
  episodeId: string,
  kitchenId: string,
  ids: ImportIds,
  dayId: string = uuid(),
  others: readonly OtherOfDay[] = [],
): Edit[] {
  return [
    create('FilmingDay', { id: dayId, kitchenId, ...dayColumns(day) }),
    create('DayEpisode', { id: uuid(), dayId, episodeId }),
    ...others.map((other) => create('DayEpisode', { id: uuid(), dayId, episodeId: other.id })),
    ...day.segments.map(({ segmentId, pickup, part, fate }, position) =>
      create('DaySegment', {
        id: uuid(),
        dayId,
        segmentId: ids.of('segment', segmentId, `day.segments[${position}].segmentId`),
        position,
        pickup,
        part,
        fate,
      }),
    ),
    ...day.appointments.map((appointment, position) =>
      create('Appointment', { ...appointment, id: uuid(), dayId, position }),
    ),
    ...day.pins.map(({ stepId, notBeforeMin, notAfterMin }, position) =>
      create('Pin', {
        id: uuid(),
        dayId,
        stepId: ids.of('step', stepId, `day.pins[${position}].stepId`),
        position,
        notBeforeMin,
        notAfterMin,
      }),
    ),
  ];
}
