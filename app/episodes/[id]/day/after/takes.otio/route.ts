import { takesOtio } from '#lib/cut/takes-otio';
import { download } from '../../../../../download';
import { NO_CLOCK, NO_DAY, type Context } from '../takes';
import { dayOfRequest } from '../../asked-day';
import { readAfter } from '../read-after';

/** The takes of the day as markers of an open timeline. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const after = await readAfter((await params).id, dayOfRequest(request));
  if (!after) return new Response(NO_DAY, { status: 404 });
  const { marks, seen, file } = after;
  if (!marks || !seen) return new Response(NO_CLOCK, { status: 404 });
  return download(
    takesOtio(file.episode.title, marks, seen.rate),
    'application/json',
    'takes.otio',
  );
}
