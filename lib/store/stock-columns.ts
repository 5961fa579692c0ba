import type { PackPrice, PantryFood } from '#lib/episode/stock-schema';
import type { RowInput } from '#lib/store/rows';

/** What was said of a food at home, as the columns of its row. */
export function pantryColumns({
  foodId,
  answer,
  opened,
}: PantryFood): Omit<RowInput<'PantryFood'>, 'id'> {
  return {
    foodId,
    answer: answer?.is ?? null,
    answeredOn: answer?.on ?? null,
    remark: answer?.remark ?? '',
    openedDays: opened?.days ?? null,
    openedSource: opened?.source ?? '',
  };
}

/** A price as the columns of its row; one of several at once, or with a limit, is an offer. */
export function priceColumns(price: PackPrice): Omit<RowInput<'Price'>, 'id' | 'packId'> {
  const { count, most, until } = price;
  return { ...price, offer: count !== 1 || most !== null || until !== null };
}
