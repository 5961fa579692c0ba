import type { Problem } from '#lib/result';
import { readBody } from '../../../../_sync/read-body';
import { MOST_BYTES, readAskedReplan } from './replan/schema';

/** An answer that no one keeps: what is asked of a day changes with every entry. */
export const answer = (body: unknown, status = 200): Response =>
  Response.json(body, { status, headers: { 'cache-control': 'no-store' } });

/** What is wrong with a question, in words. */
export const fault = (status: number, code: string, message: string, path = ''): Response =>
  answer({ problems: [{ path, code, message }] satisfies Problem[] }, status);

type Asked = Extract<ReturnType<typeof readAskedReplan>, { ok: true }>['value'];

/** What a device asks of its day, or the answer that says why it cannot be read. Only JSON is taken. */
export async function readAsked(request: Request): Promise<Asked | Response> {
  const type = request.headers.get('content-type') ?? '';
  if (!/^application\/json\s*(;|$)/i.test(type)) {
    return fault(415, 'not-json', 'Send the question as application/json.');
  }
  const body = await readBody(request, MOST_BYTES);
  if (body === null) return fault(413, 'too-long', `A request may have ${MOST_BYTES} bytes.`);
  const asked = readAskedReplan(body);
  return asked.ok ? asked.value : answer({ problems: asked.problems }, 400);
}
