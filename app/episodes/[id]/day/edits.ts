import { v7 as uuid } from 'uuid';
import type { FilmingDay } from '#lib/episode/day-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { inOrderOfDay } from '#lib/shoot/day-place';
import type { DefaultDay } from '#lib/shoot/default-day';
import type { Edit } from '#lib/store/command';
import { kitchenEdits } from '#lib/store/import-kitchen';
import type { RowInput } from '#lib/store/rows';
import type { Tied } from '#lib/store/read-step-ties';
import type { DayTexts } from './schema';
import type { StepTexts } from './step-schema';
import { UNSAID_DAY_SEGMENT } from '#lib/episode/unsaid';

type Revs = Readonly<Record<string, number>>;

/** A new filming day of an episode, and the kitchen where it was taken for granted. */
export function newDayEdits(file: EpisodeFile, revs: Revs, of: DefaultDay): Edit[] {
  const { segmentIds, ...day } = of;
  const dayId = uuid();
  const { kitchen, episode } = file;
  return [
    ...(revs[kitchen.id] === undefined ? kitchenEdits(kitchen) : []),
    {
      op: 'create',
      entity: 'FilmingDay',
      row: { id: dayId, kitchenId: kitchen.id, ...day },
    },
    {
      op: 'create',
      entity: 'DayEpisode',
      row: { id: uuid(), dayId, episodeId: episode.id },
    },
    ...segmentIds.map((segmentId, position): Edit => ({
      op: 'create',
      entity: 'DaySegment',
      row: { ...UNSAID_DAY_SEGMENT, id: uuid(), dayId, segmentId, position },
    })),
  ];
}

/**
 * The edits that make a day film exactly these segments of the episode, in viewing order; what other episodes have on
 * it stays.
 */
export function filmedEdits(
  file: Pick<EpisodeFile, 'episode'>,
  day: FilmingDay,
  segmentIds: readonly string[],
  revs: Revs,
): Edit[] {
  const wanted = new Set(segmentIds);
  const present = new Set(day.segments.map(({ segmentId }) => segmentId));
  const own = file.episode.segments.map(({ id }) => id);
  const removed = day.segments.filter(
    ({ segmentId }) => own.includes(segmentId) && !wanted.has(segmentId),
  );
  const fresh = own.filter((id) => wanted.has(id) && !present.has(id));
  // Where the day is this episode's alone, its places are those of the running order.
  const shared = day.segments.some(({ segmentId }) => !own.includes(segmentId));
  const order = shared ? inOrderOfDay([...present], own, fresh) : own;
  const added = fresh.map((id) => ({ segmentId: id, position: order.indexOf(id) }));
  const moved = shared && fresh.length > 0 ? day.segments : [];
  return [
    ...moved
      .filter((place) => !removed.includes(place))
      .map(({ id, segmentId }): Edit => ({
        op: 'update',
        entity: 'DaySegment',
        id,
        rev: revs[id] ?? 0,
        patch: { position: order.indexOf(segmentId) },
      })),
    ...removed.map(({ id }): Edit => {
      return { op: 'remove', entity: 'DaySegment', id, rev: revs[id] ?? 0 };
    }),
    ...added.map((row): Edit => ({
      op: 'create',
      entity: 'DaySegment',
      row: { ...UNSAID_DAY_SEGMENT, id: uuid(), dayId: day.id, ...row },
    })),
  ];
}

/** The columns of a day from its form. */
export function dayColumns(
  day: Omit<DayTexts, 'episodeId' | 'dayId' | 'rev' | 'segmentIds'>,
): Partial<RowInput<'FilmingDay'>> {
  return {
    date: day.date,
    kind: day.kind,
    startMin: day.start,
    wrapByMin: day.wrapBy,
    mealGapMin: day.mealGap,
    lightMarginMin: day.lightMargin,
    outfit: day.outfit,
  };
}

/** The columns of a step from its form. */
export function stepColumns(
  step: StepTexts,
): Omit<RowInput<'Step'>, 'id' | 'segmentId' | 'position'> {
  const { rest, chooseMin, chooseMax, ...columns } = step;
  return { ...columns, restS: rest ?? 0, chooseMinS: chooseMin, chooseMaxS: chooseMax };
}

/** The edits that leave nothing pointing at a step: ties, stretches and pins go, a shot stands alone. */
export function untieEdits({ links, spans, pins, shots }: Tied): Edit[] {
  return [
    ...links.map(({ id, rev }): Edit => ({ op: 'remove', entity: 'StepLink', id, rev })),
    ...spans.map(({ id, rev }): Edit => ({ op: 'remove', entity: 'PerishableSpan', id, rev })),
    ...pins.map(({ id, rev }): Edit => ({ op: 'remove', entity: 'Pin', id, rev })),
    ...shots.map(({ id, rev }): Edit => ({
      op: 'update',
      entity: 'Shot',
      id,
      rev,
      patch: { stepId: null },
    })),
  ];
}

const STEP_FIELDS: Readonly<Record<string, string>> = {
  lowS: 'low',
  usualS: 'usual',
  highS: 'high',
  restS: 'rest',
  ovenMilliC: 'oven',
  coreMilliC: 'core',
  chooseMinS: 'chooseMin',
  chooseMaxS: 'chooseMax',
  startMin: 'start',
  wrapByMin: 'wrapBy',
  mealGapMin: 'mealGap',
  lightMarginMin: 'lightMargin',
  minLagS: 'minLag',
  maxLagS: 'maxLag',
  lengthS: 'length',
  limitS: 'limit',
  endMin: 'end',
  notBeforeMin: 'at',
  notAfterMin: 'at',
};

/** The form's field for a column that the store refuses. */
export function dayField(column: string): string {
  return STEP_FIELDS[column] ?? column;
}
