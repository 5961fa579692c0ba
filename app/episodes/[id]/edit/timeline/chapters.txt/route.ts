import { chapterLines } from '#lib/cut/chapters';
import { chaptersFile, type Context } from '../../_timeline/files';

/** The chapters as lines for a description. */
export async function GET(_request: Request, context: Context): Promise<Response> {
  const write = (chapters: Parameters<typeof chapterLines>[0]) =>
    `${chapterLines(chapters).join('\n')}\n`;
  return chaptersFile(context, write, 'text/plain; charset=utf-8', 'chapters.txt');
}
