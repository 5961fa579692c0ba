import type { Pack } from '#lib/episode/stock-schema';
import { findMeasure } from '#lib/episode/line-amount';
import type { Food } from '#lib/foods/food';
import type { PackOption } from '#lib/shopping/choose-packs';

/** A way of taking a food off the shelf, with what it is called, where it stands and when its price was seen. */
export interface Offer extends PackOption {
  readonly packId: string;
  readonly name: string;
  /** Null: in any shop. */
  readonly shopId: string | null;
  readonly currency: string | null;
  readonly seenOn: string | null;
}

export interface Offers {
  readonly offers: readonly Offer[];
  /** What is to be said before a pack can count, in words. */
  readonly asks: readonly string[];
}

/** Which shops are gone to, and on which day; null for all, and for any day. */
export interface ShopVisit {
  readonly shopIds: readonly string[] | null;
  readonly on: string | null;
}

/**
 * The ways of buying a food: each pack at its last price in each shop, offers of several at once while they hold, loose
 * goods by their step. A tin counts by what is left of it drained, a pack in millilitres by the food's own weight of a
 * volume; where that is not known it is asked for.
 * @param unit milligrams, or microlitres where the food is needed by volume only
 */
export function offersOf(
  food: Food,
  packs: readonly Pack[],
  unit: 'mg' | 'ul',
  { shopIds, on }: ShopVisit,
): Offers {
  const asks: string[] = [];
  const offers = packs.flatMap((pack): Offer[] => {
    const holds = unit === 'mg' ? massOf(pack, food) : volumeOf(pack);
    if (holds === null && unit === 'mg' && pack.netMl !== null) {
      asks.push(
        `Say what 100 ml of ${food.name} weigh: ${pack.name} is in millilitres, and grams are needed.`,
      );
    }
    if (holds === null || holds <= 0) return [];
    const step = unit === 'mg' ? pack.stepMg : null;
    const made = (key: string, count: number, most: number | null) => ({
      id: `${pack.id} ${key}`,
      packId: pack.id,
      name: pack.name,
      holds: step ?? holds * count,
      packs: step === null ? count : 0,
      priceFor: holds * count,
      most,
    });
    const unpriced = { minor: null, currency: null, seenOn: null, shopId: null };
    const here = pack.prices.filter(
      ({ shopId, until }) =>
        (shopId === null || shopIds === null || shopIds.includes(shopId)) &&
        (until === null || on === null || until >= on),
    );
    const priced = [
      ...(pack.price ? [{ ...made('', 1, null), ...pack.price, shopId: null }] : []),
      ...here.map(({ shopId, minor, currency, seenOn, count, most }) => ({
        ...made(`${shopId ?? ''} ${count}`, count, most),
        ...{ shopId, minor, currency, seenOn },
      })),
    ];
    return priced.length > 0 ? priced : [{ ...made('', 1, null), ...unpriced }];
  });
  return { offers, asks };
}

/** What a pack holds as the kitchen counts it, in milligrams; null where that is not known. */
export function massOf(pack: Pack, food: Food): number | null {
  const { drainedMg, netMg, netMl } = pack;
  if (drainedMg ?? netMg) return drainedMg ?? netMg;
  const density = mgPerMl(food);
  return netMl === null || density === null ? null : Math.floor(netMl * density);
}

/** What a pack holds in microlitres. */
function volumeOf({ netMl }: Pack): number | null {
  return netMl === null ? null : Math.floor(netMl * 1000);
}

/** What a millilitre of a food weighs, by its own measures of volume. */
export function mgPerMl(food: Food): number | null {
  const found = findMeasure('ml', null, food);
  if (!found) return null;
  const { measure, factor } = found;
  return (factor * measure.massMg * measure.qtyDen) / measure.qtyNum;
}
