import { episodeFigures, type EpisodeFigures } from '#lib/figures/episode-figures';
import { readSnapshot } from '#lib/lock/locked-snapshot';
import { ENGINE_VERSION, lockHolds } from '#lib/lock/numbers-lock';

/**
 * Stands in place of the version of a snapshot's shape where a lock came from elsewhere and is not `agreesWithItself`:
 * it is kept as it came, as history, and none of its numbers goes out.
 */
export const HISTORY_SHAPE = 0;

/**
 * What a lock from elsewhere is found to be. `agrees`: its hash is that of its own inputs, and its figures are those
 * that come out of them. `otherEngine`: another version of the program worked it out, so nobody here can say. `unlike`:
 * its inputs or figures were changed after it was taken.
 */
export type LockConsistency = 'agrees' | 'otherEngine' | 'unlike';

/**
 * Holds a lock against itself: works its figures out once more, of the inputs that it froze.
 * @param snapshot canonical JSON as `takeLock` made it, from somewhere that nobody vouches for
 * @example agreesWithItself(takeLock(file).snapshot) // 'agrees'
 */
export function agreesWithItself(snapshot: string): LockConsistency {
  const locked = readSnapshot(snapshot);
  if (!locked?.file) return 'otherEngine';
  if (locked.engineVersion !== ENGINE_VERSION) return 'otherEngine';
  if (!lockHolds(locked, locked.file)) return 'unlike';
  const again = episodeFigures(locked.file, locked.figures.nutrients);
  return isSame(judgedPart(locked.figures), judgedPart(again)) ? 'agrees' : 'unlike';
}

/** What of figures is judged: numbers and what they are of. Words are told anew and may have been put better since. */
function judgedPart({ region, day, dayIsWhole, dishes }: EpisodeFigures) {
  return {
    ...{ region, day, dayIsWhole },
    dishes: dishes.map(({ segmentId, whole, per100g, finishedMg, eaten, portions }) => ({
      ...{ segmentId, whole, eaten },
      // Locks taken before they were kept have none.
      ...(per100g ? { per100g } : {}),
      ...(finishedMg ? { finishedMg } : {}),
      portions: portions.map(({ portionId, figures }) => ({ portionId, figures })),
    })),
  };
}

const WORDS = new Set(['text', 'reason', 'foodName', 'sources']);

/** As close as two sums of the same doubles come that were added in another order. */
const CLOSE = 1e-9;

/**
 * Whether all that was locked is there again. What a lock has not, as a nutrient that is asked for only since, is no
 * matter: it is worked out of the inputs where it goes out.
 */
function isSame(was: unknown, is: unknown): boolean {
  if (typeof was === 'number' && typeof is === 'number') {
    return Math.abs(was - is) <= CLOSE * Math.max(1, Math.abs(was), Math.abs(is));
  }
  if (Array.isArray(was)) {
    const others: readonly unknown[] | null = Array.isArray(is) ? is : null;
    return (
      others !== null &&
      was.length === others.length &&
      was.every((each, at) => isSame(each, others[at]))
    );
  }
  if (typeof was !== 'object' || was === null) return was === is;
  if (typeof is !== 'object' || is === null) return false;
  const found = new Map(Object.entries(is));
  return Object.entries(was).every(([key, each]) => WORDS.has(key) || isSame(each, found.get(key)));
}
