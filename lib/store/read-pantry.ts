import 'server-only';
import { stockLotSchema, type StockLot } from '#lib/episode/schema';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { lotFrom } from '#lib/store/from-rows';
import { ALIVE, LOT_INCLUDE } from '#lib/store/load';
import { pageOf, wanted, type Page, type PageOf } from '#lib/store/page';

/** A lot in stock with the food's name; its amount is the sum of its moves. */
export interface PantryLot {
  readonly id: string;
  readonly rev: number;
  readonly foodName: string;
  readonly lot: StockLot;
}

/** What is in stock, the newest lot first. */
export async function readPantry(
  of: PageOf = {},
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Page<PantryLot>> {
  const found = await database().stockLot.findMany({
    where: { creatorId, ...ALIVE, ...(of.after ? { id: { lt: of.after } } : {}) },
    orderBy: { id: 'desc' },
    take: wanted(of),
    include: { ...LOT_INCLUDE, food: { select: { name: true } } },
  });
  const page = pageOf(found, of);
  const rows = page.rows.map((row) => ({
    id: row.id,
    rev: row.rev,
    foodName: row.food.name,
    lot: stockLotSchema.parse(lotFrom(row)),
  }));
  return { ...page, rows };
}
