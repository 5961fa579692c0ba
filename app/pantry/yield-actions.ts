'use server';

import { typedHalfMg } from '#lib/episode/cook-weights';
import { failed } from '#lib/result';
import { DEFAULT_KITCHEN } from '#lib/store/default-kitchen';
import { nextPlace } from '#lib/store/next-place';
import { readStoredFood } from '#lib/store/read-foods';
import { readKitchen } from '#lib/store/read-kitchen';
import { parseThenAct } from '../_forms/parse-then-act';
import type { FormState } from '../_ui/form/form-state';
import { change } from './change';
import { removePartForm } from './pack-schema';
import { ownYieldEdits } from './yield-edits';
import { yieldForm } from './yield-schema';

/** A person's own raw and cooked weight of a food, typed in the pantry. */
export async function addYield(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(yieldForm, state, form, async (sent) => {
    const { foodId, raw, cooked, method, on, sure } = sent;
    const stored = await readStoredFood(foodId);
    if (!stored) return GONE;
    const at = on === null ? new Date() : new Date(`${on}T12:00:00.000Z`);
    if (at.getTime() > Date.now() + DAY_MS) {
      return failed({ path: 'on', code: 'later', message: 'This day is still to come.' });
    }
    const kitchen = (await readKitchen())?.kitchen ?? DEFAULT_KITCHEN;
    const halfMg = typedHalfMg(kitchen);
    const weights = { method, rawMg: raw, cookedMg: cooked, halfMg, lineId: null, at };
    const position = await nextPlace('YieldObservation', foodId);
    const edits = ownYieldEdits(stored.food, weights, position, sure);
    return edits.ok ? change('Keep a cooked weight', edits.value) : edits;
  });
}

export async function removeYield(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removePartForm, state, form, ({ partId, rev }) =>
    change('Take a cooked weight out', [
      { op: 'remove', entity: 'YieldObservation', id: partId, rev },
    ]),
  );
}

const DAY_MS = 86_400_000;

const GONE = failed({
  path: '',
  code: 'gone',
  message: 'This food is no longer there: open the page again.',
});
