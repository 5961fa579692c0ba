import { revalidatePath } from 'next/cache';
import { keepListEvents } from '#lib/store/list-events';
import { isListThere, readListEvents } from '#lib/store/read-list-events';
import { answer, faults, sentOr } from '../../../../_sync/answers';
import { readAsked } from '../../../../_sync/sent-entries';
import { askedNews, sentEvents } from './schema';

const GONE = { path: 'scope', code: 'gone', message: 'This episode is no longer there.' };

/** Keeps what a device entered on a shopping list, and names each entry: kept, already there, or refused and why. */
export async function POST(request: Request): Promise<Response> {
  const read = await sentOr(request, sentEvents);
  if ('refusal' in read) return read.refusal;
  const { scope, events } = read.sent;
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
  const asked = readAsked(new URL(request.url).searchParams, askedNews);
  if (!asked.ok) return faults(400, asked.problems);
  const { list, after } = asked.value;
  if (!(await isListThere(list))) return faults(404, [GONE]);
  return answer(await readListEvents(list, after));
}
