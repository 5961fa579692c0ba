'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { v7 as uuid } from 'uuid';
import { readDraft } from '#lib/draft/read-draft';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { outEpisodeEdits, outTitle } from '#lib/store/out-episode';
import { lastRegion } from '#lib/store/short-episode';
import { write } from '#lib/store/write';
import { parseThenAct } from './_forms/parse-then-act';
import type { FormState } from './_ui/form/form-state';
import { chosenFile, takeText, type TakenText } from './episodes/[id]/edit/take-text';
import { outForm } from './out-schema';

const NONE: TakenText = { text: '', name: '', told: '' };

/**
 * Makes an episode of the captions, the description and the title of one that is out, and shows what is said in it.
 * Where that is refused, a chosen file's words stand in the form beside what was typed.
 */
export async function beginFromTexts(state: FormState, form: FormData): Promise<FormState> {
  let read: TakenText = NONE;
  const next = await parseThenAct(
    outForm,
    state,
    form,
    async ({ title, captions, description }) => {
      const taken = await captionsOf(form, captions);
      if (!taken.ok) return taken;
      read = taken.value;
      const draft = readDraft({ title, captions: read.text, description });
      if (!draft.ok) return draft;
      const episodeId = uuid();
      const name = (text: string) => text.replace(/[\r\n\u2028\u2029]+/g, ' ').slice(0, 120);
      const texts = [
        { kind: 'captions' as const, name: name(read.name || 'Captions'), text: read.text },
        { kind: 'description' as const, name: 'Description', text: description },
        { kind: 'title' as const, name: 'Title', text: title },
      ].filter(({ text }) => text.trim() !== '');
      const region = await lastRegion();
      const written = await write({
        actor: DEFAULT_CREATOR_ID,
        label: `Begin ${outTitle(draft.value)} from its texts`,
        at: new Date(),
        edits: await outEpisodeEdits({ episodeId, region, draft: draft.value, texts }),
      });
      if (!written.ok) return written;
      revalidatePath('/');
      const { length } = draft.value.left;
      redirect(`/episodes/${episodeId}/edit?made=${length}`);
    },
  );
  const { text } = read;
  return text === '' ? next : { ...next, typed: { ...next.typed, captions: text } };
}

/** The words of the chosen file or of the field; none where neither has any. */
async function captionsOf(form: FormData, typed: string): Promise<Result<TakenText>> {
  if (chosenFile(form) === null && typed.trim() === '') return ok(NONE);
  const taken = await takeText(form, typed);
  if (taken.ok) return taken;
  const [first, ...rest] = taken.problems.map((problem): Problem => ({
    ...problem,
    path: problem.path === 'text' ? 'captions' : problem.path,
  }));
  return first ? failed(first, ...rest) : taken;
}
