'use server';

import { redirect } from 'next/navigation';
import { onScale, waitingReading } from '#lib/episode/scale-so-far';
import type { Recipe, RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import { readWeighing, type WeighedOf } from '#lib/episode/typed-weighing';
import { failed, ok, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { DEFAULT_KITCHEN } from '#lib/store/default-kitchen';
import { kitchenEdits } from '#lib/store/import-kitchen';
import { readKitchen } from '#lib/store/read-kitchen';
import { removalEdits } from '#lib/store/remove-rows';
import { parseThenAct } from '../../_forms/parse-then-act';
import type { FormState } from '../../_ui/form/form-state';
import { rowHref, weighHref } from './_components/view';
import { change, takeOut } from './change';
import { readRevisedRecipes } from './read-lines';
import { removeForm } from './schema';
import { leftWeighedEdits, readingEdits } from './weigh-edits';
import { weighDishForm, weighLineForm } from './weigh-schema';

/** Writes one more reading of an ingredient; those before it stay as they are. */
export async function weighLine(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(weighLineForm, state, form, async (sent) => {
    const { episodeId, lineId, of, method: way, shares, next } = sent;
    const at = new Date();
    const { recipes, revs } = await readRevisedRecipes(episodeId, at);
    const recipe = recipes.find(({ lines }) => has(lines, lineId));
    const line = recipe?.lines.find(({ id }) => id === lineId);
    if (!recipe || !line) return gone('This ingredient');
    if (shares.some((share) => !has(recipe.lines, share.lineId)))
      return gone('An ingredient of it');
    const before = readingBefore(recipe, lineId, sent);
    if (!before.ok) return before;
    const beforeMg = before.value?.grossMg ?? null;
    const read = readWeighing({
      of,
      way,
      nowMg: sent.gross,
      containerMg: sent.containerMg,
      otherMg: sent.after,
      beforeMg,
    });
    if (!read.ok) return read;
    const { waits } = read.value;
    const done = await change(episodeId, labelOf(line, of, waits), [
      ...(await kitchenFirst()),
      ...readingEdits({
        recipeId: recipe.id,
        kind: of,
        read: read.value,
        // What belongs together was read on one scale.
        scaleId: before.value?.scaleId ?? sent.scaleId,
        afterId: way === 'total' ? (before.value?.id ?? null) : null,
        at,
        shares: waits ? [{ lineId, share: { num: 1, den: 1 } }] : shares,
      }),
      ...(way === 'difference' ? await answered(before.value, revs) : []),
      ...(of === 'left' && !waits
        ? leftWeighedEdits(
            recipe,
            shares.map((share) => share.lineId),
            { where: sent.leftWhere, made: sent.leftMade },
            revs,
          )
        : []),
    ]);
    if (!done.ok) return done;
    redirect(
      next !== null && has(recipe.lines, next)
        ? weighHref(episodeId, next)
        : rowHref(episodeId, lineId),
    );
  });
}

/** Writes one more reading of the finished dish. */
export async function weighDish(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(weighDishForm, state, form, async (sent) => {
    const { episodeId, recipeId } = sent;
    const at = new Date();
    const { recipes, revs } = await readRevisedRecipes(episodeId, at);
    const recipe = recipes.find((each) => each.id === recipeId);
    if (!recipe) return gone('This dish');
    const before = readingBefore(recipe, null, { ...sent, onScaleId: null });
    if (!before.ok) return before;
    const read = readWeighing({
      of: 'finished',
      way: sent.method,
      nowMg: sent.gross,
      containerMg: sent.containerMg,
      otherMg: sent.after,
      beforeMg: before.value?.grossMg ?? null,
    });
    if (!read.ok) return read;
    const { waits } = read.value;
    return change(episodeId, waits ? 'Weigh an empty container' : 'Weigh the finished dish', [
      ...(await kitchenFirst()),
      ...readingEdits({
        recipeId,
        kind: 'finished',
        read: read.value,
        scaleId: before.value?.scaleId ?? sent.scaleId,
        afterId: null,
        at,
        shares: [],
      }),
      ...(await answered(before.value, revs)),
    ]);
  });
}

/** Strikes a reading out; it can be taken back in. */
export async function removeReading(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeForm('weighingId'), state, form, ({ episodeId, id, rev }) =>
    takeOut(episodeId, 'Take a reading back', { op: 'remove', entity: 'Weighing', id, rev }),
  );
}

interface Held {
  readonly method: 'direct' | 'difference' | 'total';
  readonly onScaleId: string | null;
  readonly waitingId: string | null;
}

/**
 * The reading that a new one is held against, as its form showed it: what stands on the scale, or what waits for
 * its second reading; null for none. Where that is another one by now, nothing is guessed.
 */
function readingBefore(
  recipe: Recipe,
  lineId: string | null,
  { method, onScaleId, waitingId }: Held,
): Result<Weighing | null> {
  if (method === 'direct') return ok(null);
  const total = method === 'total';
  const shown = total ? onScaleId : waitingId;
  if (shown === null) return ok(null);
  const stands = total ? onScale(recipe) : waitingReading(recipe, lineId);
  if (stands?.id === shown) return ok(stands);
  const message = total
    ? 'Something else was weighed since this was opened: look again at what was on the scale.'
    : 'The reading that waited for this one is no longer there: look again.';
  return failed({ path: '', code: 'conflict', message });
}

/** Takes out the reading that waited: it is a part of the one that answers it. */
async function answered(
  waiting: Weighing | null,
  revs: Readonly<Record<string, number>>,
): Promise<readonly Edit[]> {
  return waiting ? removalEdits('Weighing', waiting.id, revs[waiting.id] ?? 0) : [];
}

function labelOf({ text }: RecipeLine, of: WeighedOf, waits: boolean): string {
  if (waits) return `Weigh the container of ${text}`;
  if (of === 'cooked') return `Weigh ${text}, cooked`;
  return of === 'left' ? `Weigh what is left of ${text}` : `Weigh ${text}`;
}

function has(lines: readonly RecipeLine[], lineId: string): boolean {
  return lines.some(({ id }) => id === lineId);
}

/** The scale of the kitchen that was taken for granted must be there before something is weighed on it. */
async function kitchenFirst(): Promise<readonly Edit[]> {
  return (await readKitchen()) ? [] : kitchenEdits(DEFAULT_KITCHEN);
}

function gone(what: string): Result<never> {
  const message = `${what} is no longer there: it was removed. Nothing was written.`;
  return failed({ path: '', code: 'gone', message });
}
