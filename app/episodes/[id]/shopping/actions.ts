'use server';

import { revalidatePath } from 'next/cache';
import { failed, ok } from '#lib/result';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { sameLabelEdits } from '#lib/store/label-again';
import { readStoredFood } from '#lib/store/read-foods';
import { readKitchen } from '#lib/store/read-kitchen';
import { write } from '#lib/store/write';
import { localDate } from '#lib/units/local-date';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { sameLabelForm } from './schema';

const GONE = failed({
  path: '',
  code: 'gone',
  message: 'This food is no longer there: open the page again.',
});

/** The label says the same as last time: a reading of today with the values of the last one, and the list stays. */
export async function keepSameLabelHere(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(sameLabelForm, state, form, async ({ foodId }) => {
    const stored = await readStoredFood(foodId);
    if (!stored?.own) return GONE;
    const at = new Date();
    const kitchen = await readKitchen();
    const today = localDate(at, kitchen?.kitchen.zone ?? 'UTC');
    if (stored.food.version.dateRead === today) return ok('Read today already.');
    const label = `Read ${stored.food.name} again, the same as last time`;
    const edits = sameLabelEdits(stored.food, today);
    const written = await write({ actor: DEFAULT_CREATOR_ID, label, at, edits });
    if (!written.ok) return written;
    revalidatePath('/', 'layout');
    return ok(`${label}: done.`);
  });
}
