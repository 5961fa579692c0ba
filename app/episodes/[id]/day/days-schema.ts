import { z } from 'zod';
import { PLACE_WAYS } from '#lib/shoot/day-place';
import { requiredText, revision, rowId } from '../../../_forms/fields';
import { PLACE } from './field-names';

export const anotherDayForm = z.object({ episodeId: rowId });

export const takeDayOutForm = z.object({ episodeId: rowId, dayId: rowId, rev: revision });

export const takeOffForm = z.object({ episodeId: rowId, dayId: rowId, otherId: rowId });

const way = z.enum(['', ...PLACE_WAYS], { error: 'Choose what of it is filmed.' });

/** Another episode on a day: which of its segments, and what of each. */
export const addEpisodeForm = z
  .looseObject({
    episodeId: rowId,
    dayId: rowId,
    otherId: requiredText('which episode', 64),
  })
  .transform(({ episodeId, dayId, otherId, ...sent }, context) => {
    const places = Object.entries(sent).flatMap(([name, value]) => {
      if (!name.startsWith(PLACE)) return [];
      const read = way.safeParse(value);
      if (!read.success) {
        context.addIssue({ code: 'custom', path: [name], message: 'Choose what of it is filmed.' });
        return [];
      }
      return read.data === '' ? [] : [{ segmentId: name.slice(PLACE.length), way: read.data }];
    });
    return { episodeId, dayId, otherId, places };
  });

export type Placed = z.output<typeof addEpisodeForm>['places'][number];
