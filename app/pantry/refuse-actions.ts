'use server';

import { v7 as uuid } from 'uuid';
import { failed, ok } from '#lib/result';
import { readStoredFood } from '#lib/store/read-foods';
import { parseThenAct } from '../_forms/parse-then-act';
import type { FormState } from '../_ui/form/form-state';
import { change } from './change';
import { readAgainEdits } from './edits';
import { refuseForm } from './refuse-schema';

/** Says what of an own food is bought and not eaten. A reading is never changed: a further one has the same values. */
export async function saveRefuse(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(refuseForm, state, form, async ({ foodId, versionId, refuse }) => {
    const stored = await readStoredFood(foodId);
    if (!stored?.own || stored.food.version.id !== versionId) return CHANGED;
    const { food } = stored;
    const version = { ...food.version, id: uuid(), seq: food.version.seq + 1, refuse };
    const done = await change(`Say peel and trim of ${food.name}`, readAgainEdits(food, version));
    return done.ok ? ok('Peel and trim: saved.') : done;
  });
}

const CHANGED = failed({
  path: '',
  code: 'conflict',
  message:
    'Its label was read again since you opened this, and nothing was written: open the page again.',
});
