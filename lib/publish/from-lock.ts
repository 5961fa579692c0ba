import { dishesOf } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import {
  episodeFigures,
  type DishFigures,
  type EpisodeFigures,
  type Figures,
} from '#lib/figures/episode-figures';
import { lazily } from '#lib/figures/lazily';
import {
  confirmedOnly,
  publishedNumbers,
  type PublishedNumbers,
} from '#lib/figures/published-numbers';
import { lockDifference } from '#lib/lock/lock-difference';
import { UNREADABLE_LOCK, whyBroken, type LockStanding } from '#lib/lock/lock-standing';
import { readSnapshot, type LockedSnapshot } from '#lib/lock/locked-snapshot';
import { lockHolds } from '#lib/lock/numbers-lock';
import { allergensOfBoth, type AllergenList } from '#lib/publish/allergen-list';
import { changedSinceLock, type ChangedSinceLock } from '#lib/publish/changed-since-lock';
import { lockedFile } from '#lib/publish/locked-file';

/** What every text and picture that goes out is made of. */
export interface NumbersToPublish {
  /**
   * The episode: ingredients, foods, shares and region as they were locked, words as they are now. A dish that is new
   * since the lock has no recipe in it.
   */
  readonly file: EpisodeFile;
  readonly figures: EpisodeFigures;
  /** As they are copied: what nobody has confirmed is open. */
  readonly numbers: PublishedNumbers;
  /** A matter of safety and no numbers: what either the lock or the episode of now has. */
  readonly allergens: AllergenList;
  readonly standing: LockStanding;
  /** Whether the numbers are the lock's; false for a draft, and where a broken lock cannot be read any more. */
  readonly ofLock: boolean;
  /** UTC instant of the lock; null where the numbers are not of one. */
  readonly lockedAt: string | null;
  /** What has changed under the lock; null while nothing has, or there is none. */
  readonly changed: ChangedSinceLock | null;
}

/**
 * The one place that says which numbers go out: those of now while nothing is locked, else those of the lock, also
 * where it is broken, since they were said or published. A nutrient that is asked for only since the lock is worked out
 * of what was locked.
 * @param snapshot the last lock's canonical JSON as `takeLock` made it, or null where none was taken
 * @param live the figures as they are now
 * @example numbersToPublish(changedFile, lock.snapshot).standing // 'broken', with the numbers of the lock
 */
export function numbersToPublish(
  file: EpisodeFile,
  snapshot: string | null,
  live: EpisodeFigures = episodeFigures(file),
): NumbersToPublish {
  if (snapshot === null) return ofNow(file, live, null);
  const locked = readSnapshot(snapshot);
  if (locked && lockHolds(locked, file)) return ofHeld(file, live, locked);
  const difference = lockDifference(snapshot, file, live);
  const then = locked?.file;
  if (!locked || !then) {
    const reason = difference.inputs[0]?.what ?? UNREADABLE_LOCK;
    return ofNow(file, live, { reason, dishes: [], difference });
  }
  const reason = whyBroken(snapshot, file, live) ?? '';
  const frozenThen = { file: then, figures: locked.figures };
  const changed = changedSinceLock(frozenThen, { file, figures: live }, reason, difference);
  return ofBroken(file, { ...locked, file: then }, changed);
}

/** The episode as it is; where `changed` is given, because its lock cannot be read. */
function ofNow(
  file: EpisodeFile,
  figures: EpisodeFigures,
  changed: ChangedSinceLock | null,
): NumbersToPublish {
  return {
    ...{ file, figures, changed },
    numbers: confirmedOnly(publishedNumbers(file, figures)),
    allergens: allergensOfBoth(file, null),
    standing: changed === null ? 'draft' : 'broken',
    ofLock: false,
    lockedAt: null,
  };
}

function ofHeld(file: EpisodeFile, live: EpisodeFigures, locked: LockedSnapshot): NumbersToPublish {
  // Nothing under it has changed, so what is missing or waits is told in the words of now.
  const figures = frozen(live, locked.figures, (was, is) => ({
    ...was,
    ...(is ? { missing: is.missing, provisional: is.provisional } : {}),
  }));
  return {
    ...{ file, figures },
    numbers: confirmedOnly(publishedNumbers(file, figures)),
    allergens: allergensOfBoth(file, locked.file),
    standing: 'locked',
    ofLock: true,
    lockedAt: locked.file?.savedAt ?? null,
    changed: null,
  };
}

function ofBroken(
  live: EpisodeFile,
  locked: LockedSnapshot & { readonly file: EpisodeFile },
  changed: ChangedSinceLock,
): NumbersToPublish {
  const file = lockedFile(locked.file, live);
  const figures = frozen(episodeFigures(file), locked.figures, (was) => was);
  const place = new Map(dishesOf(locked.file.episode.segments).map(({ id }, index) => [id, index]));
  const at = ({ segmentId }: DishFigures) => place.get(segmentId) ?? 0;
  // Ties of the tally are decided by place: dishes moved since would print other numbers.
  const { region, nutrients, day, dayIsWhole } = figures;
  const dishes = [...figures.dishes].sort((a, b) => at(a) - at(b));
  const inOrder = { region, nutrients, day, dayIsWhole, dishes };
  return {
    ...{ file, figures, changed },
    standing: 'broken',
    numbers: confirmedOnly(publishedNumbers(locked.file, inOrder)),
    allergens: allergensOfBoth(live, locked.file),
    ofLock: true,
    lockedAt: locked.file.savedAt,
  };
}

type Figure = NonNullable<Figures[keyof Figures]>;
type Freeze = (was: Figure, is: Figure | undefined) => Figure;

/** Figures as they were locked, over the same worked out now: what a snapshot does not keep comes from these. */
function frozen(now: EpisodeFigures, locked: EpisodeFigures, freeze: Freeze): EpisodeFigures {
  const figuresOf = (is: Figures, was: Figures | undefined): Figures => ({
    ...is,
    ...Object.fromEntries(
      Object.values(was ?? {}).map((each) => [each.nutrient, freeze(each, is[each.nutrient])]),
    ),
  });
  const then = new Map(locked.dishes.map((dish) => [dish.segmentId, dish]));
  const dishes = now.dishes.map((dish): DishFigures => {
    const was = then.get(dish.segmentId);
    if (!was) return dish;
    const portions = new Map(was.portions.map((each) => [each.portionId, each.figures]));
    return lazily(
      {
        segmentId: dish.segmentId,
        title: dish.title,
        finishedMg: was.finishedMg,
        portions: dish.portions.map(({ portionId, name, figures }) => ({
          ...{ portionId, name },
          figures: figuresOf(figures, portions.get(portionId)),
        })),
      },
      {
        whole: () => figuresOf(dish.whole, was.whole),
        per100g: () => was.per100g && figuresOf(dish.per100g ?? {}, was.per100g),
        eaten: () => figuresOf(dish.eaten, was.eaten),
        lines: () => dish.lines,
      },
    );
  });
  return {
    region: locked.region,
    nutrients: [...new Set([...locked.nutrients, ...now.nutrients])],
    dishes,
    day: figuresOf(now.day, locked.day),
    dayIsWhole: locked.dayIsWhole,
  };
}
