'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { v7 as uuid } from 'uuid';
import { failed, ok, type Result } from '#lib/result';
import { moveDelta, MOVE_WORDS } from '#lib/shopping/stock-move';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { nextPlace } from '#lib/store/next-place';
import { readChanges } from '#lib/store/read-changes';
import { readFoodVersions, readStoredFood } from '#lib/store/read-foods';
import { readKitchen } from '#lib/store/read-kitchen';
import { readLot } from '#lib/store/read-lot';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { localDate } from '#lib/units/local-date';
import { fieldOfColumn, parseThenAct, typedTexts } from '../_forms/parse-then-act';
import type { FormState } from '../_ui/form/form-state';
import { newFoodEdits, packEdits, readAgainEdits, sameLabelEdits, versionFromLabel } from './edits';
import { labelField, MEND, readMend } from './field-names';
import { photoEdits } from './foods/[foodId]/photo/sent-photo';
import {
  allergenForm,
  foodForm,
  lotForm,
  moveForm,
  newFoodForm,
  newLotForm,
  packForm,
  readAgainForm,
  removeFoodForm,
  removeLotForm,
  removePartForm,
  sameLabelForm,
  takeBackForm,
} from './schema';

const GONE = failed({
  path: '',
  code: 'gone',
  message: 'This is no longer there: open the page again.',
});

/** One act on the pantry; foods stand in every episode, so all pages are read anew. */
async function change(
  label: string,
  edits: readonly Edit[],
  at = new Date(),
): Promise<Result<string>> {
  const written = await write({ actor: DEFAULT_CREATOR_ID, label, at, edits });
  if (!written.ok) return written;
  revalidatePath('/', 'layout');
  return ok(`${label}: done.`);
}

async function changeAndShow(
  path: string,
  label: string,
  edits: readonly Edit[],
  at = new Date(),
): Promise<Result<string>> {
  const done = await change(label, edits, at);
  if (done.ok) redirect(path);
  return done;
}

/** The date in the person's kitchen. */
async function dateIn(at: Date): Promise<string> {
  const stored = await readKitchen();
  return localDate(at, stored?.kitchen.zone ?? 'UTC');
}

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
      const { foodId, edits } = newFoodEdits(sent, version.value, at, today);
      const all = [...edits, ...(photo.value ?? [])];
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

export async function addPack(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(packForm, state, form, async ({ foodId, pack }) =>
    change(`Add the pack ${pack.name}`, packEdits(foodId, pack, await dateIn(new Date()))),
  );
}

export async function removePack(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removePartForm, state, form, ({ partId, rev }) =>
    change('Take a pack out', [{ op: 'remove', entity: 'Pack', id: partId, rev }]),
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

export async function addLot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(newLotForm, state, form, ({ grams, ...lot }) => {
    const at = new Date();
    const lotId = uuid();
    const move = { kind: 'bought' as const, deltaMg: grams, at, eventId: null };
    return changeAndShow(
      `/pantry#row-${lotId}`,
      'Put into stock',
      [
        { op: 'create', entity: 'StockLot', row: { id: lotId, ...lot } },
        { op: 'create', entity: 'StockMove', row: { id: uuid(), lotId, ...move } },
      ],
      at,
    );
  });
}

export async function saveLot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(lotForm, state, form, ({ lotId, rev, ...patch }) =>
    changeAndShow(`/pantry#row-${lotId}`, 'Change where it stands', [
      { op: 'update', entity: 'StockLot', id: lotId, rev, patch },
    ]),
  );
}

export async function moveStock(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(moveForm, state, form, async ({ lotId, kind, grams }) => {
    const lot = await readLot(lotId);
    if (!lot) return GONE;
    const delta = moveDelta(lot, kind, grams);
    if (!delta.ok) return delta;
    const at = new Date();
    const row = { id: uuid(), lotId, kind, deltaMg: delta.value, at, eventId: null };
    return changeAndShow(
      `/pantry#row-${lotId}`,
      `Stock ${MOVE_WORDS[kind]}`,
      [{ op: 'create', entity: 'StockMove', row }],
      at,
    );
  });
}

export async function removeLot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeLotForm, state, form, ({ lotId, rev }) =>
    changeAndShow('/pantry', 'Take a lot off the list', [
      { op: 'remove', entity: 'StockLot', id: lotId, rev },
    ]),
  );
}
