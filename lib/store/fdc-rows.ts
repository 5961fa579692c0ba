import type { FdcFood } from '#lib/foods/fdc-food';
import { fdcPartId } from '#lib/foods/fdc-ids';
import { readGtin } from '#lib/foods/gtin';
import { searchTokens } from '#lib/foods/search-tokens';
import { SHARED_CREATOR_ID } from '#lib/store/creators';
import { folded } from '#lib/store/fold';
import { foodRows, versionRow } from '#lib/store/food-rows';

const COMMON = { creatorId: SHARED_CREATOR_ID, rev: 1, deletedAt: null } as const;

/** A row of a published table: it belongs to nobody. */
export const shared = <T extends object>(row: T) => ({ ...row, ...COMMON });

export function fdcFoodRows({ food }: FdcFood) {
  const { Food: row } = foodRows({ ...food, measures: [], allergens: [] }, new Date(0));
  return shared({ ...row, nameFolded: folded(row.name) });
}

export function fdcVersionRow({ food, product }: FdcFood, seq: number) {
  return shared({ ...versionRow(food.id, food.version), ...product, seq });
}

/** The words under which a food is found. */
export function fdcTokenRows({ food, key, product }: FdcFood) {
  const read = product.gtin === null ? null : readGtin(product.gtin);
  const gtin14 = read?.kind === 'right' ? read.gtin14 : null;
  const kind = product.brand === null && product.gtin === null ? 'table' : 'product';
  const { tokens, rank } = searchTokens(food.name, kind, gtin14);
  return tokens.map((token, index) =>
    shared({ id: fdcPartId('token', key, index), token, foodId: food.id, rank }),
  );
}
