import { GONE_DAY, keepDayEvents } from '#lib/store/day-events';
import { isDayOf, readDayEvents } from '#lib/store/read-day-events';
import { answer, faults, sentOr } from '../../../../_sync/answers';
import { readAsked } from '../../../../_sync/sent-entries';
import { askedNews, sentEvents } from './schema';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** Keeps what a device entered on the day, and names each entry: kept, already there, or refused and why. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const read = await sentOr(request, sentEvents);
  if ('refusal' in read) return read.refusal;
  const { dayId, events } = read.sent;
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
  const asked = readAsked(new URL(request.url).searchParams, askedNews);
  if (!asked.ok) return faults(400, asked.problems);
  const { day, after } = asked.value;
  if (!(await isDayOf((await params).id, day))) {
    return faults(404, [{ path: 'day', code: 'gone', message: GONE_DAY }]);
  }
  return answer(await readDayEvents(day, after));
}
