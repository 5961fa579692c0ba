'use server';

import { v7 as uuid } from 'uuid';
import { ownRecipesOf } from '#lib/episode/context';
import { spreadPermille } from '#lib/episode/spreads';
import type { Portion } from '#lib/episode/recipe-schema';
import { failed, type Result } from '#lib/result';
import { portionColumns } from '#lib/store/episode-columns';
import { nextPlace } from '#lib/store/next-place';
import { readEpisodeFile } from '#lib/store/read-episode';
import { gramsText, ratioText } from '#lib/units/read-quantity';
import { parseThenAct } from '../../_forms/parse-then-act';
import type { FormState } from '../../_ui/form/form-state';
import { change, takeOut } from './change';
import { portionForm, type TypedPortion } from './portion-schema';
import { removeForm } from './schema';

/** Adds a portion to a dish: one of so many, so many grams, or a share by eye. */
export async function addPortion(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(portionForm, state, form, async ({ episodeId, recipeId, ...typed }) => {
    const file = await readEpisodeFile(episodeId, new Date().toISOString());
    const recipe = file && ownRecipesOf(file).find(({ id }) => id === recipeId);
    if (!file || !recipe) return gone();
    const name = typed.name || nameOf(typed.portion);
    if (recipe.portions.some((portion) => portion.name === name)) {
      const message = `This dish has a portion called “${name}” already: give this one another name.`;
      return failed({ path: 'name', code: 'same', message });
    }
    const spread = spreadPermille(file.kitchen, 'portion');
    const portion = { id: uuid(), name, ...withSpread(typed.portion, spread) };
    const position = await nextPlace('Portion', recipeId);
    return change(episodeId, 'Add a portion', [
      {
        op: 'create',
        entity: 'Portion',
        row: { id: portion.id, recipeId, position, ...portionColumns(portion) },
      },
    ]);
  });
}

export async function removePortion(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeForm('portionId'), state, form, ({ episodeId, id, rev }) =>
    takeOut(episodeId, 'Take a portion out', { op: 'remove', entity: 'Portion', id, rev }),
  );
}

type Sized<P> = P extends unknown ? Omit<P, 'id' | 'name'> : never;

function withSpread(typed: TypedPortion, permille: number): Sized<Portion> {
  return typed.kind === 'byEye' ? { ...typed, permille: typed.permille ?? permille } : typed;
}

/** The plain words of a portion that was given no name. */
function nameOf(portion: TypedPortion): string {
  if (portion.kind === 'count') return `one of ${portion.of}`;
  if (portion.kind === 'byEye') return `about ${ratioText(portion.share)}`;
  const { massMg } = portion;
  return `${gramsText({ lowMg: massMg, valueMg: massMg, highMg: massMg })} g`;
}

function gone(): Result<never> {
  const message = 'This dish is no longer there: it was removed. Nothing was written.';
  return failed({ path: '', code: 'gone', message });
}
