import { Readable } from 'node:stream';
import { plainName } from '#lib/units/plain-name';
import { cardZip } from '#lib/work/card-zip';
import { download } from '../../../../download';
import { NO_EPISODE, type Context } from '../answer';
import { lookOfRequest } from '../look';
import { placeLists, readCards } from '../read-cards';
import { zipJob } from '../zip-progress';

/** All cards of an episode with the lists of where they go, drawn while they are fetched. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const jobName = new URL(request.url).searchParams.get('job');
  const cards = await readCards((await params).id, lookOfRequest(request)).catch(
    (fault: unknown) => {
      zipJob(jobName, 0).over();
      throw fault;
    },
  );
  if (!cards) {
    zipJob(jobName, 0).over();
    return new Response(NO_EPISODE, { status: 404 });
  }
  const { files, places, source, look } = cards;
  const stop = new AbortController();
  const job = zipJob(jobName, files.length);
  const end = () => {
    stop.abort();
    job.over();
  };
  request.signal.addEventListener('abort', end);
  const at = new Date(source.lockedAt ?? source.file.savedAt);
  const zip = cardZip({ files, lists: placeLists(places), at }, stop.signal, job.drawn);
  zip.on('close', end);
  const name = `${plainName(source.file.episode.title) || 'episode'}-cards-${look.size}.zip`;
  return download(Readable.toWeb(zip) as ReadableStream<Uint8Array>, 'application/zip', name);
}
