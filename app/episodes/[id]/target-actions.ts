'use server';

import { v7 as uuid } from 'uuid';
import { nextPlace } from '#lib/store/next-place';
import { parseThenAct } from '../../_forms/parse-then-act';
import type { FormState } from '../../_ui/form/form-state';
import { change, changeAndClose, takeOut } from './change';
import { newTargetForm, removeForm, targetForm } from './schema';

export async function addTarget(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(newTargetForm, state, form, async ({ episodeId, ...target }) => {
    const position = await nextPlace('Target', episodeId);
    const row = { id: uuid(), episodeId, position, ...target };
    return change(episodeId, 'Add a target', [{ op: 'create', entity: 'Target', row }]);
  });
}

export async function saveTarget(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(targetForm, state, form, ({ episodeId, targetId, rev, ...patch }) =>
    changeAndClose(episodeId, targetId, 'Change a target', [
      { op: 'update', entity: 'Target', id: targetId, rev, patch },
    ]),
  );
}

export async function removeTarget(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeForm('targetId'), state, form, ({ episodeId, id, rev }) =>
    takeOut(episodeId, 'Take a target out', { op: 'remove', entity: 'Target', id, rev }),
  );
}
