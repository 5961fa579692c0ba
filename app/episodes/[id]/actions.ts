'use server';

import { revalidatePath } from 'next/cache';
import { v7 as uuid } from 'uuid';
import type { LineUnit } from '#lib/episode/recipe-schema';
import type { Food } from '#lib/foods/food';
import { failed, ok, type Problem, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { UNSAID_SEGMENT_COLUMNS } from '#lib/store/episode-columns';
import { readFood } from '#lib/store/read-foods';
import { nextPlace } from '#lib/store/next-place';
import { renameEdits } from '#lib/store/rename-dish';
import { dropTyped } from '#lib/store/keep-typed';
import { readOrder, reorderEdits, stepped, type Ordered } from '#lib/store/reorder-rows';
import { undo } from '#lib/store/undo';
import { fieldOfColumn, parseThenAct } from '../../_forms/parse-then-act';
import type { FormState } from '../../_ui/form/form-state';
import { change, changeAndClose, reorder, takeOut } from './change';
import { segmentColumns } from './edits';
import { lineField, linePatch, newLineColumns } from './line-edits';
import { lineForm, newLineForm } from './line-schema';
import {
  dayAnswerForm,
  episodeForm,
  moveForm,
  moveLineForm,
  newPointForm,
  newSegmentForm,
  orderLinesForm,
  orderSegmentsForm,
  pointForm,
  removeForm,
  segmentForm,
  takeBackForm,
  throwAwayForm,
} from './schema';
import { careOf } from './typed-care';

export async function takeBack(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(takeBackForm, state, form, async ({ episodeId, groupId }) => {
    const undone = await undo(groupId, { actor: DEFAULT_CREATOR_ID, at: new Date() });
    if (!undone.ok) return undone;
    revalidatePath(`/episodes/${episodeId}`, 'layout');
    return ok('Undone.');
  });
}

/** Puts away what was typed into a row's form and not saved. */
export async function throwAway(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(throwAwayForm, state, form, async ({ episodeId, rowId }) => {
    await dropTyped(rowId, new Date());
    revalidatePath(`/episodes/${episodeId}`, 'layout');
    return ok('Thrown away.');
  });
}

const lineFieldOf = (path: string) => lineField(fieldOfColumn(path));

export async function saveEpisode(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    episodeForm,
    state,
    form,
    ({ episodeId, rev, ...patch }) =>
      changeAndClose(episodeId, episodeId, 'Change the episode', [
        { op: 'update', entity: 'Episode', id: episodeId, rev, patch },
      ]),
    fieldOfColumn,
    careOf('Episode', 'episodeId'),
  );
}

export async function answerDay(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(dayAnswerForm, state, form, ({ episodeId, rev, kind, what }) =>
    change(episodeId, 'Answer what else was eaten', [
      {
        op: 'update',
        entity: 'Episode',
        id: episodeId,
        rev,
        patch: {
          anythingElseKind: kind || null,
          anythingElseWhat: kind === 'notCounted' ? what : null,
        },
      },
    ]),
  );
}

export async function addSegment(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(newSegmentForm, state, form, async ({ episodeId, kind, ...texts }) => {
    const recipeId = kind === 'recipe' ? uuid() : null;
    const id = uuid();
    const recipe: readonly Edit[] = recipeId
      ? [
          {
            op: 'create',
            entity: 'Recipe',
            row: { id: recipeId, title: texts.title, method: '', forkedFromId: null },
          },
        ]
      : [];
    return changeAndClose(episodeId, id, `Add ${texts.title}`, [
      ...recipe,
      {
        op: 'create',
        entity: 'Segment',
        row: {
          ...UNSAID_SEGMENT_COLUMNS,
          id,
          episodeId,
          position: await nextPlace('Segment', episodeId),
          kind,
          recipeId,
          ...segmentColumns(texts),
          // A new dish is eaten whole, until it is said how much of it was.
          eatenNum: kind === 'recipe' ? 1 : 0,
          eatenDen: 1,
          inFrame: null,
          outFrame: null,
          washUpS: 0,
        },
      },
    ]);
  });
}

export async function saveSegment(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    segmentForm,
    state,
    form,
    async ({ episodeId, segmentId, rev, ...texts }) =>
      changeAndClose(episodeId, segmentId, `Change ${texts.title}`, [
        { op: 'update', entity: 'Segment', id: segmentId, rev, patch: segmentColumns(texts) },
        ...(await renameEdits(segmentId, texts.title)),
      ]),
    fieldOfColumn,
    careOf('Segment', 'segmentId'),
  );
}

