'use server';

import { redirect } from 'next/navigation';
import { v7 as uuid } from 'uuid';
import { countOf, ticked } from '#lib/draft/offer';
import { failed, ok } from '#lib/result';
import { draftEdits } from '#lib/store/draft-edits';
import type { Edit } from '#lib/store/command';
import { nextPlace } from '#lib/store/next-place';
import { readRevisedEpisode } from '#lib/store/read-revised-episode';
import { parseThenAct, typedTexts } from '../../../../_forms/parse-then-act';
import type { FormState } from '../../../../_ui/form/form-state';
import { change } from '../../change';
import { GONE, NOTHING_TICKED } from '../refusals';
import { readRecipe, type ReadRecipe } from './read-recipe';
import { recipeForm } from './schema';

const CHANGED = failed({
  path: '',
  code: 'changed',
  message:
    'What was pasted or what the dishes have is another than what was shown: it is read again, look at it and add it then.',
});

/** Reads a recipe's data and offers what is in it; adds what is ticked once the other button is pressed. */
export async function pasteRecipe(state: FormState, form: FormData): Promise<FormState> {
  const adding = form.get('act') === 'add';
  const shown: { offer: string | null } = { offer: null };
  const next = await parseThenAct(recipeForm, state, form, async (typed) => {
    const { episodeId } = typed;
    const into = await readRevisedEpisode(episodeId, new Date().toISOString(), { edit: true });
    if (!into) return GONE;
    const { file, revs } = into;
    const read = readRecipe(file, typed.text);
    if (!read.ok) return read;
    shown.offer = JSON.stringify(read.value.view);
    if (!adding) return ok('Read. Nothing is added before you say so.');
    if (typed.version !== read.value.view.version) return CHANGED;
    const isTicked = (key: string) => typed[key] === 'on';
    const chosen = ticked(read.value.offer, isTicked);
    const claims = read.value.claims.filter(({ key }) => isTicked(key));
    const count = countOf(chosen) + claims.length;
    if (count === 0) return NOTHING_TICKED;
    const { rate, segments } = file.episode;
    const edits = [
      ...(await draftEdits(chosen, { episodeId, rate, segments, revs, fresh: false })),
      ...(await textEdits(episodeId, claims)),
    ];
    const what = count === 1 ? 'one thing' : `${count} things`;
    const done = await change(episodeId, `Add ${what} from a recipe’s data`, edits);
    if (!done.ok) return done;
    redirect(`/episodes/${episodeId}`);
  });
  return { ...next, round: state.round, typed: keptOf(next, form, shown.offer) };
}

/** What was typed, with what is offered; what is first read is ticked as it is offered. */
function keptOf(next: FormState, form: FormData, offer: string | null): Record<string, string> {
  const typed = { ...typedTexts(form), ...next.typed };
  return offer === null ? { ...typed, offer: '' } : { ...typed, offer };
}

/** The numbers that a recipe states, as texts in which they are judged. */
async function textEdits(episodeId: string, claims: ReadRecipe['claims']): Promise<Edit[]> {
  const first = await nextPlace('EditText', episodeId);
  return claims.map(({ title, text }, at) => ({
    op: 'create',
    entity: 'EditText',
    row: {
      id: uuid(),
      episodeId,
      position: first + at,
      kind: 'card',
      name: `Recipe data: ${title}`.slice(0, 120),
      text,
    },
  }));
}
