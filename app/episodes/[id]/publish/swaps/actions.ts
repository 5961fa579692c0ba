'use server';

import { redirect } from 'next/navigation';
import { v7 as uuid } from 'uuid';
import { amountContext, dishesOf } from '#lib/episode/context';
import type { SwapStep } from '#lib/episode/publish-schema';
import { failed, ok, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { stepColumns } from '#lib/store/import-publish';
import { readFood } from '#lib/store/read-foods';
import { removalEdits } from '#lib/store/remove-rows';
import { applySwap } from '#lib/swap/apply-swap';
import { GRAM_MG, massOf, oneOfIt } from '#lib/swap/counted-amount';
import { withStep } from '#lib/swap/step-words';
import { parseThenAct } from '../../../../_forms/parse-then-act';
import type { FormState } from '../../../../_ui/form/form-state';
import { change } from '../../change';
import { readSwaps } from './read-swaps';
import {
  addFoodForm,
  leaveOutForm,
  otherAmountForm,
  otherFoodForm,
  removeSwapForm,
  saveSwapForm,
} from './schema';
import { dishSwapsHref, swapsHref } from './steps-text';

interface Trying {
  readonly episodeId: string;
  readonly segmentId: string;
  readonly variantId: string | null;
  readonly steps: readonly SwapStep[];
}

const gone = (message: string) => failed({ path: '', code: 'gone', message });

/** Tries another food in the place of an ingredient's, as much of it as before. */
export async function tryOtherFood(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(otherFoodForm, state, form, async ({ lineId, foodId, ...trying }) => {
    if (!(await readFood(foodId))) return gone('This food is no longer there: choose another.');
    return tried(trying, { kind: 'food', lineId, foodId, massMg: null });
  });
}

/** Tries another amount of an ingredient, by weight or by what it is counted in. */
export async function tryOtherAmount(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(otherAmountForm, state, form, async ({ lineId, amount, unit, ...trying }) => {
    if (unit === 'g')
      return tried(trying, { kind: 'amount', lineId, massMg: massOf(amount, GRAM_MG) });
    const one = await oneAsTried(trying, lineId);
    if (one === null) {
      const message = 'This ingredient is not counted in pieces: write grams.';
      return failed({ path: 'unit', code: 'not-counted', message });
    }
    return tried(trying, { kind: 'amount', lineId, massMg: massOf(amount, one) });
  });
}

/** Tries a dish without an ingredient. */
export async function tryWithout(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(leaveOutForm, state, form, ({ lineId, ...trying }) =>
    tried(trying, { kind: 'leaveOut', lineId }),
  );
}

/** Tries a food that the dish has not. */
export async function tryWith(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(addFoodForm, state, form, async ({ foodId, amount, ...trying }) => {
    const food = await readFood(foodId);
    if (!food) return gone('This food is no longer there: choose another.');
    const { state: as } = food.version;
    return tried(trying, { kind: 'add', foodId, massMg: massOf(amount, GRAM_MG), state: as });
  });
}

/** Shows what one step more does; what is tried out is written nowhere yet. */
function tried({ episodeId, segmentId, variantId, steps }: Trying, step: SwapStep): never {
  const place = { variantId, steps: withStep(steps, step), told: true };
  redirect(dishSwapsHref(episodeId, segmentId, place));
}

/** What one piece of an ingredient weighs in the dish as it is tried out. */
async function oneAsTried({ episodeId, segmentId, steps }: Trying, lineId: string) {
  const read = await readSwaps(episodeId, steps, segmentId);
  const applied = read && applySwap(read.file, { id: 'tried', segmentId, steps: [...steps] });
  if (!applied?.ok) return null;
  const dish = dishesOf(applied.value.episode.segments).find(({ id }) => id === segmentId);
  const line = dish?.recipe.lines.find(({ id }) => id === lineId);
  return dish && line ? oneOfIt(line, dish.recipe, amountContext(applied.value)) : null;
}

/** Saves what is tried out under a name, in the place of the saved swap that it began from. */
export async function saveSwap(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(saveSwapForm, state, form, async ({ name, rev, ...trying }) => {
    const { episodeId, segmentId, variantId, steps } = trying;
    if (steps.length === 0) return gone('Nothing is swapped yet: try something first.');
    const read = await readSwaps(episodeId, steps, segmentId);
    if (!read) return gone('This episode is no longer there.');
    const applied = applySwap(read.file, { id: 'tried', segmentId, steps: [...steps] });
    if (!applied.ok) return failed(...applied.problems.map((each) => ({ ...each, path: '' })));
    const old = variantId === null ? [] : await removalEdits('Variant', variantId, rev);
    const id = uuid();
    const rows: Edit[] = steps.map((step, position) => ({
      op: 'create',
      entity: 'SwapStep',
      row: { id: uuid(), variantId: id, position, ...stepColumns(step) },
    }));
    const done = await change(episodeId, `Save the swap ${name}`, [
      ...old,
      { op: 'create', entity: 'Variant', row: { id, episodeId, segmentId, name } },
      ...rows,
    ]);
    if (!done.ok) return done;
    redirect(`${swapsHref(episodeId)}#swap-${id}`);
  });
}

/** Takes a saved swap out. */
export async function removeSwap(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeSwapForm, state, form, async (sent): Promise<Result<string>> => {
    const { episodeId, variantId, rev } = sent;
    const edits = await removalEdits('Variant', variantId, rev);
    const done = await change(episodeId, 'Take a saved swap out', edits);
    return done.ok ? ok('Taken out.') : done;
  });
}