export async function moveSegment(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(moveForm, state, form, ({ episodeId, segmentId, to }) =>
    step(episodeId, 'Segment', episodeId, segmentId, to),
  );
}

export async function moveLine(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(moveLineForm, state, form, ({ episodeId, recipeId, lineId, to }) =>
    step(episodeId, 'RecipeLine', recipeId, lineId, to),
  );
}

export async function orderSegments(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(orderSegmentsForm, state, form, ({ episodeId, order }) =>
    reorder(episodeId, 'Change the running order', () => reorderEdits('Segment', episodeId, order)),
  );
}

export async function orderLines(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(orderLinesForm, state, form, ({ episodeId, recipeId, order }) =>
    reorder(episodeId, 'Change the order of the ingredients', () =>
      reorderEdits('RecipeLine', recipeId, order),
    ),
  );
}

/** One place up or down. */
async function step(
  episodeId: string,
  entity: Ordered,
  parentId: string,
  id: string,
  to: 'up' | 'down',
): Promise<Result<string>> {
  const order = await readOrder(entity, parentId);
  if (stepped(order, id, to) === order) {
    return failed({ path: '', code: 'gone', message: 'There is no further to go.' });
  }
  return reorder(episodeId, `Move ${to}`, async () =>
    reorderEdits(entity, parentId, stepped(await readOrder(entity, parentId), id, to)),
  );
}

export async function removeSegment(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeForm('segmentId'), state, form, ({ episodeId, id, rev }) =>
    takeOut(episodeId, 'Take a segment out', { op: 'remove', entity: 'Segment', id, rev }),
  );
}

export async function addLine(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    newLineForm,
    state,
    form,
    async ({ episodeId, recipeId, ...texts }) => {
      const id = uuid();
      const food = texts.foodId === null ? null : await readFood(texts.foodId);
      const unfit = withoutServing(food, texts);
      if (unfit) return failed(unfit);
      // The state in which the food is listed; raw where none was chosen.
      const state = texts.state ?? food?.version.state ?? 'raw';
      return change(episodeId, `Add ${texts.text}`, [
        {
          op: 'create',
          entity: 'RecipeLine',
          row: {
            id,
            recipeId,
            position: await nextPlace('RecipeLine', recipeId),
            ...newLineColumns(id, { ...texts, state }),
          },
        },
      ]);
    },
    lineFieldOf,
  );
}

/** Servings are a label's own: an amount in them says nothing of a food that states none. */
function withoutServing(
  food: Food | null,
  { quantity, unit }: { readonly quantity: unknown; readonly unit: LineUnit },
): Problem | null {
  if (!food || !quantity || unit !== 'serving' || food.version.serving) return null;
  const message = `${food.name} states no serving: choose grams or another unit.`;
  return { path: 'unit', code: 'no-serving', message };
}

export async function saveLine(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    lineForm,
    state,
    form,
    async ({ episodeId, lineId, rev, ...texts }) => {
      const food = texts.foodId === null ? null : await readFood(texts.foodId);
      const unfit = withoutServing(food, texts);
      if (unfit) return failed(unfit);
      return changeAndClose(episodeId, lineId, `Change ${texts.text}`, [
        { op: 'update', entity: 'RecipeLine', id: lineId, rev, patch: linePatch(lineId, texts) },
      ]);
    },
    lineFieldOf,
    careOf('RecipeLine', 'lineId'),
  );
}

export async function removeLine(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeForm('lineId'), state, form, ({ episodeId, id, rev }) =>
    takeOut(episodeId, 'Take an ingredient out', { op: 'remove', entity: 'RecipeLine', id, rev }),
  );
}

export async function addPoint(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(newPointForm, state, form, async ({ episodeId, segmentId, text }) =>
    change(episodeId, 'Add a sentence', [
      {
        op: 'create',
        entity: 'TalkingPoint',
        row: {
          id: uuid(),
          segmentId,
          position: await nextPlace('TalkingPoint', segmentId),
          text,
        },
      },
    ]),
  );
}

export async function savePoint(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    pointForm,
    state,
    form,
    ({ episodeId, pointId, rev, text }) =>
      changeAndClose(episodeId, pointId, 'Change a sentence', [
        { op: 'update', entity: 'TalkingPoint', id: pointId, rev, patch: { text } },
      ]),
    fieldOfColumn,
    careOf('TalkingPoint', 'pointId'),
  );
}

export async function removePoint(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeForm('pointId'), state, form, ({ episodeId, id, rev }) =>
    takeOut(episodeId, 'Take a sentence out', { op: 'remove', entity: 'TalkingPoint', id, rev }),
  );
}
