import { GONE_DAY } from '#lib/store/day-events';
import { readDayEvents } from '#lib/store/read-day-events';
import { readEpisodeFile } from '#lib/store/read-episode';
import { answer, fault, readAsked } from '../asked';
import { dishesOfDay } from '../dishes-of-day';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** What was weighed and what can be said of it, with the entries that wait on the device that asks. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const asked = await readAsked(request);
  if (asked instanceof Response) return asked;
  const { dayId, events } = asked;
  // What is known first: an entry that arrives between the two is then told twice rather than not at all.
  const known = await readDayEvents(dayId);
  const file = await readEpisodeFile((await params).id, new Date().toISOString(), { dayId });
  if (file?.day?.id !== dayId) return fault(404, 'gone', GONE_DAY, 'dayId');
  const kept = new Set(known.events.map(({ id }) => id));
  const waiting = events.filter(({ id }) => !kept.has(id));
  return answer(await dishesOfDay(file, known.events, waiting));
}
