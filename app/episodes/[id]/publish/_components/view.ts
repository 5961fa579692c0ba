import type { EpisodeFile } from '#lib/episode/schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import type { LockDifference } from '#lib/lock/lock-difference';
import type { PublishedNumbers } from '#lib/figures/published-numbers';
import type { SaidStanding } from '#lib/overview/said-standing';
import type { PromiseRow } from '#lib/overview/title-and-hook';
import type { Description } from '#lib/publish/description';
import type { DescriptionLayout } from '#lib/episode/publish-schema';
import type { ChangedDish } from '#lib/publish/changed-since-lock';
import { UNLOCKED, type LockTold } from '#lib/publish/lock-words';
import type { PieceRow } from '#lib/publish/piece-rows';
import type { StructuredData } from '#lib/publish/structured/structured-data';

import type { LastAct } from '../../_components/last-change';
import type { Copied } from './history-part';

/** The newest lock: when it was taken, and why it holds no more, or null while it holds. */
export interface NewestLock {
  readonly at: string;
  /** Its number among the episode's locks. */
  readonly seq: number;
  readonly sha256: string;
  readonly broken: string | null;
  readonly difference: LockDifference;
}

/** Numbers that went out and are to be put right in public. */
export interface PutRight {
  /** How many. */
  readonly numbers: number;
  /** The number of their lock. */
  readonly seq: number;
  /** A text was copied with it; else it is the last lock before the day of publishing. */
  readonly isCopied: boolean;
  /** The day of publishing has come or a correction was made; else a text was copied that may not be out yet. */
  readonly isPublic: boolean;
}

/** What the publish page draws from. */
export interface PublishPage {
  readonly file: EpisodeFile;
  readonly description: Description;
  readonly figures: EpisodeFigures;
  /** As the description writes them. */
  readonly numbers: PublishedNumbers;
  readonly revs: Readonly<Record<string, number>>;
  readonly last: LastAct | null;
  readonly lock: NewestLock | null;
  /** What viewers know has numbers that are others now; null where nothing has. */
  readonly putRight: PutRight | null;
  /** The numbers of the text are the lock's, also where it is broken. */
  readonly ofLock: boolean;
  /** Dishes that are not as they were locked. */
  readonly changed: readonly ChangedDish[];
  /** The house layout in use. */
  readonly layout: DescriptionLayout;
  /** Hash of what the numbers rest on now. */
  readonly inputsSha256: string;
  /** What was said in front of the camera, as it stands now. */
  readonly said: readonly SaidStanding[];
  /** What title and hook promise and these numbers do not bear out. */
  readonly promises: readonly PromiseRow[];
  readonly structured: StructuredData;
  /** What goes out by itself, in the order in which it was added. */
  readonly pieces: readonly PieceRow[];
  /** Newest first. */
  readonly copied: readonly Copied[];
}

/** How the text's numbers stand to the newest lock. */
export function toldOf({ lock, ofLock }: Pick<PublishPage, 'lock' | 'ofLock'>): LockTold {
  if (!lock) return UNLOCKED;
  const standing = lock.broken === null ? 'locked' : 'broken';
  return { standing, ofLock, at: lock.at, reason: lock.broken };
}

/** Revision of a row; one that the page does not know is refused by the store as changed elsewhere. */
export function revOf(page: Pick<PublishPage, 'revs'>, rowId: string): number {
  return page.revs[rowId] ?? 0;
}
