import { readShoppingFiles } from '#lib/store/read-shopping';
import { queryOf } from '../load-list';
import { askedList } from '../scope';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The episodes of a list, whole, for working out on a phone in the shop what another label does to the dishes. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { scope } = askedList((await params).id, queryOf(request));
  const read = await readShoppingFiles(scope, new Date().toISOString());
  const headers = { 'cache-control': 'no-store' };
  if (!read) return Response.json({ files: [] }, { status: 404, headers });
  return Response.json({ files: read.files }, { headers });
}
