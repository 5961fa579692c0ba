import { revalidatePath } from 'next/cache';
import type { Problem } from '#lib/result';
import { keepListEvents } from '#lib/store/list-events';
import { isListThere, readListEvents } from '#lib/store/read-list-events';
import { readBody } from '../../day/events/read-body';
import { MOST_BYTES, readAskedNews, readSentEvents } from './schema';

const answer = (body: unknown, status = 200): Response =>
  Response.json(body, { status, headers: { 'cache-control': 'no-store' } });
const faults = (status: number, problems: readonly Problem[]): Response =>
  answer({ problems }, status);

const GONE = { path: 'scope', code: 'gone', message: 'This episode is no longer there.' };

/**
 * Keeps what a device entered on a shopping list, and names each entry: kept, already there, or refused and why.
 * Only JSON is taken: a form of another site cannot send it without asking first.
 */
export async function POST(request: Request): Promise<Response> {
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
  const { scope, events } = sent.value;
  if (!(await isListThere(scope))) {
    // Each is named here too, so that a device knows that sending again is of no use.
    const refused = events.map(({ id }) => ({ id, problem: GONE }));
    return answer({ kept: [], already: [], refused }, 404);
  }
  const kept = await keepListEvents(scope, events, new Date());
  // What is put away stands in the pantry and comes off every list.
  const putAway = events.some(({ id, kind }) => kind === 'putAway' && kept.kept.includes(id));
  if (putAway) revalidatePath('/', 'layout');
  return answer(kept);
}

/** What was entered on a list after a cursor; all of it without one. */
export async function GET(request: Request): Promise<Response> {
  const asked = readAskedNews(new URL(request.url).searchParams);
  if (!asked.ok) return faults(400, asked.problems);
  const { list, after } = asked.value;
  if (!(await isListThere(list))) return faults(404, [GONE]);
  return answer(await readListEvents(list, after));
}
