import { stableJson } from '#lib/episode/stable-json';
import { fileOf, loadList, queryOf } from '../load-list';

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The shopping list as data, with the working of each need: milligrams, millilitres, minor units, local dates. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const loaded = await loadList((await params).id, queryOf(request));
  return fileOf(loaded && stableJson(loaded.list), 'application/json', 'shopping.json');
}
