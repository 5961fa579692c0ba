import { dishesOnDay } from '#lib/overview/dishes-on-day';
import type { Problem } from '#lib/result';
import { GONE_DAY } from '#lib/store/day-events';
import { readDayEvents } from '#lib/store/read-day-events';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readBody } from '../../events/read-body';
import { MOST_BYTES, readAskedReplan } from '../replan/schema';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

const answer = (body: unknown, status = 200): Response =>
  Response.json(body, { status, headers: { 'cache-control': 'no-store' } });
const fault = (status: number, code: string, message: string, path = ''): Response =>
  answer({ problems: [{ path, code, message }] satisfies Problem[] }, status);

/** What was weighed and what can be said of it, with the entries that wait on the device that asks. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const type = request.headers.get('content-type') ?? '';
  if (!/^application\/json\s*(;|$)/i.test(type)) {
    return fault(415, 'not-json', 'Send the question as application/json.');
  }
  const body = await readBody(request, MOST_BYTES);
  if (body === null) return fault(413, 'too-long', `A request may have ${MOST_BYTES} bytes.`);
  const asked = readAskedReplan(body);
  if (!asked.ok) return answer({ problems: asked.problems }, 400);
  const { dayId, events } = asked.value;
  // What is known first: an entry that arrives between the two is then told twice rather than not at all.
  const known = await readDayEvents(dayId);
  const file = await readEpisodeFile((await params).id, new Date().toISOString());
  if (file?.day?.id !== dayId) return fault(404, 'gone', GONE_DAY, 'dayId');
  const kept = new Set(known.events.map(({ id }) => id));
  const waiting = events.filter(({ id }) => !kept.has(id));
  return answer(dishesOnDay(file, known.events, waiting));
}
