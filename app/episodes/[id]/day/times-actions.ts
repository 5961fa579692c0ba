'use server';

import { v7 as uuid } from 'uuid';
import { filmedTogether, type DayFile } from '#lib/episode/also-filmed';
import { failed } from '#lib/result';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { newRow } from './_components/view';
import { changeAndClose, fieldOf, GONE, missingStep, readDay } from './change';
import { placeAfter } from '#lib/store/read-step-ties';
import {
  appointmentForm,
  newAppointmentForm,
  newPinForm,
  pinForm,
  pinStepForm,
  removeAppointmentForm,
  removePinForm,
} from './times-schema';
import { pinColumns } from '#lib/shoot/pins';

export async function addAppointment(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    newAppointmentForm,
    state,
    form,
    async ({ episodeId, dayId, title, start, end, hands }) => {
      const read = await readDay(episodeId, dayId);
      if (read?.file.day?.id !== dayId) return GONE;
      const id = uuid();
      const position = await placeAfter('Appointment', dayId);
      return changeAndClose(episodeId, id, `Add the appointment ${title}`, [
        {
          op: 'create',
          entity: 'Appointment',
          row: { id, dayId, position, title, startMin: start, endMin: end, hands },
        },
      ]);
    },
    fieldOf,
  );
}

export async function saveAppointment(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    appointmentForm,
    state,
    form,
    ({ episodeId, appointmentId, rev, title, start, end, hands }) =>
      changeAndClose(episodeId, appointmentId, `Change the appointment ${title}`, [
        {
          op: 'update',
          entity: 'Appointment',
          id: appointmentId,
          rev,
          patch: { title, startMin: start, endMin: end, hands },
        },
      ]),
    fieldOf,
  );
}

export async function removeAppointment(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    removeAppointmentForm,
    state,
    form,
    ({ episodeId, dayId, appointmentId, rev }) =>
      changeAndClose(episodeId, newRow('appointment', dayId), 'Take an appointment out', [
        { op: 'remove', entity: 'Appointment', id: appointmentId, rev },
      ]),
  );
}

/** Why a step cannot get this pin: it was taken out, or it has one already. */
function pinRefusal(file: DayFile, stepId: string, pinId: string | null) {
  const pins = file.day?.pins ?? [];
  if (!pins.some((pin) => pin.stepId === stepId && pin.id !== pinId)) {
    return missingStep(filmedTogether(file), { stepId });
  }
  const message = 'This step has a clock time already: change that one.';
  return failed({ path: 'stepId', code: 'exists-already', message });
}

export async function addPin(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    newPinForm,
    state,
    form,
    async ({ episodeId, dayId, stepId, when, at }) => {
      const read = await readDay(episodeId, dayId);
      if (read?.file.day?.id !== dayId) return GONE;
      const refused = pinRefusal(read.file, stepId, null);
      if (refused) return refused;
      const id = uuid();
      const position = await placeAfter('Pin', dayId);
      return changeAndClose(episodeId, id, 'Tie a step to a clock time', [
        {
          op: 'create',
          entity: 'Pin',
          row: { id, dayId, position, stepId, ...pinColumns(when, at) },
        },
      ]);
    },
    fieldOf,
  );
}

/** Ties a step to a clock time, in place of the one that it had. */
export async function pinStep(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(pinStepForm, state, form, async ({ episodeId, dayId, stepId, when, min }) => {
    const read = await readDay(episodeId, dayId);
    if (read?.file.day?.id !== dayId) return GONE;
    const refused = missingStep(filmedTogether(read.file), { stepId });
    if (refused) return refused;
    const had = read.file.day.pins.find((pin) => pin.stepId === stepId);
    const id = had?.id ?? uuid();
    const columns = pinColumns(when, min);
    return changeAndClose(episodeId, id, 'Tie a step to a clock time', [
      had === undefined
        ? {
            op: 'create',
            entity: 'Pin',
            row: { id, dayId, position: await placeAfter('Pin', dayId), stepId, ...columns },
          }
        : { op: 'update', entity: 'Pin', id, rev: read.revs[id] ?? 0, patch: columns },
    ]);
  });
}

export async function savePin(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    pinForm,
    state,
    form,
    async ({ episodeId, pinId, rev, stepId, when, at }) => {
      const read = await readDay(episodeId);
      if (!read) return GONE;
      const refused = pinRefusal(read.file, stepId, pinId);
      if (refused) return refused;
      return changeAndClose(episodeId, pinId, 'Change the clock time of a step', [
        { op: 'update', entity: 'Pin', id: pinId, rev, patch: { stepId, ...pinColumns(when, at) } },
      ]);
    },
    fieldOf,
  );
}

export async function removePin(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removePinForm, state, form, ({ episodeId, segmentId, pinId, rev }) =>
    changeAndClose(episodeId, newRow('pin', segmentId), 'Let a step start at any time', [
      { op: 'remove', entity: 'Pin', id: pinId, rev },
    ]),
  );
}
