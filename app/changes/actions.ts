'use server';

import { revalidatePath } from 'next/cache';
import { ok } from '#lib/result';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { undo } from '#lib/store/undo';
import { parseThenAct } from '../_forms/parse-then-act';
import type { FormState } from '../_ui/form/form-state';
import { takeBackAnyForm } from './schema';

/** Undoes any act of the journal, whatever page it was done on. */
export async function takeBackAny(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(takeBackAnyForm, state, form, async ({ groupId }) => {
    const undone = await undo(groupId, { actor: DEFAULT_CREATOR_ID, at: new Date() });
    if (!undone.ok) return undone;
    revalidatePath('/', 'layout');
    return ok('Undone.');
  });
}
