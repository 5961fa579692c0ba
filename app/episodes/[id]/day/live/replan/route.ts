import type { Problem } from '#lib/result';
import { minuteOf } from '#lib/shoot/local-time';
import { isFilmingNow } from '#lib/shoot/now-and-next';
import { GONE_DAY } from '#lib/store/day-events';
import { readDayEvents } from '#lib/store/read-day-events';
import { readEpisodeFile } from '#lib/store/read-episode';
import { plannedDay } from '#lib/work/day-searches';
import { replannedDay } from '#lib/work/replans';
import { readBody } from '../../events/read-body';
import { MOST_BYTES, readAskedReplan } from './schema';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

const answer = (body: unknown, status = 200): Response =>
  Response.json(body, { status, headers: { 'cache-control': 'no-store' } });
const fault = (status: number, code: string, message: string, path = ''): Response =>
  answer({ problems: [{ path, code, message }] satisfies Problem[] }, status);

/** Another order of the day from an instant on, to be looked at; taking it is an entry of the day. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const type = request.headers.get('content-type') ?? '';
  if (!/^application\/json\s*(;|$)/i.test(type)) {
    return fault(415, 'not-json', 'Send the question as application/json.');
  }
  const body = await readBody(request, MOST_BYTES);
  if (body === null) return fault(413, 'too-long', `A request may have ${MOST_BYTES} bytes.`);
  const asked = readAskedReplan(body);
  if (!asked.ok) return answer({ problems: asked.problems }, 400);
  const { dayId, at, events } = asked.value;
  const file = await readEpisodeFile((await params).id, new Date().toISOString());
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
