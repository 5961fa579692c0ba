import { lookOfRequest } from './look';
import { placeLists, readCards } from './read-cards';

export interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

export const NO_EPISODE = 'There is no such episode.\n';

/** A text or picture as a file of its own. */
export function answer(body: BodyInit, type: string, name: string): Response {
  return new Response(body, {
    headers: {
      'content-type': type,
      'content-disposition': `attachment; filename="${name}"`,
      'x-content-type-options': 'nosniff',
      'cache-control': 'no-store',
    },
  });
}

/** One of the lists of where each card goes. */
export async function listAnswer(
  request: Request,
  { params }: Context,
  name: string,
  type: string,
): Promise<Response> {
  const cards = await readCards((await params).id, lookOfRequest(request));
  if (!cards) return new Response(NO_EPISODE, { status: 404 });
  const text = placeLists(cards.places).get(name);
  if (text === undefined) {
    return new Response('At the rate of this cut no timecode is written.\n', { status: 404 });
  }
  return answer(text, type, name);
}
