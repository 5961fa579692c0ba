import 'server-only';
import type { CorrectedNumber } from '#lib/publish/correction/correction-of';
import {
  recordedCorrection,
  type RecordedCorrection,
} from '#lib/publish/correction/recorded-correction';
import { readCorrections, type StoredCorrection } from '#lib/store/read-corrections';
import { readFrozen } from '#lib/store/read-locks';

/** A correction told, and whether it came as history alone, so that nothing of it goes out. */
export interface ToldCorrection extends RecordedCorrection {
  readonly historyOnly: boolean;
}

/** How many are remembered: a correction and its locks never change, and reading two locks takes a tenth of a second. */
const REMEMBERED = 200;
const told = new Map<string, ToldCorrection>();

/** A stored correction with its numbers and words; its locks are read the first time alone. */
export async function toldCorrection({ id, ...stored }: StoredCorrection): Promise<ToldCorrection> {
  const known = told.get(id);
  if (known) return known;
  const { reason, on, before, after, episodeId } = stored;
  const locks = await readFrozen(episodeId, [before.id, after.id]);
  const [from, to] = [locks.get(before.id), locks.get(after.id)];
  const fresh = {
    ...recordedCorrection({ reason, on }, from?.snapshot ?? '', to?.snapshot ?? ''),
    historyOnly: [from, to].some((lock) => lock?.historyOnly !== false),
  };
  const [oldest] = told.keys();
  if (told.size >= REMEMBERED && oldest !== undefined) told.delete(oldest);
  told.set(id, fresh);
  return fresh;
}

/** Corrections as pages list them: each as it is kept, with its numbers and words. */
export async function toldCorrections<T extends StoredCorrection>(
  rows: readonly T[],
): Promise<readonly (T & { readonly told: ToldCorrection })[]> {
  const all = [];
  for (const row of rows) all.push({ ...row, told: await toldCorrection(row) });
  return all;
}

/** Corrections at the foot of a description at most: older ones have been there long. Common practice, no source. */
const AT_THE_FOOT = 20;

/** An episode's own corrections, none that came as history, the last first. */
export async function ownCorrections(episodeId: string): Promise<readonly ToldCorrection[]> {
  const { rows } = await readCorrections({ episodeId, take: AT_THE_FOOT });
  const all = await toldCorrections(rows);
  return all.flatMap(({ told: each }) => (each.historyOnly ? [] : each));
}

/** An episode's own corrections as they stand at the foot of its description, the last first. */
export async function correctionTexts(episodeId: string): Promise<readonly string[]> {
  return (await ownCorrections(episodeId)).map(({ foot }) => foot);
}

/** The numbers of each of them, old and new. */
export async function correctedNumbers(
  episodeId: string,
): Promise<readonly (readonly CorrectedNumber[])[]> {
  return (await ownCorrections(episodeId)).map(({ numbers }) => numbers);
}
