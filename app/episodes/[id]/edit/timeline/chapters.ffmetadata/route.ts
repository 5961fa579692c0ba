import { ffmpegChapters } from '#lib/cut/write-chapters';
import { chaptersFile, type Context } from '../../_timeline/files';

/** The chapters as a metadata file of FFmpeg. */
export async function GET(_request: Request, context: Context): Promise<Response> {
  return chaptersFile(
    context,
    (chapters, endS) => (endS === null ? null : ffmpegChapters(chapters, endS)),
    'text/plain; charset=utf-8',
    'chapters.ffmetadata',
  );
}
