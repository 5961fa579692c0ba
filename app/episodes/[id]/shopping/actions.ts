'use server';

import { failed, ok } from '#lib/result';
import { sameLabelEdits } from '#lib/store/label-again';
import { readStoredFood } from '#lib/store/read-foods';
import { act } from '../../../act';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { dateIn } from '../../../date-in';
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
    const today = await dateIn(at);
    if (stored.food.version.dateRead === today) return ok('Read today already.');
    const label = `Read ${stored.food.name} again, the same as last time`;
    const edits = sameLabelEdits(stored.food, today);
    return act('/', label, edits, at);
  });
}
