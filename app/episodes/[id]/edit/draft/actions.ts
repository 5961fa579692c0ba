'use server';

import { redirect } from 'next/navigation';
import { z } from 'zod';
import { countOf, ticked } from '#lib/draft/offer';
import { failed } from '#lib/result';
import { draftEdits } from '#lib/store/draft-edits';
import { readRevisions } from '#lib/store/read-episode';
import { rowId } from '../../../../_forms/fields';
import { parseThenAct } from '../../../../_forms/parse-then-act';
import type { FormState } from '../../../../_ui/form/form-state';
import { change } from '../../change';
import { GONE, NOTHING_TICKED } from '../refusals';
import { readOffer } from './read-draft-page';

const form = z.looseObject({ episodeId: rowId, version: z.string().max(16) });

const CHANGED = failed({
  path: '',
  code: 'changed',
  message:
    'The texts were changed since this page was read: open it again and look at what they propose now.',
});

/** Adds what was ticked of what the texts propose, in one act, and shows the edit. */
export async function addFromDraft(state: FormState, sent: FormData): Promise<FormState> {
  return parseThenAct(form, state, sent, async (typed) => {
    // First, so that what changes meanwhile is a conflict and never overwritten.
    const revs = await readRevisions(typed.episodeId);
    const read = await readOffer(typed.episodeId);
    if (!read) return GONE;
    if (read.version !== typed.version) return CHANGED;
    const chosen = ticked(read.offer, (key) => typed[key] === 'on');
    const count = countOf(chosen);
    if (count === 0) return NOTHING_TICKED;
    const { episode } = read.file;
    const edits = await draftEdits(chosen, {
      episodeId: episode.id,
      rate: episode.rate,
      segments: episode.segments,
      revs,
      fresh: false,
    });
    const what = count === 1 ? 'one thing' : `${count} things`;
    const done = await change(episode.id, `Add ${what} from the texts`, edits);
    if (!done.ok) return done;
    redirect(`/episodes/${episode.id}/edit`);
  });
}
