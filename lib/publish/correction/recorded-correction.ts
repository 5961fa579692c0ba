import { readSnapshot } from '#lib/lock/locked-snapshot';
import { correctionNeeded, type CorrectedNumber } from '#lib/publish/correction/correction-of';
import {
  correctionFoot,
  correctionReply,
  type CorrectionSaid,
} from '#lib/publish/correction/correction-words';

/** A correction that was made, told from the two locks that it stands between. */
export interface RecordedCorrection extends CorrectionSaid {
  /** Old and new; none where a lock cannot be read any more. */
  readonly numbers: readonly CorrectedNumber[];
  readonly foot: string;
  readonly reply: string;
}

/**
 * A correction told again from its locks, which never change: the same numbers and the same words each time, whatever
 * has become of the episode since.
 * @param before canonical JSON of the lock that had gone out
 * @param after canonical JSON of the lock that stands in its place
 */
export function recordedCorrection(
  said: CorrectionSaid,
  before: string,
  after: string,
): RecordedCorrection {
  const numbers = numbersBetween(before, after);
  return {
    ...said,
    numbers,
    foot: correctionFoot(numbers, said),
    reply: correctionReply(numbers, said),
  };
}

function numbersBetween(before: string, after: string): readonly CorrectedNumber[] {
  const since = readSnapshot(after);
  if (!since?.file) return [];
  return correctionNeeded(before, { file: since.file, figures: since.figures }).numbers;
}
