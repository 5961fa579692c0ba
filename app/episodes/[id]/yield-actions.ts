'use server';

import { v7 as uuid } from 'uuid';
import { amountContext, ownRecipesOf } from '#lib/episode/context';
import { cookWeights, typedHalfMg } from '#lib/episode/cook-weights';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { Food } from '#lib/foods/food';
import { failed } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { nextPlace } from '#lib/store/next-place';
import { readRevisedEpisode, type RevisedEpisode } from '#lib/store/read-revised-episode';
import { readFood } from '#lib/store/read-foods';
import { parseThenAct } from '../../_forms/parse-then-act';
import type { FormState } from '../../_ui/form/form-state';
import { ownYieldEdits } from '../../pantry/yield-edits';
import { keepYieldForm, lineYieldForm, takeYieldForm } from '../../pantry/yield-schema';
import { change } from './change';

/** Keeps an ingredient's two readings, raw and cooked, as its food's history. */
export async function keepYield(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(keepYieldForm, state, form, async ({ episodeId, lineId, method, sure }) => {
    const at = new Date();
    const found = await lineOf(episodeId, lineId, at);
    if (!found) return GONE;
    const { file, revs, recipe, line, food } = found;
    const weights = cookWeights(line, recipe.weighings, amountContext(file));
    if (!weights) {
      const message = 'Both weights are needed: weigh it raw and cooked first.';
      return failed({ path: '', code: 'not-weighed', message });
    }
    const { rawMg, cookedMg, halfMg } = weights;
    const edits = ownYieldEdits(
      food,
      { method, rawMg, cookedMg, halfMg, lineId, at },
      await nextPlace('YieldObservation', food.id),
      sure,
    );
    if (!edits.ok) return edits;
    return change(episodeId, `Keep the cooked weight of ${line.text}`, [
      ...earlier(food, lineId, revs),
      ...edits.value,
    ]);
  });
}

/** An ingredient's raw and cooked weight, typed: by these it is turned from one state into the other. */
export async function sayYield(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(lineYieldForm, state, form, async (sent) => {
    const { episodeId, lineId, raw, cooked, method, sure } = sent;
    const at = new Date();
    const found = await lineOf(episodeId, lineId, at);
    if (!found) return GONE;
    const { file, revs, line, food } = found;
    const halfMg = typedHalfMg(file.kitchen);
    const edits = ownYieldEdits(
      food,
      { method, rawMg: raw, cookedMg: cooked, halfMg, lineId, at },
      await nextPlace('YieldObservation', food.id),
      sure,
    );
    if (!edits.ok) return edits;
    return change(episodeId, `Say the raw and cooked weight of ${line.text}`, [
      ...earlier(food, lineId, revs),
      ...edits.value,
    ]);
  });
}

/** A published cooked weight of a food's counterpart, taken for the food too, with where it comes from. */
export async function takeYield(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(takeYieldForm, state, form, async (sent) => {
    const { episodeId, lineId, fromFoodId, yieldId } = sent;
    const at = new Date();
    const found = await lineOf(episodeId, lineId, at);
    const from = await readFood(fromFoodId);
    const observed = from?.yields.find(({ id }) => id === yieldId);
    if (!found || !from || !observed) return GONE;
    const { line, food } = found;
    const { method, rawMg, cookedMg } = observed;
    return change(episodeId, `Take a cooked weight for ${line.text}`, [
      {
        op: 'create',
        entity: 'YieldObservation',
        row: {
          id: uuid(),
          foodId: food.id,
          position: await nextPlace('YieldObservation', food.id),
          method,
          rawMg,
          cookedMg,
          source: `${observed.source}, of ${from.name}`.slice(0, LONGEST_SOURCE),
          ownHalfMg: null,
          lineId: null,
          at,
        },
      },
    ]);
  });
}

const LONGEST_SOURCE = 200;

const GONE = failed({
  path: '',
  code: 'gone',
  message: 'This ingredient or its food is no longer there: open the page again.',
});

interface Found extends RevisedEpisode {
  readonly recipe: Recipe;
  readonly line: RecipeLine;
  readonly food: Food;
}

async function lineOf(episodeId: string, lineId: string, at: Date): Promise<Found | null> {
  const read = await readRevisedEpisode(episodeId, at.toISOString());
  const recipes = read ? ownRecipesOf(read.file) : [];
  const recipe = recipes.find(({ lines }) => lines.some(({ id }) => id === lineId));
  const line = recipe?.lines.find(({ id }) => id === lineId);
  const food = read?.file.foods.find(({ id }) => id === line?.foodId);
  return read && recipe && line && food ? { ...read, recipe, line, food } : null;
}

/** One cook has one raw and one cooked weight: what was kept of it before goes. */
function earlier(food: Food, lineId: string, revs: RevisedEpisode['revs']): readonly Edit[] {
  return food.yields
    .filter(({ own }) => own?.lineId === lineId)
    .map(({ id }) => ({ op: 'remove', entity: 'YieldObservation', id, rev: revs[id] ?? 0 }));
}
