import { revalidatePath } from 'next/cache';
import { z } from 'zod';
import type { Problem } from '#lib/result';
import { readShoppingFiles } from '#lib/store/read-shopping';
import { makeTakenFood } from '#lib/store/taken-food';
import { localDate } from '#lib/units/local-date';
import { readBody } from '../../../../_sync/read-body';
import { queryOf } from '../load-list';
import { askedList } from '../scope';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

const MOST_BYTES = 1_000;
const sent = z.strictObject({ eventId: z.string().regex(/^[\w:.-]{1,56}$/) });

const answer = (body: unknown, status = 200): Response =>
  Response.json(body, { status, headers: { 'cache-control': 'no-store' } });
const fault = (status: number, problem: Problem): Response =>
  answer({ problems: [problem] }, status);

/** Makes what an entry says was taken instead a food of the pantry, once, and says which food it is. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const type = request.headers.get('content-type') ?? '';
  const message = 'Send {"eventId": …} as application/json.';
  if (!/^application\/json\s*(;|$)/i.test(type)) {
    return fault(415, { path: '', code: 'not-json', message });
  }
  const read = sent.safeParse(jsonOf((await readBody(request, MOST_BYTES)) ?? ''));
  if (!read.success) return fault(400, { path: 'eventId', code: 'invalid', message });
  const { scope } = askedList((await params).id, queryOf(request));
  const at = new Date();
  const [file] = (await readShoppingFiles(scope, at.toISOString()))?.files ?? [];
  if (!file) {
    return fault(404, { path: '', code: 'gone', message: 'This episode is no longer there.' });
  }
  const { region } = file.episode;
  const dateRead = localDate(at, file.kitchen.zone);
  const made = await makeTakenFood(scope, read.data.eventId, { region, dateRead, at });
  if (!made.ok) return answer({ problems: made.problems }, 400);
  revalidatePath('/', 'layout');
  return answer({ foodId: made.value });
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
