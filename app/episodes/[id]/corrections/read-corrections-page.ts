import 'server-only';
import { episodeFigures } from '#lib/figures/episode-figures';
import { lockStanding } from '#lib/lock/lock-standing';
import { readSnapshot } from '#lib/lock/locked-snapshot';
import { inputsHash } from '#lib/lock/numbers-lock';
import { changedFoods } from '#lib/publish/correction/changed-foods';
import { proposedReason } from '#lib/publish/correction/correction-words';
import { sweep } from '#lib/publish/correction/sweep';
import { readCopiesOut, readCorrections } from '#lib/store/read-corrections';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readLastLock, readLocks } from '#lib/store/read-locks';
import { localDate, localMoment } from '#lib/units/local-date';
import type { CorrectionsPage } from './_components/view';
import { otherUses } from './other-uses';
import { readHeld } from './read-held';
import { toldCorrection } from './told-correction';

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
  const { zone } = file.kitchen;
  const today = localDate(at, zone);
  const moment = (when: Date) => localMoment(when, zone);
  const figures = episodeFigures(file);
  const held = await readHeld(file, figures, at);
  const page = await readCorrections({ episodeId: id, take: ON_A_PAGE, after });
  const common = {
    ...{ episodeId: id, title: file.episode.title, today, inputsSha256: inputsHash(file) },
    recorded: page.rows.map((row) => ({
      id: row.id,
      seqs: [row.before.seq, row.after.seq] as const,
      ...toldCorrection(row),
    })),
    next: page.next,
  };
  const [last] = after === undefined ? page.rows : [];
  const texts = last
    ? (await readCopiesOut(id)).map((copy) => ({ ...copy, at: moment(copy.at) }))
    : [];
  const swept = last ? sweep(last.after.seq, texts, file.publish?.pieces ?? []) : [];
  if (!held) {
    const history = (await readLocks(id)).filter(({ historyOnly }) => historyOnly);
    return { ...common, went: null, historyOnly: history.length, swept };
  }
  const { lock: went, needed } = held;
  const then = needed.kind === 'none' ? null : readSnapshot(went.snapshot)?.file;
  const foods = then ? changedFoods(then, file) : [];
  const newest = await readLastLock(id);
  const holds = newest && lockStanding(newest.snapshot, file) === 'locked';
  const wrongFoods = [];
  for (const food of foods) wrongFoods.push(await otherUses(food, id));
  return {
    ...common,
    swept,
    historyOnly: 0,
    went: {
      ...{ lockId: went.id, seq: went.seq, at: moment(went.at) },
      copiedAt: went.copiedAt && moment(went.copiedAt),
      copiedSince: held.lastSeq > went.seq ? held.lastSeq : null,
      needed,
      lockedSince: holds ? newest.seq : null,
      reason: proposedReason(needed.inputs, needed.otherEngine),
      wrongFoods,
    },
  };
}
