import { isOffer } from '#lib/episode/stock-schema';
import type { FoodTree, KitchenTree, LotTree, PackTree, PantryRow, ShopRow } from '#lib/store/load';

/**
 * Rows as plain data, still to be checked by the schemas of the areas that own it.
 * Each is the other way of a function in `food-rows.ts` or `episode-columns.ts`.
 */

/** An instant as text; whole seconds without a fraction: `2026-05-02T08:00:00Z`. */
export function instantText(at: Date): string {
  return at.toISOString().replace('.000Z', 'Z');
}

type VersionRow = Omit<FoodTree['versions'][number], 'measures'>;

export function versionFrom(version: VersionRow) {
  const { servingDecimals, servingText, secondBasis, secondValues, refusePercent } = version;
  return {
    ...version,
    serving:
      servingDecimals === null || servingText === null
        ? null
        : {
            massMg: version.servingMg,
            volumeMl: version.servingMl,
            decimals: servingDecimals,
            text: servingText,
            perPack: version.servings,
          },
    secondColumn: secondBasis === null ? null : { basis: secondBasis, values: secondValues },
    refuse:
      refusePercent === null
        ? null
        : {
            percent: refusePercent,
            text: version.refuseText ?? '',
            inValues: version.refuseInValues,
          },
  };
}

export function foodFrom(food: FoodTree) {
  const [version] = food.versions;
  if (!version) throw new Error(`Food ${food.id} has no version`);
  const yields = food.yields.map(({ ownHalfMg, lineId, ...observed }) => ({
    ...observed,
    own: ownHalfMg === null ? null : { halfMg: ownHalfMg, lineId },
  }));
  return { ...food, version: versionFrom(version), measures: version.measures, yields };
}

/** `used` are scales that were removed or stand elsewhere, but on which something here was weighed. */
export function kitchenFrom(kitchen: KitchenTree, used: KitchenTree['scales'] = []) {
  const known = new Set(kitchen.scales.map((scale) => scale.id));
  return { ...kitchen, scales: [...kitchen.scales, ...used.filter(({ id }) => !known.has(id))] };
}

export function lotFrom(lot: LotTree) {
  return { ...lot, moves: lot.moves.map((move) => ({ ...move, at: instantText(move.at) })) };
}

/**
 * The last price seen in no shop named, and the last of each shop and number beside it; an offer hides no
 * ordinary price.
 * @param shops those that are carried with it; prices of others are left out
 */
export function packFrom(pack: PackTree, shops?: readonly Pick<ShopRow, 'id'>[]) {
  const price = pack.prices.find((seen) => seen.shopId === null && !isOffer(seen));
  const latest = new Map<string, PackTree['prices'][number]>();
  for (const seen of pack.prices) {
    const key = `${seen.shopId ?? ''} ${seen.count} ${isOffer(seen)}`;
    if (seen.shopId === null ? !isOffer(seen) : !isThere(seen.shopId, shops)) continue;
    if (!latest.has(key)) latest.set(key, seen);
  }
  const prices = [...latest.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  return { ...pack, price: price ?? null, prices };
}

const isThere = (shopId: string, shops?: readonly Pick<ShopRow, 'id'>[]) =>
  shops === undefined || shops.some(({ id }) => id === shopId);

export function shopFrom(shop: ShopRow) {
  return { ...shop, sections: shop.sections ?? [] };
}

export function pantryFrom(row: PantryRow) {
  const { foodId, answer, answeredOn, remark, openedDays, openedSource } = row;
  return {
    foodId,
    answer: answer === null ? null : { is: answer, on: answeredOn, remark },
    opened: openedDays === null ? null : { days: openedDays, source: openedSource },
  };
}
