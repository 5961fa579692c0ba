'use server';

import { v7 as uuid } from 'uuid';
import { failed, ok, type Result } from '#lib/result';
import { nextPlace } from '#lib/store/next-place';
import { readDishPlaces, readNamedRecipe } from '#lib/store/read-dishes';
import { fieldOfColumn, parseThenAct } from '../../_forms/parse-then-act';
import type { FormState } from '../../_ui/form/form-state';
import { change, changeAndClose } from './change';
import { dishLineColumns, plainLineColumns, type DishLineTexts } from './dish-line-edits';
import { dishLineForm, foodAgainForm, newDishLineForm, placeDishForm } from './dish-line-schema';
import { UNSAID_SEGMENT_COLUMNS } from '#lib/store/episode-columns';

/** Adds an ingredient that is itself a dish. */
export async function addFromDish(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    newDishLineForm,
    state,
    form,
    async ({ episodeId, recipeId, ...texts }) => {
      const columns = await columnsOf(texts);
      if (!columns.ok) return columns;
      const row = {
        ...plainLineColumns(),
        ...columns.value,
        id: uuid(),
        recipeId,
        position: await nextPlace('RecipeLine', recipeId),
      };
      return change(episodeId, `Add ${row.text}`, [{ op: 'create', entity: 'RecipeLine', row }]);
    },
    fieldOf,
  );
}

/**
 * Changes an ingredient that is a dish, or makes one of it. What only a food has goes: a second food, its measure and
 * how it is cooked.
 */
export async function saveFromDish(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    dishLineForm,
    state,
    form,
    async ({ episodeId, lineId, rev, ...texts }) => {
      const columns = await columnsOf(texts);
      if (!columns.ok) return columns;
      const patch = columns.value;
      return changeAndClose(episodeId, lineId, `Change ${patch.text}`, [
        { op: 'update', entity: 'RecipeLine', id: lineId, rev, patch },
      ]);
    },
    fieldOf,
  );
}

/** Lets an ingredient go of its dish, so that a food can be chosen for it. */
export async function countAsFood(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(foodAgainForm, state, form, ({ episodeId, lineId, rev }) => {
    const none = { lowNum: null, lowDen: null, highNum: null, highDen: null };
    const patch = { ...none, unit: null, measureName: null, madeFromId: null, madeFromRev: null };
    return changeAndClose(episodeId, lineId, 'Count an ingredient as a food', [
      { op: 'update', entity: 'RecipeLine', id: lineId, rev, patch },
    ]);
  });
}

/**
 * Makes a dish of this episode of a recipe that came with a file and stands in no episode, so that it can be weighed
 * and changed. None of it counts to the day.
 */
export async function placeDish(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(placeDishForm, state, form, async ({ episodeId, recipeId }) => {
    const recipe = await readNamedRecipe(recipeId);
    if (!recipe) return failed(GONE);
    if ((await readDishPlaces([recipeId]))[recipeId]) return ok('It is a dish already.');
    const id = uuid();
    return changeAndClose(episodeId, id, `Add ${recipe.title}`, [
      {
        op: 'create',
        entity: 'Segment',
        row: {
          ...UNSAID_SEGMENT_COLUMNS,
          id,
          episodeId,
          recipeId,
          kind: 'recipe',
          title: recipe.title,
          position: await nextPlace('Segment', episodeId),
          batchesNum: 1,
          batchesDen: 1,
          eatenNum: 0,
          eatenDen: 1,
          inFrame: null,
          outFrame: null,
          plannedS: 0,
          spareTakes: 0,
          spareScope: 'spoiltLines',
          washUpS: 0,
        },
      },
    ]);
  });
}

const GONE = {
  path: 'madeFromId',
  code: 'gone',
  message: 'This dish is no longer there: it was removed. Choose another.',
};

async function columnsOf(
  texts: DishLineTexts,
): Promise<Result<ReturnType<typeof dishLineColumns>>> {
  const dish = await readNamedRecipe(texts.madeFromId);
  if (!dish) return failed(GONE);
  const { measureName } = texts.unit;
  if (measureName === null || dish.portions.includes(measureName)) {
    return ok(dishLineColumns(texts, dish));
  }
  const message = `${dish.title} has no portion called “${measureName}”: choose another, grams or batches.`;
  return failed({ path: 'unit', code: 'unknown-portion', message });
}

/** The form's field for a column that the store refuses. */
function fieldOf(path: string): string {
  const column = fieldOfColumn(path);
  return /^(low|high)/.test(column) ? 'quantity' : column;
}
