import { minuteOf } from '#lib/shoot/local-time';
import { isFilmingNow } from '#lib/shoot/now-and-next';
import { GONE_DAY } from '#lib/store/day-events';
import { readDayEvents } from '#lib/store/read-day-events';
import { readEpisodeFile } from '#lib/store/read-episode';
import { plannedDay } from '#lib/work/day-searches';
import { replannedDay } from '#lib/work/replans';
import { answer, fault, readAsked } from '../asked';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** Another order of the day from an instant on, to be looked at; taking it is an entry of the day. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const asked = await readAsked(request);
  if (asked instanceof Response) return asked;
  const { dayId, at, events } = asked;
  const file = await readEpisodeFile((await params).id, new Date().toISOString(), { dayId });
  if (file?.day?.id !== dayId) return fault(404, 'gone', GONE_DAY, 'dayId');
  const nowMin = minuteOf(new Date(at), file.day.date, file.kitchen.zone);
  if (!isFilmingNow(nowMin)) {
    return fault(400, 'another-day', 'The order is made anew on the filming day itself.', 'at');
  }
  const { plan } = await plannedDay(file, 'whole');
  const known = await readDayEvents(dayId);
  try {
    const task = { file, planned: plan.entries, events: [...known.events, ...events], nowMin };
    return answer(await replannedDay(task));
  } catch (error) {
    console.error('No new order for the day:', error);
    return fault(500, 'failed', 'No new order was found: the one that you have stays.');
  }
}
