import 'server-only';
import { packPriceSchema, type PackPrice } from '#lib/episode/stock-schema';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE } from '#lib/store/load';

/** A price as it is kept, with its shop's name. */
export interface StoredPrice {
  readonly id: string;
  readonly rev: number;
  readonly packId: string;
  readonly price: PackPrice;
  /** Null where nobody said in which shop it was seen. */
  readonly shopName: string | null;
}

/** Prices of a food's packs that are read at most. */
const MOST = 200;

/** The prices of a food's packs, the last seen first. */
export async function readPrices(
  foodId: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly StoredPrice[]> {
  const rows = await database().price.findMany({
    where: { ...ALIVE, creatorId, pack: { foodId, ...ALIVE } },
    orderBy: [{ seenOn: 'desc' }, { id: 'desc' }],
    take: MOST,
    include: { shop: { select: { name: true } } },
  });
  return rows.map((row) => ({
    id: row.id,
    rev: row.rev,
    packId: row.packId,
    price: packPriceSchema.parse(row),
    shopName: row.shop?.name ?? null,
  }));
}
