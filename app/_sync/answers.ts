import type { z } from 'zod';
import type { Problem } from '#lib/result';
import { readBody } from './read-body';
import { MOST_BYTES, readSent } from './sent-entries';

/** An answer to a device, which nobody keeps. */
export const answer = (body: unknown, status = 200): Response =>
  Response.json(body, { status, headers: { 'cache-control': 'no-store' } });

export const faults = (status: number, problems: readonly Problem[]): Response =>
  answer({ problems }, status);

/**
 * What a device sent, or the answer that refuses it. Only JSON is taken: a form of another site cannot send it without
 * asking first.
 */
export async function sentOr<T extends z.ZodType>(
  request: Request,
  shape: T,
): Promise<{ readonly sent: z.output<T> } | { readonly refusal: Response }> {
  const type = request.headers.get('content-type') ?? '';
  if (!/^application\/json\s*(;|$)/i.test(type)) {
    const message = 'Send the entries as application/json.';
    return { refusal: faults(415, [{ path: '', code: 'not-json', message }]) };
  }
  const body = await readBody(request, MOST_BYTES);
  if (body === null) {
    const message = `A request may have ${MOST_BYTES} bytes: send fewer entries at once.`;
    return { refusal: faults(413, [{ path: '', code: 'too-long', message }]) };
  }
  const sent = readSent(body, shape);
  return sent.ok ? { sent: sent.value } : { refusal: faults(400, sent.problems) };
}
