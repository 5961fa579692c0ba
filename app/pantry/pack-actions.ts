'use server';

import { parseThenAct } from '../_forms/parse-then-act';
import type { FormState } from '../_ui/form/form-state';
import { dateIn } from '../date-in';
import { change } from './change';
import { packEdits, priceEdits } from './pack-edits';
import { packForm, priceForm, removePartForm } from './pack-schema';

export async function addPack(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(packForm, state, form, async ({ foodId, pack }) => {
    const edits = await packEdits(foodId, pack, await dateIn(new Date()));
    return edits.ok ? change(`Add the pack ${pack.name}`, edits.value) : edits;
  });
}

export async function removePack(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removePartForm, state, form, ({ partId, rev }) =>
    change('Take a pack out', [{ op: 'remove', entity: 'Pack', id: partId, rev }]),
  );
}

/** One more price of a pack; those before stay, with their dates. */
export async function addPrice(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(priceForm, state, form, async ({ packId, price }) => {
    const edits = await priceEdits(packId, price, await dateIn(new Date()));
    return edits.ok ? change('Note a price', edits.value) : edits;
  });
}

export async function removePrice(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removePartForm, state, form, ({ partId, rev }) =>
    change('Take a price out', [{ op: 'remove', entity: 'Price', id: partId, rev }]),
  );
}
