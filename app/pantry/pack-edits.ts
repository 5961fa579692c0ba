import 'server-only';
import { v7 as uuid } from 'uuid';
import { failed, ok, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { shopNamed } from '#lib/store/read-shops';
import { priceColumns } from '#lib/store/stock-columns';
import { printDay } from '#lib/units/print-date';
import type { packOf, TypedPrice } from './pack-schema';

type TypedPack = NonNullable<ReturnType<typeof packOf>>;

/** A pack of a food, and the price seen of it. */
export async function packEdits(
  foodId: string,
  { price, ...pack }: TypedPack,
  today: string,
): Promise<Result<Edit[]>> {
  const packId = uuid();
  const made: Edit = { op: 'create', entity: 'Pack', row: { id: packId, foodId, ...pack } };
  if (price === null) return ok([made]);
  const prices = await priceEdits(packId, price, today);
  return prices.ok ? ok([made, ...prices.value]) : prices;
}

/** A price of a pack, and its shop where it is a new one. A price of a day to come is a mistyped date. */
export async function priceEdits(
  packId: string,
  { shop, seenOn, ...price }: TypedPrice,
  today: string,
): Promise<Result<Edit[]>> {
  if (seenOn !== null && seenOn > today) {
    const message = `${printDay(seenOn)} is still to come: write the day on which the price was seen.`;
    return failed({ path: 'seenOn', code: 'to-come', message });
  }
  const { shopId, edits } = await shopNamed(shop);
  const columns = priceColumns({ ...price, shopId, seenOn: seenOn ?? today });
  return ok([...edits, { op: 'create', entity: 'Price', row: { id: uuid(), packId, ...columns } }]);
}
