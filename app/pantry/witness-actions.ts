'use server';

import { z } from 'zod';
import { failed } from '#lib/result';
import { readFood, readStoredFood } from '#lib/store/read-foods';
import { optionalId, revision, rowId } from '../_forms/fields';
import { parseThenAct } from '../_forms/parse-then-act';
import type { FormState } from '../_ui/form/form-state';
import { changeAndShow } from './change';

const witnessForm = z.object({ foodId: rowId, rev: revision, witnessId: optionalId });

/** Names the reference food that a label is held against, or none. */
export async function nameWitness(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(witnessForm, state, form, async ({ foodId, rev, witnessId }) => {
    const stored = await readStoredFood(foodId);
    const witness = witnessId === null ? null : await readFood(witnessId);
    if (!stored?.own || (witnessId !== null && witness?.kind !== 'reference')) {
      const message = 'Choose a food of a published table, or open the page again.';
      return failed({ path: '', code: 'gone', message });
    }
    return changeAndShow(
      `/pantry/foods/${foodId}#witness`,
      `Second witness of ${stored.food.name}`,
      [{ op: 'update', entity: 'Food', id: foodId, rev, patch: { witnessId } }],
    );
  });
}
