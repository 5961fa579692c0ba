'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { failed } from '#lib/result';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { readFood, readStoredFood } from '#lib/store/read-foods';
import { write } from '#lib/store/write';
import { optionalId, revision, rowId } from '../_forms/fields';
import { parseThenAct } from '../_forms/parse-then-act';
import type { FormState } from '../_ui/form/form-state';

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
    const written = await write({
      actor: DEFAULT_CREATOR_ID,
      label: `Second witness of ${stored.food.name}`,
      at: new Date(),
      edits: [{ op: 'update', entity: 'Food', id: foodId, rev, patch: { witnessId } }],
    });
    if (!written.ok) return written;
    revalidatePath('/', 'layout');
    return redirect(`/pantry/foods/${foodId}#witness`);
  });
}
