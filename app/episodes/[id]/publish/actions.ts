'use server';

import { revalidatePath } from 'next/cache';
import { v7 as uuid } from 'uuid';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures, type EpisodeFigures } from '#lib/figures/episode-figures';
import { lockStanding } from '#lib/lock/lock-standing';
import { inputsHash, takeLock } from '#lib/lock/numbers-lock';
import { failed, ok } from '#lib/result';
import { nextPlace } from '#lib/store/next-place';
import { readEpisodeFile } from '#lib/store/read-episode';
import { nextLockSeq, readLastLock } from '#lib/store/read-locks';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { change } from '../change';
import { readDescription } from './read-description';
import {
  allergenForm,
  askAgainForm,
  copyForm,
  lockForm,
  removeWebLinkForm,
  textsForm,
  webLinkForm,
} from './schema';

/**
 * Keeps a text that was copied with the lock whose numbers it has; where nothing is locked yet, or the lock cannot be
 * read any more, its numbers are locked now. A broken lock is never taken anew here: what was said and published stands
 * until the person locks again. A text that is not the description as it stands now is refused: what is kept must be
 * what was pasted.
 */
export async function copyDescription(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(copyForm, state, form, async ({ episodeId, text, ...which }) => {
    const at = new Date();
    const read = await readDescription(episodeId, at);
    if (!read) {
      return failed({ path: '', code: 'gone', message: 'This episode is no longer there.' });
    }
    if (read.textOf(which) !== text) {
      revalidatePath(`/episodes/${episodeId}`, 'layout');
      return failed({
        path: '',
        code: 'changed',
        message:
          'Something changed since this page was opened, so that text is old: nothing was kept or locked. Look at the new one and copy it again.',
      });
    }
    const { lock: last, publish, file, figures } = read;
    const held = publish.ofLock ? last : null;
    const lock = held ? null : await newLock(episodeId, file, figures, at);
    const lockId = held?.id ?? lock?.id ?? '';
    const row = { id: uuid(), lockId, text, form: which.form, at };
    const done = await change(
      episodeId,
      'Copy the description',
      [
        ...(lock ? [{ op: 'create', entity: 'NumbersLock', row: lock } as const] : []),
        { op: 'create', entity: 'Published', row },
      ],
      at,
    );
    if (!done.ok) return done;
    if (!held) return ok('The numbers in it are locked, and the text is kept.');
    return ok(`The text is kept with lock ${held.seq}, whose numbers it has.`);
  });
}

/**
 * Locks the numbers by hand, at picture lock, with no text copied. Where something changed since the page was opened
 * nothing is locked: the person has not seen those numbers.
 */
export async function lockNumbers(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(lockForm, state, form, async ({ episodeId, inputsSha256 }) => {
    const at = new Date();
    const file = await readEpisodeFile(episodeId, at.toISOString());
    if (!file) {
      return failed({ path: '', code: 'gone', message: 'This episode is no longer there.' });
    }
    if (inputsHash(file) !== inputsSha256) {
      revalidatePath(`/episodes/${episodeId}`, 'layout');
      return failed({
        path: '',
        code: 'changed',
        message:
          'Something changed since this page was opened: nothing was locked. Look at the numbers again and lock those.',
      });
    }
    const last = await readLastLock(episodeId);
    if (last && lockStanding(last.snapshot, file) === 'locked') {
      return ok('They are locked already, and nothing under them has changed.');
    }
    const lock = await newLock(episodeId, file, episodeFigures(file), at);
    const label = last ? 'Lock the numbers again' : 'Lock the numbers';
    const edit = { op: 'create', entity: 'NumbersLock', row: lock } as const;
    const done = await change(episodeId, label, [edit], at);
    return done.ok ? ok('The numbers are locked.') : done;
  });
}

async function newLock(episodeId: string, file: EpisodeFile, figures: EpisodeFigures, at: Date) {
  const { snapshot, sha256, schemaVersion, engineVersion } = takeLock(file, figures);
  const seq = await nextLockSeq(episodeId);
  return { id: uuid(), episodeId, seq, snapshot, sha256, schemaVersion, engineVersion, at };
}

export async function saveTexts(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(textsForm, state, form, ({ episodeId, rev, ...patch }) =>
    change(episodeId, 'Change hook and disclosure', [
      { op: 'update', entity: 'Episode', id: episodeId, rev, patch },
    ]),
  );
}

export async function addWebLink(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(webLinkForm, state, form, async ({ episodeId, label, url }) => {
    const position = await nextPlace('WebLink', episodeId);
    return change(episodeId, `Add the link ${label}`, [
      { op: 'create', entity: 'WebLink', row: { id: uuid(), episodeId, position, label, url } },
    ]);
  });
}

export async function removeWebLink(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeWebLinkForm, state, form, ({ episodeId, linkId, rev }) =>
    change(episodeId, 'Take a link out', [{ op: 'remove', entity: 'WebLink', id: linkId, rev }]),
  );
}

export async function answerAllergen(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(allergenForm, state, form, async ({ episodeId, ...fact }) => {
    const at = new Date();
    const position = await nextPlace('AllergenFact', fact.foodId);
    const reason = 'said on the publish page';
    return change(
      episodeId,
      fact.standing === 'confirmed' ? 'Confirm an allergen' : 'Deny an allergen',
      [
        {
          op: 'create',
          entity: 'AllergenFact',
          row: { id: uuid(), position, ...fact, reason, at },
        },
      ],
      at,
    );
  });
}

export async function askAgain(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(askAgainForm, state, form, ({ episodeId, factId, rev }) =>
    change(episodeId, 'Ask again about an allergen', [
      { op: 'remove', entity: 'AllergenFact', id: factId, rev },
    ]),
  );
}
