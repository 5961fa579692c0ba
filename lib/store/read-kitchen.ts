import 'server-only';
import { kitchenSchema, type Kitchen } from '#lib/episode/kitchen-schema';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { kitchenFrom } from '#lib/store/from-rows';
import { ALIVE, KITCHEN_INCLUDE, type KitchenTree } from '#lib/store/load';
import { pageOf, wanted, type Page, type PageOf } from '#lib/store/page';

/** A kitchen with the revisions of its row and parts, by id, for forms. */
export interface StoredKitchen {
  readonly id: string;
  readonly kitchen: Kitchen;
  readonly revs: Readonly<Record<string, number>>;
}

/** A kitchen by id, or the creator's first; null if there is none yet. */
export async function readKitchen(
  id?: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<StoredKitchen | null> {
  const row = await database().kitchen.findFirst({
    where: { creatorId, ...ALIVE, ...(id === undefined ? {} : { id }) },
    orderBy: { id: 'asc' },
    include: KITCHEN_INCLUDE,
  });
  return row && storedKitchen(row);
}

/** The creator's kitchens, the oldest first. */
export async function readKitchens(
  of: PageOf = {},
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Page<StoredKitchen>> {
  const found = await database().kitchen.findMany({
    where: { creatorId, ...ALIVE, ...(of.after ? { id: { gt: of.after } } : {}) },
    orderBy: { id: 'asc' },
    take: wanted(of),
    include: KITCHEN_INCLUDE,
  });
  const page = pageOf(found, of);
  return { ...page, rows: page.rows.map(storedKitchen) };
}

function storedKitchen(row: KitchenTree): StoredKitchen {
  const changes = row.ovens.flatMap((oven) => oven.changes);
  const { ovens, appliances, scales, spreads, houseShots } = row;
  const parts = [row, ...ovens, ...changes, ...appliances, ...scales, ...spreads, ...houseShots];
  return {
    id: row.id,
    kitchen: kitchenSchema.parse(kitchenFrom(row)),
    revs: Object.fromEntries(parts.map(({ id, rev }) => [id, rev])),
  };
}
