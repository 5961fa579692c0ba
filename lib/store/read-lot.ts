import 'server-only';
import { stockLotSchema, type StockLot } from '#lib/episode/stock-schema';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { lotFrom } from '#lib/store/from-rows';
import { ALIVE, LOT_INCLUDE } from '#lib/store/load';

/** One lot with its ledger; null if there is none. */
export async function readLot(
  id: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<StockLot | null> {
  const found = await database().stockLot.findFirst({
    where: { id, creatorId, ...ALIVE },
    include: LOT_INCLUDE,
  });
  return found && stockLotSchema.parse(lotFrom(found));
}
