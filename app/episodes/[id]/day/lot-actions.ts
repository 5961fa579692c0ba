'use server';

import { v7 as uuid } from 'uuid';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { newRow } from './_components/view';
import { changeAndClose, changeAndOpen, fieldOf, GONE, missingStep, readDay } from './change';
import {
  lotForm,
  newLotForm,
  newSpanForm,
  removeLotForm,
  removeSpanForm,
  spanForm,
} from './lot-schema';
import { placeAfter, readSpans } from '#lib/store/read-step-ties';

/** A lot that has a clock is asked next when it stands out; one for the picture only has none. */
export async function addLot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    newLotForm,
    state,
    form,
    async ({ episodeId, segmentId, limit, ...lot }) => {
      const read = await readDay(episodeId);
      if (!read?.file.episode.segments.some(({ id }) => id === segmentId)) return GONE;
      const id = uuid();
      const position = await placeAfter('Perishable', segmentId);
      const row = { id, segmentId, position, limitS: limit, ...lot };
      const label = `Add ${lot.name}`;
      const edits = [{ op: 'create', entity: 'Perishable', row } as const];
      return lot.thrownAway
        ? changeAndClose(episodeId, id, label, edits)
        : changeAndOpen(episodeId, newRow('span', id), label, edits);
    },
    fieldOf,
  );
}

export async function saveLot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    lotForm,
    state,
    form,
    ({ episodeId, lotId, rev, name, limit, thrownAway }) =>
      changeAndClose(episodeId, lotId, `Change ${name}`, [
        {
          op: 'update',
          entity: 'Perishable',
          id: lotId,
          rev,
          patch: { name, limitS: limit, thrownAway },
        },
      ]),
    fieldOf,
  );
}

/** With the lot go its stretches, in one act. */
export async function removeLot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeLotForm, state, form, async ({ episodeId, segmentId, lotId, rev }) => {
    const spans = (await readSpans(episodeId)).filter(({ perishableId }) => perishableId === lotId);
    return changeAndClose(episodeId, newRow('lot', segmentId), 'Take a lot out', [
      { op: 'remove', entity: 'Perishable', id: lotId, rev },
      ...spans.map((span) => {
        return { op: 'remove', entity: 'PerishableSpan', id: span.id, rev: span.rev } as const;
      }),
    ]);
  });
}

export async function addSpan(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    newSpanForm,
    state,
    form,
    async ({ episodeId, lotId, ...span }) => {
      const read = await readDay(episodeId);
      const lots = read?.file.episode.segments.flatMap(({ perishables }) => perishables) ?? [];
      if (!read || !lots.some(({ id }) => id === lotId)) return GONE;
      const { fromStepId, toStepId } = span;
      const missing = missingStep(read.file, { fromStepId, toStepId });
      if (missing) return missing;
      const id = uuid();
      const position = await placeAfter('PerishableSpan', lotId);
      return changeAndClose(episodeId, lotId, 'Say when it stands out', [
        {
          op: 'create',
          entity: 'PerishableSpan',
          row: { id, perishableId: lotId, position, ...span },
        },
      ]);
    },
    fieldOf,
  );
}

export async function saveSpan(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    spanForm,
    state,
    form,
    async ({ episodeId, spanId, rev, ...span }) => {
      const read = await readDay(episodeId);
      if (!read) return GONE;
      const { fromStepId, toStepId } = span;
      const missing = missingStep(read.file, { fromStepId, toStepId });
      if (missing) return missing;
      return changeAndClose(episodeId, spanId, 'Change when it stands out', [
        { op: 'update', entity: 'PerishableSpan', id: spanId, rev, patch: span },
      ]);
    },
    fieldOf,
  );
}

export async function removeSpan(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeSpanForm, state, form, ({ episodeId, lotId, spanId, rev }) =>
    changeAndClose(episodeId, lotId, 'Take out when it stands out', [
      { op: 'remove', entity: 'PerishableSpan', id: spanId, rev },
    ]),
  );
}
