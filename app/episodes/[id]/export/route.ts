import { episodeFileText } from '#lib/episode/file';
import { readEpisodeFile } from '#lib/store/read-episode';
import { fileName } from './file-name';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The episode as a file, with all it needs. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const all = { edit: true, publish: true } as const;
  const file = await readEpisodeFile((await params).id, new Date().toISOString(), all);
  if (!file) return new Response('There is no such episode.\n', { status: 404 });
  return new Response(episodeFileText(file), {
    headers: {
      'content-type': 'application/json; charset=utf-8',
      'content-disposition': `attachment; filename="${fileName(file.episode.title)}"`,
      'cache-control': 'no-store',
    },
  });
}
