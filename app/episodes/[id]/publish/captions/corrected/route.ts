import { acceptedInto } from '#lib/overview/caption-corrections';
import { download } from '../../../../../download';
import { readCaptions } from '../read-captions';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

const refused = (words: string, status: number): Response => new Response(`${words}\n`, { status });

const FORMATS = {
  webvtt: { type: 'text/vtt; charset=utf-8', ending: 'vtt' },
  subrip: { type: 'application/x-subrip; charset=utf-8', ending: 'srt' },
} as const;

/** The captions named in the address, with the corrections that were ticked and no others. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const asked = new URL(request.url).searchParams;
  const read = await readCaptions((await params).id);
  if (!read) return refused('There is no such episode.', 404);
  const captions = read.captions.find(({ text }) => text.id === asked.get('text'));
  if (!captions) return refused('There are no such captions here.', 404);
  if (captions.version !== asked.get('version')) {
    return refused(
      'The captions or the numbers were changed since the page was opened: go back, open it again and look at the corrections.',
      409,
    );
  }
  const name = asked.get('format') === 'webvtt' ? 'webvtt' : 'subrip';
  const { type, ending } = FORMATS[name];
  const accepted = new Set(asked.getAll('accept'));
  const { text } = acceptedInto(captions, (key) => accepted.has(key), name);
  return download(text, type, `captions.${ending}`);
}
