import { Readable } from 'node:stream';
import type { ReadableStream } from 'node:stream/web';
import { fileName } from '../file-name';
import { bundleEntries } from './bundle-entries';
import { bundleStream } from '#lib/work/bundle/write-bundle';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** All of an episode as one zip, sent as it is packed. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const at = new Date();
  const bundle = await bundleEntries((await params).id, at, request.signal);
  if (!bundle) return new Response('There is no such episode.\n', { status: 404 });
  const body = Readable.toWeb(bundleStream(bundle.entries, at)) as ReadableStream<Uint8Array>;
  return new Response(body as BodyInit, {
    headers: {
      'content-type': 'application/zip',
      'content-disposition': `attachment; filename="${fileName(bundle.title, 'bundle.zip')}"`,
      'cache-control': 'no-store',
    },
  });
}
