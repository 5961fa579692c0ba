import { saidPlaces } from '#lib/claims/said-places';
import { readEpisodeFile } from '#lib/store/read-episode';
import { transcriptTexts } from '../lines';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** All lines of the texts of the edit: they may be ten thousand, and are drawn as far as they are seen. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const file = await readEpisodeFile((await params).id, new Date().toISOString(), { edit: true });
  if (!file) return new Response('There is no such episode.\n', { status: 404 });
  return Response.json(transcriptTexts(saidPlaces(file)), {
    headers: { 'cache-control': 'no-store' },
  });
}
