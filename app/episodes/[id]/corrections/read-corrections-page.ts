import 'server-only';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures, type EpisodeFigures } from '#lib/figures/episode-figures';
import { readSnapshot } from '#lib/lock/locked-snapshot';
import { inputsHash, lockHolds } from '#lib/lock/numbers-lock';
import { changedFoods } from '#lib/publish/correction/changed-foods';
import { proposedReason } from '#lib/publish/correction/correction-words';
import { oldNumbersIn } from '#lib/publish/correction/old-numbers';
import { pastedNumbers } from '#lib/publish/correction/pasted-description';
import { sweep, type SweepRow } from '#lib/publish/correction/sweep';
import { readCopiesOut, readCorrections } from '#lib/store/read-corrections';
import { readEpisodeFile } from '#lib/store/read-episode';
import { countHistoryLocks, readLastLock } from '#lib/store/read-locks';
import { localDate, localMoment } from '#lib/units/local-date';
import type { LastAct } from '../_components/last-change';
import { lastAct } from '../last-act';
import type { CorrectionsPage, GoneOut, MadeCorrection } from './_components/view';
import { CORRECT } from './correct-label';
import { otherUses } from './other-uses';
import { readHeld } from './read-held';
import { correctedNumbers, toldCorrections } from './told-correction';

/** Corrections on a page. */
const ON_A_PAGE = 10;

/** All that the page of an episode's corrections shows; null where there is no such episode. */
export async function readCorrectionsPage(
  id: string,
  at: Date,
  after: string | undefined,
): Promise<CorrectionsPage | null> {
  const file = await readEpisodeFile(id, at.toISOString(), { publish: true });
  if (!file) return null;
  const page = await readCorrections({ episodeId: id, take: ON_A_PAGE, after });
  const recorded = (await toldCorrections(page.rows)).map(({ told, ...row }): MadeCorrection => ({
    ...{ ...told, id: row.id, seqs: [row.before.seq, row.after.seq] },
  }));
  const common = {
    ...{ episodeId: id, title: file.episode.title, today: localDate(at, file.kitchen.zone) },
    ...{ inputsSha256: inputsHash(file), recorded, next: page.next },
    history: await countHistoryLocks(id),
    last: toldLast(await lastAct(file), after === undefined ? recorded[0] : undefined),
  };
  // An older part of the list says nothing of now.
  if (after !== undefined) return { ...common, went: null, pasted: null, swept: [] };
  const figures = episodeFigures(file);
  const went = await readGoneOut(file, figures, at);
  return {
    ...{ ...common, went },
    pasted: went?.isPublic ? null : await readPasted(id, figures, at),
    swept: await readSwept(file, recorded),
  };
}

/** What stands under an episode that was out before it came here, where its description was pasted. */
async function readPasted(id: string, figures: EpisodeFigures, at: Date) {
  const file = await readEpisodeFile(id, at.toISOString(), { edit: true });
  return file && pastedNumbers(file, figures);
}

/** The last change; where that is the last correction, in words that say what it did. */
function toldLast(last: LastAct | null, made: MadeCorrection | undefined): LastAct | null {
  if (last?.label !== CORRECT || !made) return last;
  const words = `The correction is made, and the numbers are locked as they are now: lock ${String(made.seqs[1])}`;
  return { ...last, words };
}

/** What went out and what of it is otherwise now; null where nothing did. */
async function readGoneOut(
  file: EpisodeFile,
  figures: EpisodeFigures,
  at: Date,
): Promise<GoneOut | null> {
  const held = await readHeld(file, figures, at);
  if (!held) return null;
  const { id } = file.episode;
  const moment = (when: Date) => localMoment(when, file.kitchen.zone);
  const { lock: went, needed } = held;
  const then = needed.kind === 'none' ? null : readSnapshot(went.snapshot)?.file;
  const wrongFoods = [];
  for (const food of then ? changedFoods(then, file) : []) {
    wrongFoods.push(await otherUses(food, id));
  }
  return {
    ...{ lockId: went.id, seq: went.seq, at: moment(went.at), needed, wrongFoods },
    copiedAt: went.copiedAt && moment(went.copiedAt),
    isPublic: held.isPublic,
    copiedSince: held.lastSeq > went.seq ? held.lastSeq : null,
    lockedSince: needed.kind === 'none' ? went.seq : await holdingSeq(file),
    reason: proposedReason(needed.inputs, needed.otherEngine),
  };
}

/** The number of the last lock where it holds; null where none does. */
async function holdingSeq(file: EpisodeFile): Promise<number | null> {
  const last = await readLastLock(file.episode.id);
  const frozen = last && readSnapshot(last.snapshot);
  return last && frozen && lockHolds(frozen, file) ? last.seq : null;
}

/** What went out before the last correction of the episode's own; none where there is none. */
async function readSwept(
  file: EpisodeFile,
  recorded: readonly MadeCorrection[],
): Promise<readonly SweepRow[]> {
  const last = recorded.find(({ historyOnly }) => !historyOnly);
  if (!last) return [];
  const { id } = file.episode;
  const copies = await readCopiesOut(id);
  const texts = copies.map((copy) => ({ ...copy, at: localMoment(copy.at, file.kitchen.zone) }));
  const corrected = await correctedNumbers(id);
  const { pieces = [], replies = [] } = file.publish ?? {};
  const old = replies.flatMap((reply) => {
    const found = oldNumbersIn(reply, file, corrected);
    return found.length > 0 ? [{ id: reply.id, comment: reply.comment, old: found }] : [];
  });
  return sweep(last.seqs[1], texts, pieces, old);
}
