import 'server-only';
import type { EpisodeFile } from '#lib/episode/schema';
import { dishesOnDay, dishesTogether, type DishesOnDay } from '#lib/overview/dishes-on-day';
import type { DayEvent } from '#lib/shoot/day-log';
import { readEpisodeFile } from '#lib/store/read-episode';

/**
 * The dishes of a filming day with what can be said of them. Each episode's numbers come from a file of its own, so
 * that none of them knows of another's dishes.
 * @param kept entries that the files' readings hold already
 * @param waiting entries that only a device has
 */
export async function dishesOfDay(
  file: EpisodeFile,
  kept: readonly DayEvent[],
  waiting: readonly DayEvent[],
): Promise<DishesOnDay> {
  const own = dishesOnDay(file, kept, waiting);
  const others = await Promise.all(
    (file.also ?? []).map(({ id }) => readEpisodeFile(id, file.savedAt, { dayId: file.day?.id })),
  );
  const theirs = others.flatMap((other) => (other ? [dishesOnDay(other, kept, waiting)] : []));
  return dishesTogether(file, own, theirs);
}
