import type { CorrectionNeeded } from '#lib/publish/correction/correction-of';
import type { PastedNumber } from '#lib/publish/correction/pasted-description';
import type { SweepRow } from '#lib/publish/correction/sweep';
import type { HistoryCount } from '#lib/store/read-locks';
import type { LastAct } from '../../_components/last-change';
import type { WrongFood } from '../other-uses';
import type { ToldCorrection } from '../told-correction';

/** A correction that was made. */
export interface MadeCorrection extends ToldCorrection {
  readonly id: string;
  /** The numbers of the locks before and after. */
  readonly seqs: readonly [before: number, after: number];
}

/** What went out, and what of it is otherwise now. */
export interface GoneOut {
  readonly lockId: string;
  readonly seq: number;
  /** The moment of the lock as read. */
  readonly at: string;
  /** When a text was first copied with it, as read; null where none was. */
  readonly copiedAt: string | null;
  /** The number of the last lock that a text was copied with since, without a correction; null where none was. */
  readonly copiedSince: number | null;
  /** The day of publishing has come or a correction was made; else nobody knows whether the text was ever pasted. */
  readonly isPublic: boolean;
  readonly needed: CorrectionNeeded;
  /** The number of the lock that holds now; null where none does. */
  readonly lockedSince: number | null;
  /** To begin with. */
  readonly reason: string;
  readonly wrongFoods: readonly WrongFood[];
}

/** What the page of an episode's corrections draws from. */
export interface CorrectionsPage {
  readonly episodeId: string;
  readonly title: string;
  /** Local date, `YYYY-MM-DD`. */
  readonly today: string;
  /** Hash of what the numbers rest on now. */
  readonly inputsSha256: string;
  /** Null where nothing has gone out yet, and on an older part of the list. */
  readonly went: GoneOut | null;
  /**
   * Numbers of the description that was pasted here which are others now; null where none was pasted, or where what went
   * out is known.
   */
  readonly pasted: readonly PastedNumber[] | null;
  /** Locks that came with a zip and hold nothing here. */
  readonly history: HistoryCount;
  readonly last: LastAct | null;
  /** The last made first. */
  readonly recorded: readonly MadeCorrection[];
  readonly next: string | null;
  /** What went out before the last correction; none where there is no correction. */
  readonly swept: readonly SweepRow[];
}
