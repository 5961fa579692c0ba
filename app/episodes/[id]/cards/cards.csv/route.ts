import { listAnswer, type Context } from '../answer';

/** Where each card goes in the cut, as a table. */
export function GET(request: Request, context: Context): Promise<Response> {
  return listAnswer(request, context, 'cards.csv', 'text/csv; charset=utf-8; header=present');
}
