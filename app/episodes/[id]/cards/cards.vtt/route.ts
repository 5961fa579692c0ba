import { listAnswer, type Context } from '../answer';

/** Where each card goes in the cut, as WebVTT metadata. */
export function GET(request: Request, context: Context): Promise<Response> {
  return listAnswer(request, context, 'cards.vtt', 'text/vtt; charset=utf-8');
}
