'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { v7 as uuid } from 'uuid';
import { ok } from '#lib/result';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { nextPlace } from '#lib/store/next-place';
import { readChanges } from '#lib/store/read-changes';
import { readFoodVersions, readStoredFood } from '#lib/store/read-foods';
import { undo } from '#lib/store/undo';
import { fieldOfColumn, parseThenAct, typedTexts } from '../_forms/parse-then-act';
import type { FormState } from '../_ui/form/form-state';
import { change, changeAndShow, GONE } from './change';
import { dateIn } from '../date-in';
import { newFoodEdits, readAgainEdits, sameLabelEdits, versionFromLabel } from './edits';
import { labelField, MEND, readMend } from './field-names';
import { photoEdits } from './foods/[foodId]/photo/sent-photo';
import { packEdits } from './pack-edits';
import { removePartForm } from './pack-schema';
import {
  allergenForm,
  foodForm,
  newFoodForm,
  readAgainForm,
  removeFoodForm,
  sameLabelForm,
  takeBackForm,
} from './schema';

const fieldOf = (path: string) => labelField(fieldOfColumn(path));

/** The form as it would read without a slip, where its button was pressed before any script; nothing is written. */
function mended(state: FormState, form: FormData): FormState | null {
  const mend = form.get(MEND);
  if (typeof mend !== 'string') return null;
  const typed = { ...typedTexts(form), ...readMend(mend) };
  return { ...state, typed, problems: [], done: 'Put right; not kept yet.' };
}

export async function addFood(state: FormState, form: FormData): Promise<FormState> {
  const put = mended(state, form);
  if (put) return put;
  return parseThenAct(
    newFoodForm,
    state,
    form,
    async (sent) => {
      const at = new Date();
      const today = await dateIn(at);
      const packs = sent.pack ? [sent.pack] : [];
      const version = versionFromLabel(sent.label, sent.keepReason, { seq: 1, today }, packs);
      if (!version.ok) return version;
      const photo = await photoEdits(form, version.value.id);
      if (!photo.ok) return photo;
      const { foodId, edits } = newFoodEdits(sent, version.value, at);
      const pack = sent.pack ? await packEdits(foodId, sent.pack, today) : ok([]);
      if (!pack.ok) return pack;
      const all = [...edits, ...pack.value, ...(photo.value ?? [])];
      return changeAndShow(`/pantry/foods/${foodId}`, `Add ${sent.name}`, all, at);
    },
    fieldOf,
  );
}

export async function readLabelAgain(state: FormState, form: FormData): Promise<FormState> {
  const put = mended(state, form);
  if (put) return put;
  return parseThenAct(
    readAgainForm,
    state,
    form,
    async ({ foodId, label, keepReason }) => {
      const stored = await readStoredFood(foodId);
      if (!stored?.own) return GONE;
      const at = new Date();
      const { food, packs } = stored;
      const next = { seq: food.version.seq + 1, today: await dateIn(at) };
      const version = versionFromLabel(label, keepReason, next, packs);
      if (!version.ok) return version;
      const photo = await photoEdits(form, version.value.id);
      if (!photo.ok) return photo;
      const edits = [...readAgainEdits(food, version.value), ...(photo.value ?? [])];
      return changeAndShow(`/pantry/foods/${foodId}`, `Read ${food.name} again`, edits, at);
    },
    fieldOf,
  );
}

/** The label says the same as last time: a reading of today with the values of the last one. */
export async function keepSameLabel(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(sameLabelForm, state, form, async ({ foodId }) => {
    const stored = await readStoredFood(foodId);
    if (!stored?.own) return GONE;
    const at = new Date();
    const edits = sameLabelEdits(stored.food, await dateIn(at));
    return changeAndShow(
      `/pantry/foods/${foodId}`,
      `Read ${stored.food.name} again, the same as last time`,
      edits,
      at,
    );
  });
}

/** Takes back the reading in use, with all that came with it; the one before is in use again. */
export async function takeBackReading(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(takeBackForm, state, form, async ({ foodId, versionId }) => {
    const [stored, versions] = [await readStoredFood(foodId), await readFoodVersions(foodId)];
    const made = (await readChanges({ entityId: versionId })).find(({ before }) => before === null);
    const newest = versions[0]?.id === versionId && versions.length > 1;
    if (!stored?.own || !newest || !made) return GONE;
    const undone = await undo(made.groupId, { actor: DEFAULT_CREATOR_ID, at: new Date() });
    if (!undone.ok) return undone;
    revalidatePath('/', 'layout');
    return redirect(`/pantry/foods/${foodId}`);
  });
}

export async function saveFood(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(foodForm, state, form, ({ foodId, rev, ...patch }) =>
    change(`Change ${patch.name}`, [{ op: 'update', entity: 'Food', id: foodId, rev, patch }]),
  );
}

export async function removeFood(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeFoodForm, state, form, ({ foodId, rev }) =>
    changeAndShow('/pantry', 'Take a food out', [
      { op: 'remove', entity: 'Food', id: foodId, rev },
    ]),
  );
}

export async function addAllergen(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(allergenForm, state, form, async ({ foodId, ...fact }) => {
    const at = new Date();
    const position = await nextPlace('AllergenFact', foodId);
    const row = { id: uuid(), foodId, position, ...fact, reason: 'said in the pantry', at };
    return change('Add an allergen', [{ op: 'create', entity: 'AllergenFact', row }], at);
  });
}

export async function removeAllergen(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removePartForm, state, form, ({ partId, rev }) =>
    change('Take an allergen out', [{ op: 'remove', entity: 'AllergenFact', id: partId, rev }]),
  );
}
