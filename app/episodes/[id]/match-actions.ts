'use server';

import { ownRecipesOf } from '#lib/episode/context';
import { isProposed } from '#lib/episode/is-proposed';
import { lineFromReading } from '#lib/episode/line-from-reading';
import { matchQuery } from '#lib/episode/match-line';
import { readIngredient } from '#lib/episode/read-ingredient';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { Edit } from '#lib/store/command';
import { rememberMatch } from '#lib/store/match-foods';
import { nextPlace } from '#lib/store/next-place';
import { pastedLineEdits } from '#lib/store/pasted-lines';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readFood } from '#lib/store/read-foods';
import { failed } from '#lib/result';
import { parseThenAct } from '../../_forms/parse-then-act';
import type { FormState } from '../../_ui/form/form-state';
import { change } from './change';
import {
  confirmAllForm,
  confirmForm,
  eitherFoodForm,
  pasteForm,
  sayGramsForm,
  takeFoodForm,
  takeMeasureForm,
} from './match-schema';
import { LINE_GONE, readLine, readRevisedRecipes } from './read-lines';

/** Adds a pasted list to a dish. */
export async function pasteLines(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(pasteForm, state, form, async ({ episodeId, recipeId, list }) => {
    const file = await readEpisodeFile(episodeId, new Date().toISOString());
    const recipe = file && ownRecipesOf(file).find(({ id }) => id === recipeId);
    if (!recipe) return LINE_GONE;
    const edits = await pastedLineEdits(list, {
      recipeId,
      position: await nextPlace('RecipeLine', recipeId),
      present: recipe.lines.length,
    });
    return edits.ok ? change(episodeId, pasteLabel(edits.value.length), edits.value) : edits;
  });
}

/** The person's word that a food is the one meant; the words mean it from now on. */
export async function confirmMatch(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(confirmForm, state, form, async ({ episodeId, lineId, rev }) => {
    const line = await readLine(episodeId, lineId);
    if (!line) return LINE_GONE;
    return change(episodeId, `Confirm ${line.text}`, [
      confirmEdit(line, rev),
      ...(line.foodId === null ? [] : remembered(line, line.foodId)),
    ]);
  });
}

/**
 * The same word for every match of a dish at once, for this dish alone: nobody has looked at each, so the words mean
 * nothing from now on and are asked again where they come again.
 */
export async function confirmAll(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(confirmAllForm, state, form, async ({ episodeId, recipeId }) => {
    const { recipes, revs } = await readRevisedRecipes(episodeId, new Date());
    const recipe = recipes.find(({ id }) => id === recipeId);
    if (!recipe) return LINE_GONE;
    const edits = recipe.lines
      .filter(isProposed)
      .map((line) => confirmEdit(line, revs[line.id] ?? 0));
    if (edits.length === 0) return LINE_GONE;
    return change(episodeId, `Confirm the foods of ${recipe.title}`, edits);
  });
}

/** Another food for an ingredient, chosen from those that fit; its state and measure are read again. */
export async function takeFood(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(takeFoodForm, state, form, async ({ episodeId, lineId, rev, foodId }) => {
    const line = await readLine(episodeId, lineId);
    const food = await readFood(foodId);
    if (!line || !food) return LINE_GONE;
    const [part] = readIngredient(line.text);
    const again = part && lineFromReading(part, food);
    const patch = {
      foodId,
      match: 'confirmed' as const,
      orFoodId: null,
      madeFromId: null,
      madeFromRev: null,
      // What bounds the missing values of another food says nothing of this one's.
      ...(line.foodId === foodId ? {} : { bounded: null }),
      ...(again && { state: again.state, measureName: again.measureName }),
    };
    return change(episodeId, `Count ${line.text} as ${food.name}`, [
      { op: 'update', entity: 'RecipeLine', id: lineId, rev, patch },
      ...remembered(line, foodId),
    ]);
  });
}

/** A second food, where the person cannot tell which of two it was: the figure lies between both. */
export async function takeEither(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(eitherFoodForm, state, form, async ({ episodeId, lineId, rev, orFoodId }) => {
    const line = await readLine(episodeId, lineId);
    const food = await readFood(orFoodId);
    if (!line || !food) return LINE_GONE;
    if (line.foodId === null || line.foodId === orFoodId) {
      const message = 'Choose two different foods: the number lies between them.';
      return failed({ path: 'orFoodId', code: 'same', message });
    }
    const patch = { orFoodId, match: 'confirmed' as const, bounded: null };
    return change(episodeId, `Count ${line.text} as either of two foods`, [
      { op: 'update', entity: 'RecipeLine', id: lineId, rev, patch },
    ]);
  });
}

/** Grams, or a range of grams, for an ingredient whose amount says none. */
export async function sayGrams(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(sayGramsForm, state, form, async ({ episodeId, lineId, rev, grams }) => {
    const line = await readLine(episodeId, lineId);
    if (!line || !grams) return LINE_GONE;
    const { lowMg: plannedLowMg, valueMg: plannedMg, highMg: plannedHighMg } = grams;
    const patch = { plannedLowMg, plannedMg, plannedHighMg };
    return change(episodeId, `Say the grams of ${line.text}`, [
      { op: 'update', entity: 'RecipeLine', id: lineId, rev, patch },
    ]);
  });
}

/** Which of its food's measures an amount counts, where the words left it open. */
export async function takeMeasure(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(takeMeasureForm, state, form, async (sent) => {
    const { episodeId, lineId, rev, measureName } = sent;
    const line = await readLine(episodeId, lineId);
    if (!line) return LINE_GONE;
    return change(episodeId, `Count ${line.text} by ${measureName}`, [
      { op: 'update', entity: 'RecipeLine', id: lineId, rev, patch: { measureName } },
    ]);
  });
}

function confirmEdit({ id }: RecipeLine, rev: number): Edit {
  return { op: 'update', entity: 'RecipeLine', id, rev, patch: { match: 'confirmed' } };
}

/** Which food the ingredient's words mean, where they name one thing only. */
function remembered({ text }: RecipeLine, foodId: string): readonly Edit[] {
  const [part, ...more] = readIngredient(text);
  const words = part ? matchQuery(part) : '';
  return words === '' || more.length > 0 ? [] : [rememberMatch(words, foodId, new Date())];
}

function pasteLabel(count: number): string {
  return count === 1 ? 'Add an ingredient' : `Add ${count} ingredients`;
}
