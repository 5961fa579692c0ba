'use server';

import { parseThenAct } from '../../_forms/parse-then-act';
import type { FormState } from '../../_ui/form/form-state';
import { change } from './change';
import { cookingForm, noCookingForm } from './cooking-schema';

/** The form's field for a column that the store refuses. */
const FIELDS: Readonly<Record<string, string>> = {
  moisturePermille: 'moisture',
  fatPermille: 'fat',
  cookingSpreadPermille: 'spread',
  cookingSource: 'source',
};

/** Says what cooking does to the weight of a dish, and who says so. */
export async function saveCooking(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    cookingForm,
    state,
    form,
    ({ episodeId, recipeId, rev, moisture, fat, spread, source }) => {
      const patch = {
        moisturePermille: moisture,
        fatPermille: fat,
        cookingSpreadPermille: spread,
        cookingSource: source,
      };
      return change(episodeId, 'Say what cooking does to the weight', [
        { op: 'update', entity: 'Recipe', id: recipeId, rev, patch },
      ]);
    },
    (path) => {
      const column = /\w+$/.exec(path)?.[0] ?? '';
      return FIELDS[column] ?? '';
    },
  );
}

/** Takes the change of weight out again. */
export async function removeCooking(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(noCookingForm, state, form, ({ episodeId, recipeId, rev }) => {
    const patch = {
      moisturePermille: null,
      fatPermille: null,
      cookingSpreadPermille: null,
      cookingSource: null,
    };
    return change(episodeId, 'Take the change of weight out', [
      { op: 'update', entity: 'Recipe', id: recipeId, rev, patch },
    ]);
  });
}
