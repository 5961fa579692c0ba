'use server';

import { parseThenAct } from '../../../../_forms/parse-then-act';
import type { FormState } from '../../../../_ui/form/form-state';
import { changeCreator } from '../../change-creator';
import { speakingForm, forgetForm } from './schema';

/** How many words a minute the person says; every episode is reckoned by it. */
export async function keepSpeakingRate(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(speakingForm, state, form, ({ episodeId, perMinute }) =>
    save(episodeId, perMinute, `Speak ${perMinute} words a minute`),
  );
}

export async function forgetSpeakingRate(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(forgetForm, state, form, ({ episodeId }) =>
    save(episodeId, null, 'Reckon with the usual speaking rate'),
  );
}

const save = (episodeId: string, wordsPerMinute: number | null, label: string) =>
  changeCreator(episodeId, label, () => ({ wordsPerMinute }));
