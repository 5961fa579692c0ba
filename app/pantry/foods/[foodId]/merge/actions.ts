'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { mergeEdits, readMerge } from '#lib/store/merge-foods';
import { undo } from '#lib/store/undo';
import { parseThenAct } from '../../../../_forms/parse-then-act';
import type { FormState } from '../../../../_ui/form/form-state';
import { changeAndShow } from '../../../change';
import { mergeForm, takeApartForm } from './schema';

/** Makes a food part of another: one act, which one undo takes back. */
export async function mergeFoods(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(mergeForm, state, form, async (sent) => {
    const merge = await readMerge(sent.from, sent.into);
    if (!merge.ok) return merge;
    const { from, into } = merge.value;
    return changeAndShow(
      `/pantry/foods/${into.id}`,
      `Make ${from.food.name} part of ${into.food.name}`,
      mergeEdits(merge.value),
    );
  });
}

/** Takes two foods apart again, with all that had moved. */
export async function takeApart(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(takeApartForm, state, form, async ({ foodId, groupId }) => {
    const undone = await undo(groupId, { actor: DEFAULT_CREATOR_ID, at: new Date() });
    if (!undone.ok) return undone;
    revalidatePath('/', 'layout');
    return redirect(`/pantry/foods/${foodId}`);
  });
}
