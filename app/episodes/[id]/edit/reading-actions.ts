'use server';

import { v7 as uuid } from 'uuid';
import { mendFor } from '#lib/claims/mend-readings';
import { saidPlaces } from '#lib/claims/said-places';
import { oneLine } from '#lib/claims/sentence-around';
import type { Mend } from '#lib/episode/edit-schema';
import { failed, type Result } from '#lib/result';
import { mendColumns } from '#lib/store/episode-columns';
import { readEpisodeFile } from '#lib/store/read-episode';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { change } from '../change';
import { aboutForm, askAgainForm, heardForm, namedForm, nothingForm, takeBackForm } from './schema';

interface Place {
  readonly episodeId: string;
  readonly textId: string;
  readonly start: number;
  readonly end: number;
  readonly words: string;
}

/** The words say nothing of the numbers. */
export async function saysNothing(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(nothingForm, state, form, (place) =>
    putRight(place, { kind: 'nothing' }, 'Put a statement aside'),
  );
}

/** What was really said in the place of the words. */
export async function wasHeard(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(heardForm, state, form, ({ heard, ...place }) =>
    putRight(place, { kind: 'heard', text: heard }, 'Say what was really said'),
  );
}

/** What the number is about. */
export async function isAbout(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(aboutForm, state, form, ({ about, ...place }) =>
    putRight(place, { kind: 'about', ...about }, 'Say what a number is about'),
  );
}

/** Reads the words again as the grammar does. */
export async function takeReadingBack(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(takeBackForm, state, form, ({ episodeId, mendId, rev }) =>
    change(episodeId, 'Take back how words are read', [
      { op: 'remove', entity: 'ReadingMend', id: mendId, rev },
    ]),
  );
}

/** Keeps a reading by its words and those beside them, as they stand in the text now. */
async function putRight(where: Place, mend: Mend, label: string): Promise<Result<string>> {
  const { episodeId, textId, start, end, words } = where;
  const file = await readEpisodeFile(episodeId, new Date().toISOString(), { edit: true });
  const text = file && saidPlaces(file).find(({ said }) => said.id === textId);
  if (!text || oneLine(text.text.slice(start, end)) !== oneLine(words)) {
    const message =
      'The text was changed since this page was opened, so nothing was kept: open it again.';
    return failed({ path: '', code: 'changed', message });
  }
  const { mend: kept, ...place } = mendFor(uuid(), text, start, end, mend);
  const row = { ...place, episodeId, ...mendColumns(kept) };
  return change(episodeId, label, [{ op: 'create', entity: 'ReadingMend', row }]);
}

/** What a food is that was named and is in no ingredient. */
export async function answerNamed(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(namedForm, state, form, ({ episodeId, food, answer, namedId, rev }) => {
    const label = answer === 'leftOff' ? `${food}: left off the plate` : `${food}: truly none`;
    return change(episodeId, label, [
      namedId === null
        ? { op: 'create', entity: 'NamedFood', row: { id: uuid(), episodeId, food, answer } }
        : { op: 'update', entity: 'NamedFood', id: namedId, rev, patch: { answer } },
    ]);
  });
}

export async function askNamedAgain(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(askAgainForm, state, form, ({ episodeId, namedId, rev }) =>
    change(episodeId, 'Ask again about a food', [
      { op: 'remove', entity: 'NamedFood', id: namedId, rev },
    ]),
  );
}
