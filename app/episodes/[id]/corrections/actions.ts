'use server';

import { revalidatePath } from 'next/cache';
import { v7 as uuid } from 'uuid';
import { episodeFigures } from '#lib/figures/episode-figures';
import { lockStanding } from '#lib/lock/lock-standing';
import { inputsHash, takeLock } from '#lib/lock/numbers-lock';
import { failed, ok } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { readEpisodeFile } from '#lib/store/read-episode';
import { nextLockSeq, readLastLock } from '#lib/store/read-locks';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { change } from '../change';
import { CORRECT } from './correct-label';
import { readHeld } from './read-held';
import { correctionForm } from './schema';

const refused = (code: string, message: string) => failed({ path: '', code, message });

/**
 * Makes a correction: locks the numbers as they are now and says what they correct, both or neither. Where something
 * changed since the page was opened, or nothing that went out is written otherwise, nothing is kept.
 */
export async function makeCorrection(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(correctionForm, state, form, async (sent) => {
    const { episodeId, lockId, inputsSha256, reason, on } = sent;
    const at = new Date();
    const file = await readEpisodeFile(episodeId, at.toISOString());
    if (!file) return refused('gone', 'This episode is no longer there.');
    const figures = episodeFigures(file);
    const held = await readHeld(file, figures, at);
    if (held?.lock.id !== lockId || inputsHash(file) !== inputsSha256) {
      revalidatePath(`/episodes/${episodeId}`, 'layout');
      return refused(
        'changed',
        'Something changed since this page was opened: nothing was kept. Look at the numbers again and correct to those.',
      );
    }
    if (held.needed.kind !== 'numbers') {
      return refused(
        'none',
        'No number that went out is written otherwise: there is nothing to correct.',
      );
    }
    const last = await readLastLock(episodeId);
    const edits: Edit[] = [];
    let newLockId = last?.id ?? '';
    if (!last || lockStanding(last.snapshot, file) !== 'locked') {
      const { snapshot, sha256, schemaVersion, engineVersion } = takeLock(file, figures);
      newLockId = uuid();
      const seq = await nextLockSeq(episodeId);
      const row = {
        id: newLockId,
        episodeId,
        seq,
        snapshot,
        sha256,
        schemaVersion,
        engineVersion,
        at,
      };
      edits.push({ op: 'create', entity: 'NumbersLock', row });
    }
    const row = { id: uuid(), oldLockId: held.lock.id, newLockId, reason, on };
    edits.push({ op: 'create', entity: 'Correction', row });
    const done = await change(episodeId, CORRECT, edits, at);
    if (!done.ok) return done;
    revalidatePath('/corrections');
    return ok('The correction is made, and the numbers are locked as they are now.');
  });
}
