'use server';

import { v7 as uuid } from 'uuid';
import { z } from 'zod';
import { MOST_OVENS } from '#lib/episode/step-limits';
import { failed, ok } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { DEFAULT_KITCHEN } from '#lib/store/default-kitchen';
import { kitchenEdits } from '#lib/store/import-kitchen';
import { nextPlace } from '#lib/store/next-place';
import { readKitchen } from '#lib/store/read-kitchen';
import { fieldOfColumn, parseThenAct } from '../_forms/parse-then-act';
import type { FormState } from '../_ui/form/form-state';
import { change, noRoom } from './change';
import {
  changeForm,
  kitchenForm,
  newOvenForm,
  newScaleForm,
  ovenForm,
  removePartForm,
  scaleForm,
  SPREAD_KINDS,
  spreadsForm,
} from './schema';

const FIELDS: Readonly<Record<string, string>> = {
  coldMilliC: 'cold',
  mostMilliC: 'most',
  heatSPerC: 'heat',
  coolSPerC: 'cool',
  fromMilliC: 'from',
  toMilliC: 'to',
  seconds: 'took',
  resolutionMg: 'resolution',
  accuracyPpm: 'accuracy',
};

const fieldOf = (path: string) => {
  const column = fieldOfColumn(path);
  return FIELDS[column] ?? column;
};

/** Keeps the kitchen that was taken for granted, so that it can be changed. */
export async function makeKitchen(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(z.object({}), state, form, async () => {
    if (await readKitchen()) return ok('There is a kitchen already.');
    return change('Begin a kitchen', kitchenEdits(DEFAULT_KITCHEN));
  });
}

export async function saveKitchen(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(kitchenForm, state, form, ({ kitchenId, rev, ...patch }) =>
    change('Change the kitchen', [{ op: 'update', entity: 'Kitchen', id: kitchenId, rev, patch }]),
  );
}

export async function addOven(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    newOvenForm,
    state,
    form,
    async ({ kitchenId, ...oven }) => {
      const full = await noRoom(kitchenId, (of) => of.ovens.length, MOST_OVENS);
      if (full) return full;
      const position = await nextPlace('Oven', kitchenId);
      const row = { id: uuid(), kitchenId, position, ...oven };
      return change(`Add ${oven.name}`, [{ op: 'create', entity: 'Oven', row }]);
    },
    fieldOf,
  );
}

export async function saveOven(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    ovenForm,
    state,
    form,
    ({ ovenId, rev, ...patch }) =>
      change(`Change ${patch.name}`, [{ op: 'update', entity: 'Oven', id: ovenId, rev, patch }]),
    fieldOf,
  );
}

export async function removeOven(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removePartForm, state, form, ({ partId, rev }) =>
    change('Take an oven out', [{ op: 'remove', entity: 'Oven', id: partId, rev }]),
  );
}

export async function addChange(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    changeForm,
    state,
    form,
    async ({ ovenId, ...measured }) => {
      const position = await nextPlace('OvenChange', ovenId);
      const row = { id: uuid(), ovenId, position, ...measured };
      return change('Add a measured time', [{ op: 'create', entity: 'OvenChange', row }]);
    },
    fieldOf,
  );
}

export async function removeChange(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removePartForm, state, form, ({ partId, rev }) =>
    change('Take a measured time out', [{ op: 'remove', entity: 'OvenChange', id: partId, rev }]),
  );
}

export async function addScale(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    newScaleForm,
    state,
    form,
    async ({ kitchenId, name, resolution, accuracy }) => {
      const position = await nextPlace('Scale', kitchenId);
      const columns = { name, resolutionMg: resolution, accuracyPpm: accuracy };
      const row = { id: uuid(), kitchenId, position, ...columns };
      return change(`Add ${name}`, [{ op: 'create', entity: 'Scale', row }]);
    },
    fieldOf,
  );
}

export async function saveScale(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    scaleForm,
    state,
    form,
    ({ scaleId, rev, name, resolution, accuracy }) =>
      change(`Change ${name}`, [
        {
          op: 'update',
          entity: 'Scale',
          id: scaleId,
          rev,
          patch: { name, resolutionMg: resolution, accuracyPpm: accuracy },
        },
      ]),
    fieldOf,
  );
}

export async function removeScale(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removePartForm, state, form, ({ partId, rev }) =>
    change('Take a scale out', [{ op: 'remove', entity: 'Scale', id: partId, rev }]),
  );
}

export async function saveSpreads(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(spreadsForm, state, form, async (sent) => {
    const stored = await readKitchen(sent.kitchenId);
    if (!stored) {
      return failed({ path: '', code: 'gone', message: 'This kitchen is no longer there.' });
    }
    const edits: Edit[] = [];
    for (const [at, kind] of SPREAD_KINDS.entries()) {
      const permille = sent[kind];
      const row = stored.kitchen.spreads.find((spread) => spread.kind === kind);
      const rev = Number(sent[`rev-${kind}`] ?? 0);
      if (row && row.permille !== permille) {
        edits.push({ op: 'update', entity: 'MeasureSpread', id: row.id, rev, patch: { permille } });
      }
      if (!row) {
        const created = { id: uuid(), kitchenId: sent.kitchenId, position: at, kind, permille };
        edits.push({ op: 'create', entity: 'MeasureSpread', row: created });
      }
    }
    if (edits.length === 0) return ok('Nothing had changed.');
    return change('Change measures by eye', edits);
  });
}
