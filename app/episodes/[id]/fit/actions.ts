'use server';

import { redirect } from 'next/navigation';
import { dishesOf } from '#lib/episode/context';
import { failed } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { lineColumns } from '#lib/store/episode-columns';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readRevisedEpisode } from '#lib/store/read-revised-episode';
import { removalEdits } from '#lib/store/remove-rows';
import { recipeAtFit } from '#lib/swap/recipe-at-fit';
import { amountsText } from '#lib/swap/told-fit';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { change } from '../change';
import { fitHref } from './fit-text';
import { namedFaults } from './named-faults';
import { applyFitForm, fitForm } from './schema';

/** Looks for amounts that meet what is asked; the page shows what was found. */
export async function lookForFit(state: FormState, form: FormData): Promise<FormState> {
  const refused = await parseThenAct(fitForm, state, form, ({ episodeId, segmentId, asked }) =>
    redirect(fitHref(episodeId, segmentId, asked)),
  );
  const { episodeId = '', segmentId = '' } = refused.typed;
  const file = await readEpisodeFile(episodeId, new Date().toISOString());
  return file ? { ...refused, problems: namedFaults(file, segmentId, refused.problems) } : refused;
}

const gone = (message: string) => failed({ path: '', code: 'gone', message });

/** Puts the amounts that were found into the recipe, as one act. */
export async function applyFit(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(applyFitForm, state, form, async ({ episodeId, segmentId, steps, was }) => {
    const read = await readRevisedEpisode(episodeId, new Date().toISOString());
    const dish = read && dishesOf(read.file.episode.segments).find(({ id }) => id === segmentId);
    if (!read || !dish) return gone('This dish is no longer there.');
    const { file, revs } = read;
    if (amountsText(file, segmentId) !== was) {
      return gone('The dish was changed since these amounts were looked for: look for them again.');
    }
    const fitted = recipeAtFit(file, segmentId, steps);
    if (!fitted.ok) return fitted;
    if (fitted.value.lines.length === 0) return gone('There is nothing to change.');
    const removed = await Promise.all(
      fitted.value.readings.map((id) => removalEdits('Weighing', id, revs[id] ?? 0)),
    );
    const changed = fitted.value.lines.map((line): Edit => ({
      ...{ op: 'update', entity: 'RecipeLine', id: line.id, rev: revs[line.id] ?? 0 },
      patch: lineColumns(line),
    }));
    const taken = new Map(removed.flat().map((edit) => [idOf(edit), edit]));
    const edits = [...taken.values(), ...changed];
    const done = await change(episodeId, `Fit the amounts of ${dish.title}`, edits);
    if (!done.ok) return done;
    redirect(`/episodes/${episodeId}#row-${segmentId}`);
  });
}

/** A row is edited once in an act, whichever readings it went with. */
const idOf = (edit: Edit): string => (edit.op === 'create' ? edit.row.id : edit.id);
