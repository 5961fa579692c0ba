import { download } from '../../../download';
import { lookOfRequest } from './look';
import { placeLists, readCards } from './read-cards';

export interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

export const NO_EPISODE = 'There is no such episode.\n';

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
  return download(text, type, name);
}
