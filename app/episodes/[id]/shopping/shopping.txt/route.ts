import { shoppingText } from '#lib/shopping/shopping-text';
import { fileOf, loadList, queryOf } from '../load-list';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The shopping list as plain text. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const loaded = await loadList((await params).id, queryOf(request));
  return fileOf(loaded && shoppingText(loaded.list), 'text/plain', 'shopping.txt');
}
