import { captionsFile, type Context } from '../../_timeline/files';

/** Captions as SubRip. */
export async function GET(request: Request, context: Context): Promise<Response> {
  return captionsFile(request, context, 'subrip', 'application/x-subrip; charset=utf-8', 'srt');
}
