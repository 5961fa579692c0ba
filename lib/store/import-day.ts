import { v7 as uuid } from 'uuid';
import type { FilmingDay } from '#lib/episode/day-schema';
import type { Edit } from '#lib/store/command';
import { dayColumns } from '#lib/store/episode-columns';
import type { ImportIds } from '#lib/store/import-ids';
import { create } from '#lib/store/new-row';

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
