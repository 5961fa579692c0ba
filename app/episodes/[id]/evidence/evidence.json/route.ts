import { stableJson } from '#lib/episode/stable-json';
import { readEvidence } from '../read-evidence';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The evidence as data: lock, numbers with their working, sources, statements. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const read = await readEvidence((await params).id);
  if (!read) return new Response('There is no such episode.\n', { status: 404 });
  return new Response(stableJson(read.evidence), {
    headers: {
      'content-type': 'application/json; charset=utf-8',
      'content-disposition': 'attachment; filename="evidence.json"',
      'cache-control': 'no-store',
    },
  });
}
