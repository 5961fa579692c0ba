'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { copyEpisode } from '#lib/store/copy-again';
import { parseThenAct } from './_forms/parse-then-act';
import type { FormState } from './_ui/form/form-state';
import { copyEpisodeForm } from './again-schema';

/** Begins a new episode from one that is there, and leads to it with its title ready to change. */
export async function beginAgain(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(copyEpisodeForm, state, form, async ({ episodeId }) => {
    const copied = await copyEpisode(episodeId, { amounts: 'weighed', at: new Date() });
    if (!copied.ok) return copied;
    const { id } = copied.value;
    revalidatePath('/');
    redirect(`/episodes/${id}?edit=${id}&copied=${id}`);
  });
}
