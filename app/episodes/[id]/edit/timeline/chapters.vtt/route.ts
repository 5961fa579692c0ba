import { webVttChapters } from '#lib/cut/write-chapters';
import { chaptersFile, type Context } from '../../_timeline/files';

/** The chapters as a WebVTT file. */
export async function GET(_request: Request, context: Context): Promise<Response> {
  return chaptersFile(
    context,
    (chapters, endS) => (endS === null ? null : webVttChapters(chapters, endS)),
    'text/vtt; charset=utf-8',
    'chapters.vtt',
  );
}
