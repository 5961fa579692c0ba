'use server';

import { redirect } from 'next/navigation';
import { failed, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { readFoodVersions, readStoredFood } from '#lib/store/read-foods';
import { parseThenAct } from '../../../../_forms/parse-then-act';
import type { FormState } from '../../../../_ui/form/form-state';
import { changeAndShow } from '../../../change';
import { photoForm, putBackForm, takeOutForm } from './schema';
import { photoEdits } from './sent-photo';

const refused = (code: string, message: string) => failed({ path: 'photo', code, message });

/** One act on a food's photos, and the way back to them. */
async function change(
  path: string,
  label: string,
  edits: readonly Edit[],
): Promise<Result<string>> {
  // A photo that is attached already is shown, and nothing is written.
  return edits.length > 0
    ? changeAndShow(`${path}#photos`, label, edits)
    : redirect(`${path}#photos`);
}

/** Attaches a photo to a reading of a label, once its bytes are known to be one. */
export async function attachPhoto(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(photoForm, state, form, async ({ foodId, versionId }) => {
    const [stored, versions] = [await readStoredFood(foodId), await readFoodVersions(foodId)];
    const version = versions.find(({ id }) => id === versionId);
    if (!stored?.own || stored.food.kind !== 'label' || !version) {
      return refused('gone', 'This reading is no longer there: open the page again.');
    }
    const edits = await photoEdits(form, versionId);
    if (!edits.ok) return edits;
    if (edits.value === null) return refused('no-file', 'Choose a photo.');
    const label = `Attach a photo to reading ${version.seq} of ${stored.food.name}`;
    return change(`/pantry/foods/${foodId}`, label, edits.value);
  });
}

/** Takes a photo out of a food's page, which then offers to put it back. */
export async function takeOutPhoto(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(takeOutForm, state, form, ({ foodId, photoId, rev }) => {
    const path = `/pantry/foods/${foodId}?out=${encodeURIComponent(photoId)}`;
    const edit = { op: 'remove', entity: 'Attachment', id: photoId, rev } as const;
    return change(path, 'Take a photo of a label out', [edit]);
  });
}

export async function putBackPhoto(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(putBackForm, state, form, ({ foodId, photoId }) => {
    const edit = { op: 'bringBack', entity: 'Attachment', id: photoId } as const;
    return change(`/pantry/foods/${foodId}`, 'Put a photo of a label back', [edit]);
  });
}
