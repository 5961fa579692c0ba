'use server';

import { revalidatePath } from 'next/cache';
import { v7 as uuid } from 'uuid';
import { failed, ok } from '#lib/result';
import { offerOfStep, offersOf, offersText, type Offer } from '#lib/shoot/after-steps';
import type { CameraClock } from '#lib/shoot/camera-clock';
import { instantOfSecond } from '#lib/shoot/local-time';
import type { Edit } from '#lib/store/command';
import { keepDayEvents } from '#lib/store/day-events';
import { readRevisions } from '#lib/store/read-episode';
import { minutesSaid } from '#lib/units/read-typed';
import { parseThenAct } from '../../../../_forms/parse-then-act';
import type { FormState } from '../../../../_ui/form/form-state';
import { change, GONE } from '../change';
import { readAfter, type DayAfter } from './read-after';
import { cameraClockForm, takeAllForm, takeOneForm } from './schema';

/** What a step took becomes its expected minutes. */
export async function takeMinutes(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(takeOneForm, state, form, async ({ episodeId, dayId, stepId, offered }) => {
    const after = await ofDay(episodeId, dayId);
    if (!after) return GONE;
    const offer = offerOfStep(after.steps, stepId);
    if (!offer || offersText([offer]) !== offered) return CHANGED;
    const label = `Take ${minutesSaid(offer.take.usualS)} for ${offer.step.title}`;
    return change(episodeId, label, takeEdits(after.revs, [offer]));
  });
}

/** What every step took becomes its expected minutes, in one act; the doubtful ones stay as they are. */
export async function takeAllMinutes(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(takeAllForm, state, form, async ({ episodeId, dayId, offered }) => {
    const after = await ofDay(episodeId, dayId);
    if (!after) return GONE;
    const offers = offersOf(after.steps);
    if (offersText(offers) !== offered) return CHANGED;
    const label = `Take what ${offers.length === 1 ? 'a step' : `${offers.length} steps`} took`;
    return change(episodeId, label, takeEdits(after.revs, offers));
  });
}

/** The picture in which the camera saw the clock; entered again, the last counts. */
export async function keepCameraClock(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(cameraClockForm, state, form, async (sent) => {
    const { episodeId, dayId, second, frame, rate } = sent;
    const after = await ofDay(episodeId, dayId);
    if (!after) return GONE;
    const { day, file } = after;
    const payload: CameraClock = {
      clockAt: instantOfSecond(day.date, second, file.kitchen.zone).toISOString(),
      frame,
      rate: { num: rate.num, den: rate.den, dropFrame: rate.drop > 0 },
    };
    const id = uuid();
    const at = new Date();
    const made = { id, deviceId: `after-${id}`, deviceSeq: 1, at: at.toISOString() };
    await keepDayEvents(dayId, [{ ...made, kind: 'cameraClock', refs: {}, payload }], at);
    revalidatePath(`/episodes/${episodeId}`, 'layout');
    return ok('The takes have their timecodes.');
  });
}

type Revisions = Readonly<Record<string, number>>;

/** A day with the revisions of its rows, read first, so that what changes meanwhile is never overwritten. */
async function ofDay(
  episodeId: string,
  dayId: string,
): Promise<(DayAfter & { readonly revs: Revisions }) | null> {
  const revs = await readRevisions(episodeId, undefined, dayId);
  const after = await readAfter(episodeId, dayId);
  return after?.day.id === dayId ? { ...after, revs } : null;
}

/** Steps of another episode of the day are offered too. */
function takeEdits(revs: Revisions, offers: readonly Offer[]): Edit[] {
  return offers.map(({ step, take, washedSegmentId }): Edit => {
    const id = washedSegmentId ?? step.id;
    const row = { op: 'update', id, rev: revs[id] ?? 0 } as const;
    return washedSegmentId === null
      ? { ...row, entity: 'Step', patch: take }
      : { ...row, entity: 'Segment', patch: { washUpS: take.usualS } };
  });
}

const CHANGED = failed({
  path: '',
  code: 'changed',
  message: 'This was changed since the page was opened, and nothing was taken: open it again.',
});
