'use server';

import { revalidatePath } from 'next/cache';
import { v7 as uuid } from 'uuid';
import { ok } from '#lib/result';
import { defaultDay, nextFilmingDate } from '#lib/shoot/default-day';
import { minuteOf } from '#lib/shoot/local-time';
import { nextPlace } from '#lib/store/next-place';
import { localDate } from '#lib/units/local-date';
import { keepOrderSoFar } from '#lib/work/day-searches';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { newRow } from './_components/view';
import { change, changeAndClose, fieldOf, GONE, readDay } from './change';
import { dayColumns, filmedEdits, newDayEdits, stepColumns, untieEdits } from './edits';
import type { Edit } from '#lib/store/command';
import { readLastStep, readTied } from '#lib/store/read-step-ties';
import {
  dayForm,
  keepOrderForm,
  linkForm,
  makeDayForm,
  newLinkForm,
  newShotForm,
  removeLinkForm,
  removeShotForm,
  shotForm,
  switchKindForm,
} from './schema';
import { newStepForm, removeStepForm, stepForm } from './step-schema';

export async function makeDay(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(makeDayForm, state, form, async ({ episodeId }) => {
    const read = await readDay(episodeId);
    if (!read) return GONE;
    if (read.file.day) return ok('There is a filming day already.');
    const { zone } = read.file.kitchen;
    const now = new Date();
    const today = localDate(now, zone);
    const next = nextFilmingDate(today, minuteOf(now, today, zone));
    const day = defaultDay(read.file, next);
    return change(episodeId, 'Make a filming day', newDayEdits(read.file, read.revs, day));
  });
}

/** Ends the search for a better order at once; the best so far is the day's order from then on. */
export async function keepOrder(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(keepOrderForm, state, form, async ({ episodeId, dayId }) => {
    const read = await readDay(episodeId, dayId);
    if (!read?.file.day) return GONE;
    keepOrderSoFar(read.file);
    revalidatePath(`/episodes/${episodeId}`, 'layout');
    return ok('This order is kept.');
  });
}

export async function switchKind(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(switchKindForm, state, form, ({ episodeId, dayId, rev, kind }) =>
    change(episodeId, kind === 'packed' ? 'Pack the day' : 'Live the day', [
      { op: 'update', entity: 'FilmingDay', id: dayId, rev, patch: { kind } },
    ]),
  );
}

export async function saveDay(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    dayForm,
    state,
    form,
    async ({ episodeId, dayId, rev, segmentIds, ...sent }) => {
      const read = await readDay(episodeId, dayId);
      if (read?.file.day?.id !== dayId) return GONE;
      return change(episodeId, 'Change the day', [
        {
          op: 'update',
          entity: 'FilmingDay',
          id: dayId,
          rev,
          patch: dayColumns(sent),
        },
        ...filmedEdits(read.file, read.file.day, segmentIds, read.revs),
      ]);
    },
    fieldOf,
  );
}

export async function addStep(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    newStepForm,
    state,
    form,
    async ({ episodeId, segmentId, ...step }) => {
      const id = uuid();
      const position = await nextPlace('Step', segmentId);
      const before = await readLastStep(segmentId);
      const columns = stepColumns(step);
      return changeAndClose(episodeId, id, `Add ${step.title}`, [
        { op: 'create', entity: 'Step', row: { id, segmentId, position, ...columns } },
        ...(before === null ? [] : [await followsEdit(episodeId, before, id)]),
      ]);
    },
    fieldOf,
  );
}

/** Steps of one segment follow each other as they are written; the tie can be taken out. */
async function followsEdit(episodeId: string, fromStepId: string, toStepId: string): Promise<Edit> {
  const position = await nextPlace('StepLink', episodeId);
  const ends = { fromStepId, fromAnchor: 'end', toStepId, toAnchor: 'start' } as const;
  const lags = { minLagS: 0, maxLagS: null, reason: 'as written' };
  return {
    op: 'create',
    entity: 'StepLink',
    row: { id: uuid(), episodeId, position, ...ends, ...lags },
  };
}

export async function saveStep(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    stepForm,
    state,
    form,
    ({ episodeId, stepId, rev, ...step }) =>
      changeAndClose(episodeId, stepId, `Change ${step.title}`, [
        { op: 'update', entity: 'Step', id: stepId, rev, patch: stepColumns(step) },
      ]),
    fieldOf,
  );
}

/** With the step goes what ties it, in one act, so that undoing it brings all of it back. */
export async function removeStep(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeStepForm, state, form, async ({ episodeId, segmentId, stepId, rev }) =>
    changeAndClose(episodeId, segmentId, 'Take a step out', [
      { op: 'remove', entity: 'Step', id: stepId, rev },
      ...untieEdits(await readTied(stepId)),
    ]),
  );
}

export async function addLink(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    newLinkForm,
    state,
    form,
    async ({ episodeId, minLag, maxLag, ...link }) => {
      const id = uuid();
      const position = await nextPlace('StepLink', episodeId);
      return changeAndClose(episodeId, id, 'Tie two steps', [
        {
          op: 'create',
          entity: 'StepLink',
          row: { id, episodeId, position, ...link, minLagS: minLag, maxLagS: maxLag },
        },
      ]);
    },
    fieldOf,
  );
}

export async function saveLink(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    linkForm,
    state,
    form,
    ({ episodeId, linkId, rev, minLag, maxLag, ...link }) =>
      changeAndClose(episodeId, linkId, 'Change what comes before what', [
        {
          op: 'update',
          entity: 'StepLink',
          id: linkId,
          rev,
          patch: { ...link, minLagS: minLag, maxLagS: maxLag },
        },
      ]),
    fieldOf,
  );
}

export async function removeLink(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeLinkForm, state, form, ({ episodeId, segmentId, linkId, rev }) =>
    changeAndClose(episodeId, newRow('link', segmentId), 'Untie two steps', [
      { op: 'remove', entity: 'StepLink', id: linkId, rev },
    ]),
  );
}

export async function addShot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    newShotForm,
    state,
    form,
    async ({ episodeId, segmentId, length, ...shot }) => {
      const id = uuid();
      const position = await nextPlace('Shot', segmentId);
      return changeAndClose(episodeId, id, `Add the shot ${shot.title}`, [
        {
          op: 'create',
          entity: 'Shot',
          row: { id, segmentId, position, ...shot, lengthS: length },
        },
      ]);
    },
    fieldOf,
  );
}

export async function saveShot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    shotForm,
    state,
    form,
    ({ episodeId, shotId, rev, length, ...shot }) =>
      changeAndClose(episodeId, shotId, `Change the shot ${shot.title}`, [
        { op: 'update', entity: 'Shot', id: shotId, rev, patch: { ...shot, lengthS: length } },
      ]),
    fieldOf,
  );
}

export async function removeShot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeShotForm, state, form, ({ episodeId, segmentId, shotId, rev }) =>
    changeAndClose(episodeId, newRow('shot', segmentId), 'Take a shot out', [
      { op: 'remove', entity: 'Shot', id: shotId, rev },
    ]),
  );
}
