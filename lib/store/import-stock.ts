import { v7 as uuid } from 'uuid';
import type { EpisodeFile } from '#lib/episode/schema';
import { packSchema, stockLotSchema } from '#lib/episode/stock-schema';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { packColumns } from '#lib/store/episode-columns';
import { folded } from '#lib/store/fold';
import { lotFrom, packFrom } from '#lib/store/from-rows';
import { create } from '#lib/store/new-row';
import type { ImportIds } from '#lib/store/import-ids';
import { ALIVE, byIds, LOT_INCLUDE, PACK_INCLUDE } from '#lib/store/load';
import { dataText } from '#lib/store/same-data';
import { pantryColumns, priceColumns } from '#lib/store/stock-columns';

/**
 * A file's shops, stock, packs and words about foods at home as new rows. One that is there already with equal data
 * is not added again, so that reading a file twice does not fill the larder twice; a shop is known by its name, and
 * what is said of a food here stands.
 */
export async function importStock(
  { stock, packs, pantry, shops }: Pick<EpisodeFile, 'stock' | 'packs' | 'pantry' | 'shops'>,
  creatorId: string,
  ids: ImportIds,
): Promise<Edit[]> {
  const shopEdits = await importShops(shops, creatorId, ids);
  const lots = stock.map((lot, at) => ({
    ...lot,
    foodId: ids.of('food', lot.foodId, `stock[${at}].foodId`),
  }));
  const wantedPacks = packs.map((pack, at) => ({
    ...pack,
    foodId: ids.of('food', pack.foodId, `packs[${at}].foodId`),
    prices: pack.prices.map((price, nth) => ({
      ...price,
      shopId: price.shopId && ids.of('shop', price.shopId, `packs[${at}].prices[${nth}].shopId`),
    })),
  }));
  const known = await storedTexts(
    [...new Set([...lots, ...wantedPacks].map((row) => row.foodId))],
    creatorId,
  );
  return [
    ...shopEdits,
    ...known.lacking(lots).flatMap(({ id, foodId, place, openedOn, useBy, moves }) => {
      const lotId = ids.fresh(id);
      return [
        create('StockLot', { id: lotId, foodId, place, openedOn, useBy }),
        ...moves.map(({ kind, deltaMg, at }) =>
          create('StockMove', { id: uuid(), lotId, kind, deltaMg, at, eventId: null }),
        ),
      ];
    }),
    ...known.lacking(wantedPacks).flatMap((pack) => {
      const packId = ids.fresh(pack.id);
      const row = create('Pack', { id: packId, foodId: pack.foodId, ...packColumns(pack) });
      const prices = pack.prices.map((price) =>
        create('Price', { id: uuid(), packId, ...priceColumns(price) }),
      );
      if (!pack.price) return [row, ...prices];
      const price = { id: uuid(), packId, shopId: null, ...pack.price, offer: false };
      return [row, create('Price', price), ...prices];
    }),
    ...(await importPantry(pantry, creatorId, ids)),
  ];
}

/** Shops that no shop here is called like; in `ids` what each became. */
async function importShops(
  shops: EpisodeFile['shops'],
  creatorId: string,
  ids: ImportIds,
): Promise<Edit[]> {
  if (shops.length === 0) return [];
  const named = { in: shops.map(({ name }) => folded(name)) };
  const there = await database().shop.findMany({
    where: { ...ALIVE, creatorId, nameFolded: named },
    orderBy: { id: 'asc' },
  });
  return shops.flatMap(({ id, name, sections }) => {
    const known = there.find(({ nameFolded }) => nameFolded === folded(name));
    if (known) {
      ids.use('shop', id, known.id);
      return [];
    }
    return [create('Shop', { id: ids.mint('shop', id), name, sections })];
  });
}

/** What a file says of foods of which nothing is said here. */
async function importPantry(
  pantry: EpisodeFile['pantry'],
  creatorId: string,
  ids: ImportIds,
): Promise<Edit[]> {
  const wanted = pantry.map((said, at) => ({
    ...said,
    foodId: ids.of('food', said.foodId, `pantry[${at}].foodId`),
  }));
  const there = await byIds([...new Set(wanted.map(({ foodId }) => foodId))], (some) =>
    database().pantryFood.findMany({ where: { ...ALIVE, creatorId, foodId: { in: some } } }),
  );
  const known = new Set(there.map(({ foodId }) => foodId));
  return wanted
    .filter(({ foodId }) => !known.has(foodId))
    .map((said) => create('PantryFood', { id: uuid(), ...pantryColumns(said) }));
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
