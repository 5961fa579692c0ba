'use server';

import { parseThenAct } from '../../_forms/parse-then-act';
import type { FormState } from '../../_ui/form/form-state';
import { change } from './change';
import { writtenStepForm } from './written-step-schema';

/** What calories are rounded to in everything that is written and copied. */
export async function writeCaloriesTo(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(writtenStepForm, state, form, ({ episodeId, rev, energyStep }) =>
    change(episodeId, `Write calories to ${energyStep} kcal`, [
      { op: 'update', entity: 'Episode', id: episodeId, rev, patch: { energyStep } },
    ]),
  );
}
