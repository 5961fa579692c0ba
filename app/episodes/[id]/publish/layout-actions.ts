'use server';

import {
  changedLayout,
  PART_WORDS,
  type LayoutChange,
} from '#lib/publish/description/change-layout';
import { houseLayout } from '#lib/publish/description/layout';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { changeCreator } from '../change-creator';
import { layoutPartForm, limitForm } from './schema';

/** Moves a part of the house layout, or takes it in or out: of all episodes, from now on. */
export async function changeLayoutPart(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(layoutPartForm, state, form, ({ episodeId, what, part }) => {
    const words = { up: 'up', down: 'down', show: 'in', hide: 'out' }[what];
    return save(episodeId, { what, part }, `House layout: ${PART_WORDS[part]} ${words}`);
  });
}

/** How long a description may be. */
export async function changeLimit(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(limitForm, state, form, ({ episodeId, limit }) =>
    save(episodeId, { what: 'limit', limit }, `House layout: at most ${limit} characters`),
  );
}

const save = (episodeId: string, change: LayoutChange, label: string) =>
  changeCreator(episodeId, label, ({ layout }) => ({
    layout: changedLayout(houseLayout(layout), change),
  }));
