import { listAnswer, type Context } from '../answer';

/** Where each card goes in the cut, as stills on an open timeline. */
export function GET(request: Request, context: Context): Promise<Response> {
  return listAnswer(request, context, 'cards.otio', 'application/json');
}
