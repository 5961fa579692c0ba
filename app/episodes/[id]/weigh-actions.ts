'use server';

import { v7 as uuid } from 'uuid';
import { failed, type Result } from '#lib/result';
import type { Recipe } from '#lib/episode/schema';
import type { Edit } from '#lib/store/command';
import { DEFAULT_KITCHEN } from '#lib/store/default-kitchen';
import { kitchenEdits } from '#lib/store/import-kitchen';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readKitchen } from '#lib/store/read-kitchen';
import { parseThenAct } from '../../_forms/parse-then-act';
import type { FormState } from '../../_ui/form/form-state';
import { change, changeAndClose, takeOut } from './change';
import { readingColumns } from './edits';
import { removeForm, weighDishForm, weighLineForm } from './schema';

/** Writes one more reading of an ingredient; those before it stay as they are. */
export async function weighLine(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(weighLineForm, state, form, async ({ episodeId, lineId, ...reading }) => {
    const at = new Date();
    const recipes = await recipesOf(episodeId, at);
    const recipe = recipes.find(({ lines }) => lines.some((line) => line.id === lineId));
    const line = recipe?.lines.find((each) => each.id === lineId);
    if (!recipe || !line) return gone('This ingredient');
    const id = uuid();
    const columns = readingColumns('raw', reading, at);
    return changeAndClose(episodeId, lineId, `Weigh ${line.text}`, [
      ...(await kitchenFirst()),
      { op: 'create', entity: 'Weighing', row: { id, recipeId: recipe.id, ...columns } },
      {
        op: 'create',
        entity: 'WeighingShare',
        row: { id: uuid(), weighingId: id, lineId, position: 0, num: 1, den: 1 },
      },
    ]);
  });
}

/** Writes one more reading of the finished dish. */
export async function weighDish(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(weighDishForm, state, form, async ({ episodeId, recipeId, ...reading }) => {
    const at = new Date();
    const recipe = (await recipesOf(episodeId, at)).find((each) => each.id === recipeId);
    if (!recipe) return gone('This dish');
    const columns = readingColumns('finished', reading, at);
    return change(episodeId, 'Weigh the finished dish', [
      ...(await kitchenFirst()),
      { op: 'create', entity: 'Weighing', row: { id: uuid(), recipeId, ...columns } },
    ]);
  });
}

/** Strikes a reading out; it can be taken back in. */
export async function removeReading(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeForm('weighingId'), state, form, ({ episodeId, id, rev }) =>
    takeOut(episodeId, 'Take a reading back', { op: 'remove', entity: 'Weighing', id, rev }),
  );
}

async function recipesOf(episodeId: string, at: Date): Promise<readonly Recipe[]> {
  const file = await readEpisodeFile(episodeId, at.toISOString());
  return (file?.episode.segments ?? []).flatMap(({ recipe }) => recipe ?? []);
}

/** The scale of the kitchen that was taken for granted must be there before something is weighed on it. */
async function kitchenFirst(): Promise<readonly Edit[]> {
  return (await readKitchen()) ? [] : kitchenEdits(DEFAULT_KITCHEN);
}

function gone(what: string): Result<never> {
  const message = `${what} is no longer there: it was removed. Nothing was written.`;
  return failed({ path: '', code: 'gone', message });
}
