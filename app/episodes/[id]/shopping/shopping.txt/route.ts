import { shoppingList } from '#lib/shopping/shopping-list';
import { shoppingText } from '#lib/shopping/shopping-text';
import { readEpisodeFile } from '#lib/store/read-episode';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The shopping list as plain text. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const file = await readEpisodeFile((await params).id, new Date().toISOString());
  if (!file) return new Response('There is no such episode.\n', { status: 404 });
  return new Response(shoppingText(shoppingList(file)), {
    headers: {
      'content-type': 'text/plain; charset=utf-8',
      'content-disposition': 'attachment; filename="shopping.txt"',
      'cache-control': 'no-store',
    },
  });
}
