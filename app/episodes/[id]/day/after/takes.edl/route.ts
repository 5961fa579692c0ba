import { takesEdl } from '#lib/cut/takes-edl';
import { download } from '../../../../../download';
import { NO_CLOCK, NO_DAY, type Context } from '../takes';
import { dayOfRequest } from '../../asked-day';
import { readAfter } from '../read-after';

/** The takes of the day as an edit decision list. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const after = await readAfter((await params).id, dayOfRequest(request));
  if (!after) return new Response(NO_DAY, { status: 404 });
  const { marks, seen, file } = after;
  if (!marks || !seen) return new Response(NO_CLOCK, { status: 404 });
  const text = takesEdl(file.episode.title, marks, seen.rate);
  return download(text, 'text/plain; charset=us-ascii', 'takes.edl');
}
