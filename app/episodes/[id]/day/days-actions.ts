'use server';

import { redirect } from 'next/navigation';
import { failed } from '#lib/result';
import { anotherDay } from '#lib/shoot/day-place';
import { nextFilmingDate } from '#lib/shoot/default-day';
import { minuteOf } from '#lib/shoot/local-time';
import { readDays } from '#lib/store/read-days';
import { readEpisodeFile } from '#lib/store/read-episode';
import { nextPlaces } from '#lib/store/next-place';
import { readPinsOnDay } from '#lib/store/read-step-ties';
import { removalEdits } from '#lib/store/remove-rows';
import type { Edit } from '#lib/store/command';
import { localDate } from '#lib/units/local-date';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { withDay } from './asked-day';
import { change, GONE, readDay } from './change';
import { addEpisodeEdits, refusalToAdd } from './days-edits';
import { addEpisodeForm, anotherDayForm, takeDayOutForm, takeOffForm } from './days-schema';
import { newDayEdits } from './edits';
import { newDayId } from './new-day-id';

const dayPage = (episodeId: string, dayId: string | null = null): string =>
  withDay(`/episodes/${episodeId}/day`, dayId);

/** A further filming day, with what is on none yet. */
export async function makeAnotherDay(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(anotherDayForm, state, form, async ({ episodeId }) => {
    const read = await readDay(episodeId);
    if (!read) return GONE;
    const { zone } = read.file.kitchen;
    const now = new Date();
    const today = localDate(now, zone);
    const next = nextFilmingDate(today, minuteOf(now, today, zone));
    const day = anotherDay(read.file, await readDays(episodeId), next);
    const edits = newDayEdits(read.file, read.revs, day);
    const done = await change(episodeId, 'Make another filming day', edits);
    if (done.ok) redirect(dayPage(episodeId, newDayId(edits)));
    return done;
  });
}

/** Another episode is filmed on the day too: chosen segments of it, all or in part. */
export async function addEpisode(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    addEpisodeForm,
    state,
    form,
    async ({ episodeId, dayId, otherId, places }) => {
      const day = (await readDays(episodeId)).find(({ id }) => id === dayId);
      if (!day) return NO_DAY;
      const other = await readEpisodeFile(otherId, new Date().toISOString());
      if (!other) return NO_EPISODE;
      const refused = refusalToAdd(day, other, places);
      if (!refused.ok) return refused;
      const positions = await nextPlaces('DaySegment', dayId, places.length);
      const label = `Film ${other.episode.title} too`;
      const edits = addEpisodeEdits(dayId, other, places, positions);
      const done = await change(episodeId, label, edits);
      if (done.ok) redirect(dayPage(episodeId, dayId));
      return done;
    },
  );
}

/** An episode, this one or another, is not filmed on the day after all. */
export async function takeOff(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(takeOffForm, state, form, async ({ episodeId, dayId, otherId }) => {
    const day = (await readDays(episodeId)).find(({ id }) => id === dayId);
    if (!day) return NO_DAY;
    const its = day.episodes.filter(({ id }) => id === otherId);
    if (its.length === 0) return GONE;
    if (its.length === day.episodes.length) return OF_NONE;
    const places = day.places.filter((place) => place.episodeId === otherId);
    const pins = await readPinsOnDay(
      dayId,
      places.map(({ segmentId }) => segmentId),
    );
    const edits: Edit[] = [
      ...its.map(({ rowId, rev }): Edit => {
        return { op: 'remove', entity: 'DayEpisode', id: rowId, rev };
      }),
      ...places.map(({ id, rev }): Edit => ({ op: 'remove', entity: 'DaySegment', id, rev })),
      ...pins.map(({ id, rev }): Edit => ({ op: 'remove', entity: 'Pin', id, rev })),
    ];
    const done = await change(episodeId, `Take ${its[0]?.title ?? ''} off a filming day`, edits);
    if (done.ok) redirect(dayPage(episodeId, otherId === episodeId ? null : dayId));
    return done;
  });
}

/** The day of one episode goes, with its appointments and pins. */
export async function takeDayOut(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(takeDayOutForm, state, form, async ({ episodeId, dayId, rev }) => {
    const day = (await readDays(episodeId)).find(({ id }) => id === dayId);
    if (!day) return NO_DAY;
    if (day.episodes.length > 1) return OF_OTHERS;
    const edits = await removalEdits('FilmingDay', dayId, rev);
    const done = await change(episodeId, 'Take a filming day out', edits);
    if (done.ok) redirect(dayPage(episodeId));
    return done;
  });
}

const refusal = (path: string, code: string, message: string) => failed({ path, code, message });
const NO_DAY = refusal(
  '',
  'gone',
  'This filming day is none of this episode’s any more: open the page again.',
);
const NO_EPISODE = refusal(
  'otherId',
  'gone',
  'This episode was removed meanwhile: choose another.',
);
const OF_NONE = refusal(
  '',
  'refused',
  'It would be a day of no episode: take the day out instead.',
);
const OF_OTHERS = refusal(
  '',
  'refused',
  'Another episode is filmed on this day too: take this one off it instead.',
);
