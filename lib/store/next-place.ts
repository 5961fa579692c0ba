import 'server-only';
import { database } from '#lib/store/client';
import { PARENTS } from '#lib/store/parents';

/** Tables whose new rows stand after the others of their parent. */
export type Placed = Exclude<
  keyof typeof PARENTS,
  'Weighing' | 'DayEpisode' | 'FoodVersion' | 'StockLot' | 'StockMove' | 'Pack' | 'Price'
>;

interface Asked {
  aggregate(args: object): Promise<{ readonly _max: { readonly position: number | null } }>;
}

/** The place after the last row of a parent, removed ones included, so that none is taken twice; 0 for the first. */
export async function nextPlace(entity: Placed, parentId: string): Promise<number> {
  const name = `${entity.charAt(0).toLowerCase()}${entity.slice(1)}`;
  const table = (database() as unknown as Record<string, Asked>)[name] as Asked;
  const { _max } = await table.aggregate({
    where: { [PARENTS[entity].column]: parentId },
    _max: { position: true },
  });
  return _max.position === null ? 0 : _max.position + 1;
}

/** So many places after the last row of a parent, in order. */
export async function nextPlaces(
  entity: Placed,
  parentId: string,
  count: number,
): Promise<readonly number[]> {
  const first = await nextPlace(entity, parentId);
  return Array.from({ length: count }, (_, at) => first + at);
}
