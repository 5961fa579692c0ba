'use server';

import { failed, type Result } from '#lib/result';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { parseThenAct } from '../../../../_forms/parse-then-act';
import type { FormState } from '../../../../_ui/form/form-state';
import { act } from '../../../../act';
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

async function save(
  episodeId: string,
  wordsPerMinute: number | null,
  label: string,
): Promise<Result<string>> {
  const file = await readEpisodeFile(episodeId, new Date().toISOString());
  if (!file) {
    return failed({ path: '', code: 'gone', message: 'This episode is no longer there.' });
  }
  const { id } = file.creator;
  const rev = (await readRevisions(episodeId))[id];
  return act('/', label, [
    rev === undefined
      ? { op: 'create', entity: 'Creator', row: { id, name: '', wordsPerMinute } }
      : { op: 'update', entity: 'Creator', id, rev, patch: { wordsPerMinute } },
  ]);
}
