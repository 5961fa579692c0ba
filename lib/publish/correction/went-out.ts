import {
  correctionNeeded,
  type CorrectionNeeded,
  type NumbersNow,
} from '#lib/publish/correction/correction-of';

/** A lock of an episode, as far as viewers may know its numbers. */
export interface LockOut {
  readonly seq: number;
  /** Local date on which a text was first copied with it; null where none was. */
  readonly copiedOn: string | null;
  /** A correction led to it. */
  readonly correctedTo: boolean;
}

/**
 * The locks whose numbers viewers know and that no correction stands in the place of, the first first. Until the day of
 * publishing a text that is copied replaces the one copied before, since neither is out. From that day on, and after
 * a correction, what was copied is out: another copy changes nothing of what viewers have read, only a correction does.
 * @param locks those of one episode, in any order
 * @param publishOn local date of publishing; null where none is set, so that each copy replaces the one before
 * @example copied on the 9th, the 10th and the 13th, published on the 12th: the locks of the 10th and of the 13th
 */
export function locksOut<T extends LockOut>(
  locks: readonly T[],
  publishOn: string | null,
): readonly T[] {
  const told = locks
    .filter(({ copiedOn, correctedTo }) => copiedOn !== null || correctedTo)
    .sort((a, b) => a.seq - b.seq);
  const corrected = told.findLastIndex(({ correctedTo }) => correctedTo);
  if (corrected >= 0) return told.slice(corrected);
  const replaced = told.findLastIndex(
    ({ copiedOn }) => publishOn === null || (copiedOn !== null && copiedOn < publishOn),
  );
  return told.slice(Math.max(0, replaced));
}

/** What the numbers of now are held against, and what there is to put right of it. */
export interface HeldAgainst<T> {
  readonly lock: T;
  readonly needed: CorrectionNeeded;
}

/**
 * Holds the numbers of now against what viewers know: the first lock of `locksOut` that has a number written otherwise,
 * so that nothing is forgotten by locking and copying again; the last one where all of them agree. Null where none is.
 */
export function heldAgainst<T extends { readonly snapshot: string }>(
  out: readonly T[],
  now: NumbersNow,
): HeldAgainst<T> | null {
  let held: HeldAgainst<T> | null = null;
  for (const lock of out) {
    held = { lock, needed: correctionNeeded(lock.snapshot, now) };
    if (held.needed.kind === 'numbers') break;
  }
  return held;
}
