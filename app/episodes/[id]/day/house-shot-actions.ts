'use server';

import { v7 as uuid } from 'uuid';
import { z } from 'zod';
import { ok } from '#lib/result';
import { houseShotsToAdd } from '#lib/shoot/house-shots';
import type { Edit } from '#lib/store/command';
import { nextPlace } from '#lib/store/next-place';
import { rowId } from '../../../_forms/fields';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { newRow } from './_components/view';
import { change, changeAndClose, GONE, readDay } from './change';

const houseShotsForm = z.object({ episodeId: rowId, segmentId: rowId.optional() });

/** The shots of every dish that a dish, or every dish where none is named, does not have yet; in one act. */
export async function addHouseShots(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(houseShotsForm, state, form, async ({ episodeId, segmentId }) => {
    const read = await readDay(episodeId);
    if (!read) return GONE;
    const { segments } = read.file.episode;
    const dishes = segments.filter(({ id }) => segmentId === undefined || id === segmentId);
    if (segmentId !== undefined && dishes.length === 0) return GONE;
    const edits: Edit[] = [];
    for (const dish of dishes) {
      const shots = houseShotsToAdd(dish, read.file.kitchen.houseShots);
      const first = shots.length === 0 ? 0 : await nextPlace('Shot', dish.id);
      for (const [at, shot] of shots.entries()) {
        const row = { id: uuid(), segmentId: dish.id, position: first + at, ...shot };
        edits.push({ op: 'create', entity: 'Shot', row });
      }
    }
    if (edits.length === 0) return ok('All of your usual shots are there already.');
    if (segmentId === undefined) return change(episodeId, 'Add the usual shots', edits);
    const label = `Add the usual shots to ${dishes[0]?.title ?? ''}`;
    return changeAndClose(episodeId, newRow('shot', segmentId), label, edits);
  });
}
