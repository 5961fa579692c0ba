import { numbersToPublish } from '#lib/publish/from-lock';
import { structuredData } from '#lib/publish/structured/structured-data';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readLastLock } from '#lib/store/read-locks';
import { download } from '../../../../download';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The episode as JSON-LD. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const { id } = await params;
  const file = await readEpisodeFile(id, new Date().toISOString());
  if (!file) return new Response('There is no such episode.\n', { status: 404 });
  const lock = await readLastLock(id);
  const { json } = structuredData(numbersToPublish(file, lock?.snapshot ?? null));
  return download(json, 'application/ld+json; charset=utf-8', 'structured-data.jsonld');
}
