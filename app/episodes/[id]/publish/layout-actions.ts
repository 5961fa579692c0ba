'use server';

import {
  changedLayout,
  PART_WORDS,
  type LayoutChange,
} from '#lib/publish/description/change-layout';
import { houseLayout } from '#lib/publish/description/layout';
import { failed, type Result } from '#lib/result';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { act } from '../../../act';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
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

async function save(
  episodeId: string,
  change: LayoutChange,
  label: string,
): Promise<Result<string>> {
  const file = await readEpisodeFile(episodeId, new Date().toISOString());
  if (!file) {
    return failed({ path: '', code: 'gone', message: 'This episode is no longer there.' });
  }
  const { id } = file.creator;
  const layout = changedLayout(houseLayout(file.creator.layout), change);
  const rev = (await readRevisions(episodeId))[id];
  return act('/', label, [
    rev === undefined
      ? { op: 'create', entity: 'Creator', row: { id, name: '', layout } }
      : { op: 'update', entity: 'Creator', id, rev, patch: { layout } },
  ]);
}
