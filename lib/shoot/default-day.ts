import type { FilmingDay } from '#lib/episode/day-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { UNSAID_DAY } from '#lib/episode/unsaid';
import { daysBefore } from '#lib/shoot/evening';

/** Hours that meals are kept apart where nobody said: 3 (common practice, no source). */
const MEAL_GAP_MIN = 180;
/** A filming day begins at nine where nobody said (common practice, no source). */
const START_MIN = 540;

/** A filming day without the ids of its own rows. */
export interface DefaultDay {
  readonly date: string;
  readonly kind: FilmingDay['kind'];
  readonly startMin: number;
  readonly wrapByMin: number | null;
  readonly mealGapMin: number;
  readonly lightMarginMin: number;
  readonly outfit: string;
  readonly segmentIds: readonly string[];
}

/**
 * The local date of the next day that can begin at nine: today before that, else tomorrow, so that a day made in the
 * evening is not over before it began.
 * @param minute of today's clock
 */
export function nextFilmingDate(today: string, minute: number): string {
  return minute <= START_MIN ? today : daysBefore(today, -1);
}

/**
 * The filming day that an episode begins with: all its segments in viewing order from nine. A day of eating
 * (two dishes or more that are eaten) is filmed as lived; one dish or a batch is packed.
 * @param date local date, `YYYY-MM-DD`: `nextFilmingDate`, unless the person says another
 */
export function defaultDay({ episode }: Pick<EpisodeFile, 'episode'>, date: string): DefaultDay {
  const meals = episode.segments.filter((segment) =>
    segment.steps.some((step) => step.role === 'eat'),
  );
  const eaten = episode.segments.filter(
    (segment) => segment.recipe !== null && segment.eaten.num > 0,
  );
  const asLived = Math.max(meals.length, eaten.length) > 1;
  return {
    date,
    kind: asLived ? 'asLived' : 'packed',
    startMin: START_MIN,
    wrapByMin: null,
    mealGapMin: MEAL_GAP_MIN,
    ...UNSAID_DAY,
    segmentIds: episode.segments.map((segment) => segment.id),
  };
}
