import 'server-only';
import { database } from '#lib/store/client';
import { PARENTS } from '#lib/store/parents';

/** Tables whose new rows stand after the others of their parent. */
export type Placed = Exclude<
  keyof typeof PARENTS,
  | 'Weighing'
  | 'DayEpisode'
  | 'FoodVersion'
  | 'StockLot'
  | 'StockMove'
  | 'Pack'
  | 'Price'
  | 'ReadingMend'
  | 'NamedFood'
  | 'Variant'
  | 'Reply'
>;

interface Asked {
  findUnique(args: object): Promise<{ readonly position: number } | null>;
  aggregate(args: object): Promise<{ readonly _max: { readonly position: number | null } }>;
}

/** The place after the last row of a parent, removed ones included, so that none is taken twice; 0 for the first. */
export async function nextPlace(entity: Placed, parentId: string): Promise<number> {
  const { _max } = await asked(entity).aggregate({
    where: { [PARENTS[entity].column]: parentId },
    _max: { position: true },
  });
  return _max.position === null ? 0 : _max.position + 1;
}

/** The place of a row, for another that is put in its stead; null where there is no such row. */
export async function placeOf(entity: Placed, id: string): Promise<number | null> {
  const row = await asked(entity).findUnique({ where: { id }, select: { position: true } });
  return row?.position ?? null;
}

function asked(entity: Placed): Asked {
  const name = `${entity.charAt(0).toLowerCase()}${entity.slice(1)}`;
  return (database() as unknown as Record<string, Asked>)[name] as Asked;
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
