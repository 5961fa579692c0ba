import type { Problem } from '#lib/result';
import { GONE_DAY, keepDayEvents } from '#lib/store/day-events';
import { isDayOf, readDayEvents } from '#lib/store/read-day-events';
import { readBody } from './read-body';
import { MOST_BYTES, readAskedNews, readSentEvents } from './schema';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

const answer = (body: unknown, status = 200): Response =>
  Response.json(body, { status, headers: { 'cache-control': 'no-store' } });
const faults = (status: number, problems: readonly Problem[]): Response =>
  answer({ problems }, status);

/**
 * Keeps what a device entered on the day, and names each entry: kept, already there, or refused and why.
 * Only JSON is taken: a form of another site cannot send it without asking first.
 */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const type = request.headers.get('content-type') ?? '';
  if (!/^application\/json\s*(;|$)/i.test(type)) {
    const message = 'Send the entries as application/json.';
    return faults(415, [{ path: '', code: 'not-json', message }]);
  }
  const body = await readBody(request, MOST_BYTES);
  if (body === null) {
    const message = `A request may have ${MOST_BYTES} bytes: send fewer entries at once.`;
    return faults(413, [{ path: '', code: 'too-long', message }]);
  }
  const sent = readSentEvents(body);
  if (!sent.ok) return faults(400, sent.problems);
  const { dayId, events } = sent.value;
  if (await isDayOf((await params).id, dayId)) {
    return answer(await keepDayEvents(dayId, events, new Date()));
  }
  // Each is named here too, so that a device knows that sending again is of no use.
  const gone = { path: 'dayId', code: 'gone', message: GONE_DAY };
  const refused = events.map(({ id }) => ({ id, problem: gone }));
  return answer({ kept: [], already: [], refused, unknownSteps: [] }, 404);
}

/** What was entered on the day after a cursor; all of it without one. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const asked = readAskedNews(new URL(request.url).searchParams);
  if (!asked.ok) return faults(400, asked.problems);
  const { day, after } = asked.value;
  if (!(await isDayOf((await params).id, day))) {
    return faults(404, [{ path: 'day', code: 'gone', message: GONE_DAY }]);
  }
  return answer(await readDayEvents(day, after));
}
