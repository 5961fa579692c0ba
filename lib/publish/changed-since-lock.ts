import { dishesOf, type Dish } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import type { EpisodeFigures, Figures } from '#lib/figures/episode-figures';
import { isSameFigure } from '#lib/figures/same-figure';
import type { LockDifference, NumberChange } from '#lib/lock/lock-difference';

/** A dish that is not as it was locked. */
export interface ChangedDish {
  readonly segmentId: string;
  readonly title: string;
  /** `new` is not in the lock, `gone` only in the lock. */
  readonly kind: 'touched' | 'new' | 'gone';
  /** "1409 → 1420 kcal", or what in it has changed. */
  readonly words: string;
}

/** What has changed under a lock, as a whole and dish by dish. */
export interface ChangedSinceLock {
  /** In words, without a full stop. */
  readonly reason: string;
  /** In viewing order, those that are gone last. */
  readonly dishes: readonly ChangedDish[];
  readonly difference: LockDifference;
}

/** An episode with its figures. */
interface Reckoned {
  readonly file: EpisodeFile;
  readonly figures: EpisodeFigures;
}

/**
 * Tells what has changed under a lock dish by dish. A dish whose number is another one only so that all add up again
 * has not changed.
 * @param then what was locked
 * @param reason why the lock holds no more, in words
 * @param difference of the two
 */
export function changedSinceLock(
  then: Reckoned,
  now: Reckoned,
  reason: string,
  difference: LockDifference,
): ChangedSinceLock {
  const [before, after] = [then, now].map(({ file }) => dishesOf(file.episode.segments));
  if (!before || !after) throw new Error('there are two sides');
  const locked = new Set(before.map(({ id }) => id));
  const alive = new Set(after.map(({ id }) => id));
  const is = ({ id: segmentId, title }: Dish, kind: ChangedDish['kind'], words: string) => [
    { segmentId, title, kind, words },
  ];
  return {
    reason,
    dishes: [
      ...after.flatMap((dish): ChangedDish[] => {
        if (!locked.has(dish.id)) return is(dish, 'new', 'not in the lock');
        const moved = !isSame(figuresOf(then, dish), figuresOf(now, dish));
        const words = touched(dish, difference, moved);
        return words === null ? [] : is(dish, 'touched', words);
      }),
      ...before
        .filter(({ id }) => !alive.has(id))
        .flatMap((dish) => is(dish, 'gone', 'in the lock, and no longer in the episode')),
    ],
    difference,
  };
}

const figuresOf = ({ figures }: Reckoned, { id }: Dish) =>
  figures.dishes.find(({ segmentId }) => segmentId === id)?.whole ?? {};

/** Alike in every nutrient that both have, but for the last digits of floating point. */
function isSame(then: Figures, now: Figures): boolean {
  return Object.values(then).every((was) => {
    const is = now[was.nutrient];
    return !is || isSameFigure(was, is);
  });
}

/** What has changed of a dish in a few words; null where nothing has. */
function touched(dish: Dish, { numbers, inputs }: LockDifference, moved: boolean): string | null {
  const input = inputs.find(({ segmentId }) => segmentId === dish.id);
  if (!moved && !input) return null;
  const portions = new Set(dish.recipe.portions.map(({ id }) => id));
  const own = numbers.filter(({ scope }) =>
    scope.kind === 'portion'
      ? portions.has(scope.portionId)
      : scope.kind !== 'day' && scope.segmentId === dish.id,
  );
  const told = TOLD.flatMap((nutrient) => {
    const change = own.find((each) => each.scope.kind === 'whole' && each.nutrient === nutrient);
    return change && isMoved(change) ? [numberWords(change)] : [];
  });
  if (told.length > 0) return told.join(', ');
  const [first] = own.filter(isMoved);
  if (first) return `${first.part}, ${first.label}: ${numberWords(first)}`;
  if (input) return `${input.what}: ${input.from || 'nothing'} → ${input.to || 'nothing'}`;
  return own.some(({ rangeOnly }) => rangeOnly)
    ? 'only the range of its numbers has changed'
    : 'no number of it by a whole unit';
}

/** Written otherwise, and not only so that the numbers beside it add up. */
const isMoved = ({ rangeOnly, sumOnly }: NumberChange) => !rangeOnly && !sumOnly;

/** A change is told by these first. */
const TOLD = ['energyKcal', 'protein'] as const;

function numberWords({ from, to, unit }: NumberChange): string {
  return `${from?.text ?? 'none'} → ${to?.text ?? 'none'} ${unit}`;
}
