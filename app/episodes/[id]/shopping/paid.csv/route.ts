import { paidRows } from '#lib/shopping/basket';
import { foldList } from '#lib/shopping/fold-list';
import { paidCsv } from '#lib/shopping/paid-csv';
import { readListEvents } from '#lib/store/read-list-events';
import { fileOf, loadList, queryOf } from '../load-list';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** What was paid for a list, as a table. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const loaded = await loadList((await params).id, queryOf(request));
  if (!loaded) return fileOf(null, 'text/plain', 'paid.csv');
  const { asked, files, list } = loaded;
  const { events } = await readListEvents(asked.scope);
  const names = new Map(
    files.flatMap(({ foods, shops }) => [...foods, ...shops].map(({ id, name }) => [id, name])),
  );
  return fileOf(paidCsv(paidRows(foldList(events)), list.episode, names), 'text/csv', 'paid.csv');
}
