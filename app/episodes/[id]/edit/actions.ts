'use server';

import { v7 as uuid } from 'uuid';
import { textStanding } from '#lib/overview/text-standing';
import type { TextKind } from '#lib/episode/edit-schema';
import { ok } from '#lib/result';
import { nextPlace, placeOf } from '#lib/store/next-place';
import { readEpisodeFile } from '#lib/store/read-episode';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { change } from '../change';
import { GONE } from './refusals';
import { newerTextForm, removeTextForm, textForm } from './schema';
import { takeText } from './take-text';

const NAMES: Readonly<Record<TextKind, string>> = {
  captions: 'Captions',
  description: 'Description',
  title: 'Title',
  thumbnail: 'Thumbnail',
  card: 'Card',
};

/** Takes a text of the edit in: what was pasted, or a file. */
export async function bringInText(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(textForm, state, form, async ({ episodeId, kind, name, text: pasted }) => {
    const taken = await takeText(form, pasted);
    if (!taken.ok) return taken;
    const file = await readEpisodeFile(episodeId, new Date().toISOString(), { edit: true });
    if (!file) return GONE;
    const there = file.edit?.texts ?? [];
    const { text, told } = taken.value;
    const alike = there.filter((each) => each.kind === kind).length;
    const called = (name || taken.value.name || numbered(NAMES[kind], alike)).slice(0, 120);
    const row = { id: uuid(), episodeId, position: await nextPlace('EditText', episodeId), kind };
    const done = await change(episodeId, `Bring in ${called}`, [
      { op: 'create', entity: 'EditText', row: { ...row, name: oneLine(called), text } },
    ]);
    return done.ok ? ok(`${called} is in: ${textStanding({ kind, text }).words}.${told}`) : done;
  });
}

/** Puts a newer text in the place of one; readings that were put right hold on to their words. */
export async function bringInNewer(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(newerTextForm, state, form, async ({ episodeId, textId, rev, text }) => {
    const taken = await takeText(form, text);
    if (!taken.ok) return taken;
    const file = await readEpisodeFile(episodeId, new Date().toISOString(), { edit: true });
    const texts = file?.edit?.texts ?? [];
    const before = texts.find(({ id }) => id === textId);
    if (!before) return GONE;
    const { kind } = before;
    const name = oneLine(taken.value.name || before.name).slice(0, 120);
    const position = (await placeOf('EditText', textId)) ?? 0;
    const row = { id: uuid(), episodeId, position, kind, name, text: taken.value.text };
    const done = await change(episodeId, `Newer text for ${before.name}`, [
      { op: 'remove', entity: 'EditText', id: textId, rev },
      { op: 'create', entity: 'EditText', row },
    ]);
    const { words } = textStanding(row);
    return done.ok ? ok(`${name} is in instead: ${words}.${taken.value.told}`) : done;
  });
}

export async function removeText(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeTextForm, state, form, ({ episodeId, textId, rev }) =>
    change(episodeId, 'Take a text out', [{ op: 'remove', entity: 'EditText', id: textId, rev }]),
  );
}

const oneLine = (text: string): string => text.replace(/[\r\n\u2028\u2029]+/g, ' ');

/** 'Title' for the first, 'Title 2' for the next. */
function numbered(name: string, there: number): string {
  return there === 0 ? name : `${name} ${there + 1}`;
}
