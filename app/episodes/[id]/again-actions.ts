'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { failed, ok } from '#lib/result';
import { copySegment } from '#lib/store/copy-again';
import { sameLabelEdits } from '#lib/store/label-again';
import { readStoredFood } from '#lib/store/read-foods';
import { dateIn } from '../../date-in';
import { parseThenAct } from '../../_forms/parse-then-act';
import type { FormState } from '../../_ui/form/form-state';
import { copySegmentForm, sameLabelForm } from './again-schema';
import { change } from './change';

/** Adds a dish of any episode to the end of this one, and leads to it. */
export async function addAgain(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(copySegmentForm, state, form, async ({ episodeId, segmentId, amounts }) => {
    const copied = await copySegment(segmentId, episodeId, { amounts, at: new Date() });
    if (!copied.ok) return copied;
    const { id } = copied.value;
    revalidatePath(`/episodes/${episodeId}`, 'layout');
    redirect(`/episodes/${episodeId}?copied=${id}#row-${id}`);
  });
}

/** Adds a reading of today to labels that say what they said last time. One read today already is left. */
export async function sameLabel(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(sameLabelForm, state, form, async ({ episodeId, foodIds }) => {
    const at = new Date();
    const today = await dateIn(at);
    const stored = await Promise.all(foodIds.map((id) => readStoredFood(id)));
    const foods = stored.flatMap((each) => (each?.own ? [each.food] : []));
    if (foods.length < foodIds.length) {
      const message = 'A food here is no longer there: open the page again.';
      return failed({ path: '', code: 'gone', message });
    }
    const unread = foods.filter(({ version }) => version.dateRead !== today);
    const [first] = unread;
    if (!first) return ok('Read today already.');
    const what = unread.length === 1 ? first.name : `${unread.length} foods`;
    const edits = unread.flatMap((food) => sameLabelEdits(food, today));
    const done = await change(episodeId, `Same label: ${what}`, edits, at);
    // Foods stand in every episode and in the pantry.
    if (done.ok) revalidatePath('/', 'layout');
    return done;
  });
}
