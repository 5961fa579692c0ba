'use server';

import { v7 as uuid } from 'uuid';
import { MOST_APPLIANCES, MOST_HOUSE_SHOTS } from '#lib/episode/step-limits';
import { ok } from '#lib/result';
import { USUAL_HOUSE_SHOTS } from '#lib/shoot/house-shots';
import type { Edit } from '#lib/store/command';
import { nextPlace } from '#lib/store/next-place';
import { readKitchen } from '#lib/store/read-kitchen';
import { readOrder, reorderEdits, stepped } from '#lib/store/reorder-rows';
import { fieldOfColumn, parseThenAct } from '../_forms/parse-then-act';
import type { FormState } from '../_ui/form/form-state';
import { change, GONE, noRoom } from './change';
import {
  applianceForm,
  beginHouseShotsForm,
  countsForm,
  houseShotForm,
  moveHouseShotForm,
  newApplianceForm,
  newHouseShotForm,
} from './day-schema';
import { removePartForm } from './schema';

const FIELDS: Readonly<Record<string, string>> = {
  cameraChangeS: 'cameraChange',
  cleanDownS: 'cleanDown',
  lengthS: 'length',
};

const fieldOf = (path: string) => {
  const column = fieldOfColumn(path);
  return FIELDS[column] ?? column;
};

/** What the filming day counts of the kitchen: the camera's moves, the counter, cleaning down, the cards. */
export async function saveCounts(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    countsForm,
    state,
    form,
    ({ kitchenId, rev, cameraChange, counterPlaces, cleanDown, videoMbps }) => {
      const patch = {
        cameraChangeS: cameraChange,
        counterPlaces,
        cleanDownS: cleanDown,
        videoMbps,
      };
      const label = 'Change what the day counts';
      return change(label, [{ op: 'update', entity: 'Kitchen', id: kitchenId, rev, patch }]);
    },
    fieldOf,
  );
}

export async function addAppliance(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(newApplianceForm, state, form, async ({ kitchenId, ...appliance }) => {
    const full = await noRoom(kitchenId, (of) => of.appliances.length, MOST_APPLIANCES);
    if (full) return full;
    const position = await nextPlace('Appliance', kitchenId);
    const row = { id: uuid(), kitchenId, position, ...appliance };
    return change(`Add ${appliance.name}`, [{ op: 'create', entity: 'Appliance', row }]);
  });
}

export async function saveAppliance(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(applianceForm, state, form, ({ applianceId, rev, ...patch }) =>
    change(`Change ${patch.name}`, [
      { op: 'update', entity: 'Appliance', id: applianceId, rev, patch },
    ]),
  );
}

export async function removeAppliance(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removePartForm, state, form, ({ partId, rev }) =>
    change('Take an appliance out', [{ op: 'remove', entity: 'Appliance', id: partId, rev }]),
  );
}

export async function addHouseShot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    newHouseShotForm,
    state,
    form,
    async ({ kitchenId, length, ...shot }) => {
      const full = await noRoom(kitchenId, (of) => of.houseShots.length, MOST_HOUSE_SHOTS);
      if (full) return full;
      const position = await nextPlace('HouseShot', kitchenId);
      const row = { id: uuid(), kitchenId, position, ...shot, lengthS: length };
      return change(`Add the shot ${shot.title}`, [{ op: 'create', entity: 'HouseShot', row }]);
    },
    fieldOf,
  );
}

export async function saveHouseShot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    houseShotForm,
    state,
    form,
    ({ shotId, rev, length, ...shot }) =>
      change(`Change the shot ${shot.title}`, [
        {
          op: 'update',
          entity: 'HouseShot',
          id: shotId,
          rev,
          patch: { ...shot, lengthS: length },
        },
      ]),
    fieldOf,
  );
}

export async function removeHouseShot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removePartForm, state, form, ({ partId, rev }) =>
    change('Take a usual shot out', [{ op: 'remove', entity: 'HouseShot', id: partId, rev }]),
  );
}

export async function moveHouseShot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(moveHouseShotForm, state, form, async ({ kitchenId, shotId, to }) => {
    const order = await readOrder('HouseShot', kitchenId);
    const wanted = stepped(order, shotId, to);
    if (wanted === order) return ok(`It is ${to === 'up' ? 'the first' : 'the last'} already.`);
    const edits = await reorderEdits('HouseShot', kitchenId, wanted);
    return change('Change the order of the usual shots', edits);
  });
}

/** A kitchen without shots of its own begins with the usual ones. */
export async function beginHouseShots(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(beginHouseShotsForm, state, form, async ({ kitchenId }) => {
    const stored = await readKitchen(kitchenId);
    if (!stored) return GONE;
    if (stored.kitchen.houseShots.length > 0) return ok('There are shots already.');
    const first = await nextPlace('HouseShot', kitchenId);
    const edits = USUAL_HOUSE_SHOTS.map((shot, at): Edit => {
      const row = { id: uuid(), kitchenId, position: first + at, ...shot };
      return { op: 'create', entity: 'HouseShot', row };
    });
    return change('Begin with the usual shots', edits);
  });
}
