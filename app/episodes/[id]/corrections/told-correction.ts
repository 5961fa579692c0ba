import 'server-only';
import {
  recordedCorrection,
  type RecordedCorrection,
} from '#lib/publish/correction/recorded-correction';
import { readCorrections, type StoredCorrection } from '#lib/store/read-corrections';

/** How many are remembered: a correction and its locks never change, and reading two locks takes a tenth of a second. */
const REMEMBERED = 200;
const told = new Map<string, RecordedCorrection>();

/** A stored correction with its numbers and words. */
export function toldCorrection({ id, ...stored }: StoredCorrection): RecordedCorrection {
  const known = told.get(id);
  if (known) return known;
  const { reason, on, before, after } = stored;
  const fresh = recordedCorrection({ reason, on }, before.snapshot, after.snapshot);
  const [oldest] = told.keys();
  if (told.size >= REMEMBERED && oldest !== undefined) told.delete(oldest);
  told.set(id, fresh);
  return fresh;
}

/** Corrections at the foot of a description at most: older ones have been there long. Common practice, no source. */
const AT_THE_FOOT = 20;

/** An episode's corrections as they stand at the foot of its description, the last first. */
export async function correctionTexts(episodeId: string): Promise<readonly string[]> {
  const { rows } = await readCorrections({ episodeId, take: AT_THE_FOOT });
  return rows.map((row) => toldCorrection(row).foot);
}
