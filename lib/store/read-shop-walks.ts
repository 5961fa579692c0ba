import 'server-only';
import { shopSchema, type Shop } from '#lib/episode/stock-schema';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { shopFrom } from '#lib/store/from-rows';
import { ALIVE } from '#lib/store/load';

/** A shop with the revision that a form sends back. */
export interface StoredShop {
  readonly shop: Shop;
  readonly rev: number;
}

/** Shops of one page; who walks through more has a list to look them up in. */
const MOST_SHOPS = 50;

/** The shops by name, with the sections in the order of walking. */
export async function readShopWalks(
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly StoredShop[]> {
  const rows = await database().shop.findMany({
    where: { ...ALIVE, creatorId },
    orderBy: [{ nameFolded: 'asc' }, { id: 'asc' }],
    take: MOST_SHOPS,
  });
  return rows.map((row) => ({ shop: shopSchema.parse(shopFrom(row)), rev: row.rev }));
}

/** One shop; null if there is none. */
export async function readShopWalk(
  id: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<StoredShop | null> {
  const row = await database().shop.findFirst({ where: { ...ALIVE, creatorId, id } });
  return row && { shop: shopSchema.parse(shopFrom(row)), rev: row.rev };
}
