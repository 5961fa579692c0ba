import 'server-only';
import type { EpisodeFile } from '#lib/episode/schema';
import { shelves, type Shelves } from '#lib/shopping/shelf-rows';
import { shoppingList, type ShoppingList } from '#lib/shopping/shopping-list';
import { readShoppingFiles } from '#lib/store/read-shopping';
import { localDate } from '#lib/units/local-date';
import { askedList, type AskedList } from './scope';

/** A shopping list with what it was made from. */
export interface LoadedList {
  readonly asked: AskedList;
  readonly files: readonly EpisodeFile[];
  readonly list: ShoppingList;
  readonly shelves: Shelves;
  /** The date in the person's kitchen. */
  readonly today: string;
}

/** The list that an address asks for; null where there is no such episode. */
export async function loadList(
  episodeId: string,
  query: URLSearchParams,
): Promise<LoadedList | null> {
  const asked = askedList(episodeId, query);
  const now = new Date();
  const read = await readShoppingFiles(asked.scope, now.toISOString());
  if (!read) return null;
  const { files, later } = read;
  const today = localDate(now, files[0]?.kitchen.zone ?? 'UTC');
  const list = shoppingList(files, { later, today });
  const shops = files.flatMap((file) => file.shops);
  return { asked, files, list, shelves: shelves(list, shops), today };
}

/** What of an address stands behind its question mark. */
export function queryOf(request: Request): URLSearchParams {
  return new URL(request.url).searchParams;
}

/** A list as a file to keep; the answer where there is no such episode. */
export function fileOf(text: string | null, type: string, name: string): Response {
  if (text === null) return new Response('There is no such episode.\n', { status: 404 });
  return new Response(text, {
    headers: {
      'content-type': `${type}; charset=utf-8`,
      'content-disposition': `attachment; filename="${name}"`,
      'cache-control': 'no-store',
    },
  });
}
