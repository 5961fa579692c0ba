'use server';

import { redirect } from 'next/navigation';
import { v7 as uuid } from 'uuid';
import { parseThenAct } from '../../../../_forms/parse-then-act';
import type { FormState } from '../../../../_ui/form/form-state';
import { change } from '../../change';
import { repliesHref, replyHref } from './reply-href';
import { commentForm, readingForm, removeReplyForm, saveReplyForm } from './schema';

/** Keeps a viewer's comment and looks for what gives its number. */
export async function keepComment(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(commentForm, state, form, async ({ episodeId, comment }) => {
    const id = uuid();
    const nothing = { nutrient: null, number: null, segmentId: null, slip: null, text: '' };
    const row = { id, episodeId, at: new Date(), comment, ...nothing };
    const done = await change(episodeId, 'Keep a viewer’s comment', [
      { op: 'create', entity: 'Reply', row },
    ]);
    if (!done.ok) return done;
    redirect(replyHref(episodeId, { replyId: id }));
  });
}

/** Another number, or another dish, than the comment was read as: looked for anew, written nowhere yet. */
export async function readOtherwise(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(readingForm, state, form, ({ episodeId, ...place }) =>
    redirect(replyHref(episodeId, place)),
  );
}

/** Keeps the reply with what explains it. */
export async function saveReply(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(saveReplyForm, state, form, async ({ episodeId, replyId, rev, ...patch }) => {
    const done = await change(episodeId, 'Save a reply', [
      { op: 'update', entity: 'Reply', id: replyId, rev, patch },
    ]);
    if (!done.ok) return done;
    redirect(`${repliesHref(episodeId)}#reply-${replyId}`);
  });
}

/** Takes a comment and its reply out. */
export async function removeReply(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeReplyForm, state, form, async ({ episodeId, replyId, rev }) => {
    const done = await change(episodeId, 'Take a reply out', [
      { op: 'remove', entity: 'Reply', id: replyId, rev },
    ]);
    if (!done.ok) return done;
    redirect(repliesHref(episodeId));
  });
}
