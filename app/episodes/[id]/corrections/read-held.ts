import 'server-only';
import type { EpisodeFile } from '#lib/episode/schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import { heldAgainst, type HeldAgainst } from '#lib/publish/correction/went-out';
import { readWentOut, type WentOut } from '#lib/store/read-corrections';
import { localDate } from '#lib/units/local-date';

/** What of an episode went out, held against its numbers of now. */
export interface ReadHeld extends HeldAgainst<WentOut> {
  /** The number of the last lock that was copied or corrected to; the held one's where it is that one. */
  readonly lastSeq: number;
  /** Its day of publishing has come or a correction was made; else a text was copied, and nobody knows. */
  readonly isPublic: boolean;
}

/**
 * What the numbers of now are held against; null where nothing has gone out: no text was copied, no correction made,
 * and the day of publishing has not come.
 */
export async function readHeld(
  file: EpisodeFile,
  figures: EpisodeFigures,
  at: Date,
): Promise<ReadHeld | null> {
  const { publishOn } = file.episode;
  const out = await readWentOut(file);
  const isDue = publishOn !== null && publishOn <= localDate(at, file.kitchen.zone);
  if (!isDue && !out.some(({ told }) => told)) return null;
  const held = heldAgainst(out, { file, figures });
  if (!held) return null;
  return {
    ...held,
    lastSeq: out.at(-1)?.seq ?? held.lock.seq,
    isPublic: isDue || out.some(({ correctedTo }) => correctedTo),
  };
}
