import { v7 as uuid } from 'uuid';
import { packSchema, stockLotSchema, type EpisodeFile } from '#lib/episode/schema';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { packColumns } from '#lib/store/episode-columns';
import { lotFrom, packFrom } from '#lib/store/from-rows';
import { create } from '#lib/store/import-episode';
import type { ImportIds } from '#lib/store/import-ids';
import { ALIVE, byIds, LOT_INCLUDE, PACK_INCLUDE } from '#lib/store/load';
import { dataText } from '#lib/store/same-data';

/**
 * A file's stock and packs as new rows. One that is there already with equal data is not added again, so
 * that reading a file twice does not fill the larder twice.
 */
export async function importStock(
  { stock, packs }: Pick<EpisodeFile, 'stock' | 'packs'>,
  creatorId: string,
  ids: ImportIds,
): Promise<Edit[]> {
  const lots = stock.map((lot, at) => ({
    ...lot,
    foodId: ids.of('food', lot.foodId, `stock[${at}].foodId`),
  }));
  const wantedPacks = packs.map((pack, at) => ({
    ...pack,
    foodId: ids.of('food', pack.foodId, `packs[${at}].foodId`),
  }));
  const known = await storedTexts(
    [...new Set([...lots, ...wantedPacks].map((row) => row.foodId))],
    creatorId,
  );
  return [
    ...known.lacking(lots).flatMap(({ foodId, place, openedOn, useBy, moves }) => {
      const lotId = uuid();
      return [
        create('StockLot', { id: lotId, foodId, place, openedOn, useBy }),
        ...moves.map(({ kind, deltaMg, at }) =>
          create('StockMove', { id: uuid(), lotId, kind, deltaMg, at, eventId: null }),
        ),
      ];
    }),
    ...known.lacking(wantedPacks).flatMap((pack) => {
      const packId = uuid();
      const row = create('Pack', { id: packId, foodId: pack.foodId, ...packColumns(pack) });
      if (!pack.price) return [row];
      const price = { id: uuid(), packId, shopId: null, ...pack.price, offer: false };
      return [row, create('Price', price)];
    }),
  ];
}

/** What is stored of some foods, as texts that are used up one by one: two equal lots are two lots. */
async function storedTexts(foodIds: readonly string[], creatorId: string) {
  const own = { ...ALIVE, creatorId };
  const lots = await byIds(foodIds, (some) =>
    database().stockLot.findMany({
      where: { ...own, foodId: { in: some } },
      include: LOT_INCLUDE,
    }),
  );
  const packs = await byIds(foodIds, (some) =>
    database().pack.findMany({ where: { ...own, foodId: { in: some } }, include: PACK_INCLUDE }),
  );
  const counts = new Map<string, number>();
  for (const row of [
    ...lots.map((lot) => stockLotSchema.parse(lotFrom(lot))),
    ...packs.map((pack) => packSchema.parse(packFrom(pack))),
  ]) {
    counts.set(dataText(row), (counts.get(dataText(row)) ?? 0) + 1);
  }
  return {
    lacking<T>(wanted: readonly T[]): T[] {
      return wanted.filter((row) => {
        const left = counts.get(dataText(row)) ?? 0;
        counts.set(dataText(row), left - 1);
        return left <= 0;
      });
    },
  };
}
