import 'server-only';
import type { EditFacts } from '#lib/claims/edit-facts';
import type { EpisodeFile } from '#lib/episode/schema';
import { editFactsOf } from '#lib/overview/edit-facts-of';
import { shoppingList } from '#lib/shopping/shopping-list';
import { readDayEvents } from '#lib/store/read-day-events';
import { readDays } from '#lib/store/read-days';

/** What the logs of all its filming days and the shops say of an episode's dishes. */
export async function readEditFacts(file: EpisodeFile): Promise<EditFacts> {
  const days = await readDays(file.episode.id);
  const logs = await Promise.all(days.map(({ id }) => readDayEvents(id)));
  const events = logs.flatMap((log) => log.events);
  return editFactsOf(file, { events, costs: shoppingList(file).dishes });
}
