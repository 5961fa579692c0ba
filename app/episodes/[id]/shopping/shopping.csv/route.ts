import { shoppingCsv } from '#lib/shopping/shopping-csv';
import { fileOf, loadList, queryOf } from '../load-list';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The shopping list as a table for other programs. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const loaded = await loadList((await params).id, queryOf(request));
  return fileOf(loaded && shoppingCsv(loaded.list), 'text/csv', 'shopping.csv');
}
