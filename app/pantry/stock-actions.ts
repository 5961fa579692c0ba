'use server';

import { redirect } from 'next/navigation';
import { v7 as uuid } from 'uuid';
import { failed, ok, type Result } from '#lib/result';
import type { StockLot, StockAnswer } from '#lib/episode/stock-schema';
import { lotMg } from '#lib/shopping/shopping-list';
import { moveDelta, MOVE_WORDS, type MoveKind } from '#lib/shopping/stock-move';
import type { Edit } from '#lib/store/command';
import { readFood } from '#lib/store/read-foods';
import { readPantryFoods } from '#lib/store/read-foods-in-use';
import { readLot } from '#lib/store/read-lot';
import { sayOfFoodEdits } from '#lib/store/say-of-food';
import { printDay } from '#lib/units/print-date';
import { parseThenAct } from '../_forms/parse-then-act';
import type { FormState } from '../_ui/form/form-state';
import { change, GONE } from './change';
import { dateIn } from '../date-in';
import {
  answerForm,
  emptyLotForm,
  keepsOpenForm,
  lotForm,
  moveForm,
  newLotForm,
  noneLeftForm,
  openLotForm,
  removeLotForm,
} from './stock-schema';

const ANSWERED: Readonly<Record<StockAnswer, string>> = {
  have: 'is there',
  notEnough: 'is not enough',
  none: 'is not there',
};

/** Says of a food at home that there is enough, not enough, or none: one press. */
export async function answerStock(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(answerForm, state, form, async ({ foodId, answer }) => {
    const food = await readFood(foodId);
    if (!food) return GONE;
    const at = new Date();
    const said = { answer: { is: answer, on: await dateIn(at), remark: '' } };
    return change(`${food.name} ${ANSWERED[answer]}`, await sayOfFoodEdits(foodId, said), at);
  });
}

/** How long a food keeps once opened; with nothing typed the published chart holds again. */
export async function keepsOpen(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(keepsOpenForm, state, form, async ({ foodId, opened }) => {
    const food = await readFood(foodId);
    if (!food) return GONE;
    const label = `How long ${food.name} keeps once opened`;
    return change(label, await sayOfFoodEdits(foodId, { opened }));
  });
}

/** Shows the lot on its food's page. */
async function changeLot(
  { id, foodId }: Pick<StockLot, 'id' | 'foodId'>,
  label: string,
  edits: readonly Edit[],
  at = new Date(),
): Promise<Result<string>> {
  const done = await change(label, edits, at);
  if (done.ok) redirect(`/pantry/foods/${foodId}#row-${id}`);
  return done;
}

function moveEdit(lotId: string, kind: MoveKind, deltaMg: number, at: Date): Edit {
  const row = { id: uuid(), lotId, kind, deltaMg, at, eventId: null };
  return { op: 'create', entity: 'StockMove', row };
}

export async function addLot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(newLotForm, state, form, ({ grams, ...lot }) => {
    const at = new Date();
    const id = uuid();
    const row = { id, ...lot };
    const edits: Edit[] = [
      { op: 'create', entity: 'StockLot', row },
      moveEdit(id, 'bought', grams, at),
    ];
    return changeLot(row, 'Put into stock', edits, at);
  });
}

export async function saveLot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(lotForm, state, form, async ({ lotId, rev, ...patch }) => {
    const lot = await readLot(lotId);
    if (!lot) return GONE;
    const edit: Edit = { op: 'update', entity: 'StockLot', id: lotId, rev, patch };
    return changeLot(lot, 'Change where it stands', [edit]);
  });
}

/** A lot is opened today: one press. */
export async function openLot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(openLotForm, state, form, async ({ lotId, rev }) => {
    const lot = await readLot(lotId);
    if (!lot) return GONE;
    const openedOn = await dateIn(new Date());
    if (lot.useBy !== null && lot.useBy < openedOn) {
      const message = `Its use-by, ${printDay(lot.useBy)}, is past: throw it away, or put the date right.`;
      return failed({ path: '', code: 'past', message });
    }
    const edit: Edit = { op: 'update', entity: 'StockLot', id: lotId, rev, patch: { openedOn } };
    return changeLot(lot, 'Opened', [edit]);
  });
}

export async function moveStock(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(moveForm, state, form, async ({ lotId, kind, grams }) => {
    const lot = await readLot(lotId);
    if (!lot) return GONE;
    const delta = moveDelta(lot, kind, grams);
    if (!delta.ok) return delta;
    const at = new Date();
    const edits = [moveEdit(lotId, kind, delta.value, at)];
    return changeLot(lot, `Stock ${MOVE_WORDS[kind]}`, edits, at);
  });
}

/** All that is left of a lot is used or thrown away: one press. */
export async function emptyLot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(emptyLotForm, state, form, async ({ lotId, kind }) => {
    const lot = await readLot(lotId);
    if (!lot) return GONE;
    const left = lotMg(lot);
    if (left <= 0) return ok('Nothing is left of it.');
    const delta = moveDelta(lot, kind, left);
    if (!delta.ok) return delta;
    const at = new Date();
    return change(`Stock ${MOVE_WORDS[kind]}`, [moveEdit(lotId, kind, delta.value, at)], at);
  });
}

/** Nothing is left of any lot of a food: each is counted to nothing, and the food is not there. */
export async function noneLeft(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(noneLeftForm, state, form, async ({ foodId }) => {
    const [food] = await readPantryFoods([foodId]);
    if (!food) return GONE;
    const at = new Date();
    const counted = food.lots.flatMap((lot) => {
      const delta = moveDelta(lot, 'counted', 0);
      return delta.ok && delta.value !== 0 ? [moveEdit(lot.id, 'counted', delta.value, at)] : [];
    });
    const answer = { is: 'none' as const, on: await dateIn(at), remark: '' };
    const said = await sayOfFoodEdits(foodId, { answer });
    return change(`${food.name} is not there`, [...counted, ...said], at);
  });
}

export async function removeLot(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeLotForm, state, form, async ({ lotId, rev }) => {
    const lot = await readLot(lotId);
    if (!lot) return GONE;
    const edit: Edit = { op: 'remove', entity: 'StockLot', id: lotId, rev };
    const done = await change('Take a lot off the list', [edit]);
    if (done.ok) redirect(`/pantry/foods/${lot.foodId}#stock`);
    return done;
  });
}
