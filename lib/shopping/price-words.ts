import { type Pack, isOffer, type PackPrice } from '#lib/episode/stock-schema';
import { priceText } from '#lib/shopping/shopping-text';
import { printDay, printDayOfMonth } from '#lib/units/print-date';

/**
 * A price as it was seen: for how many at once, where, when, and how long an offer holds.
 * @param shopName null where nobody said in which shop
 * @example priceWords({ minor: 500, currency: 'USD', count: 3, until: '2026-12-12', … }, 'Quay market') // '3 for USD 5.00, Quay market, seen Sat 5 Dec, until 12 Dec'
 */
export function priceWords(price: PackPrice, shopName: string | null): string {
  const { minor, currency, count, most, until, seenOn } = price;
  const paid = priceText(minor, currency);
  const parts = [
    count === 1 ? paid : `${count} for ${paid}`,
    shopName ?? '',
    `seen ${printDay(seenOn)}`,
    most === null ? '' : most === 1 ? 'at most once' : `at most ${most} times`,
    until === null ? '' : `until ${printDayOfMonth(until)}`,
  ];
  return parts.filter(Boolean).join(', ');
}

/**
 * Prices that count, and those that were seen before them: of the same pack, shop and number the last one seen; an
 * offer hides no ordinary price.
 * @param prices the last seen first
 */
export function latestPrices<
  T extends {
    readonly packId: string;
    readonly price: Pick<PackPrice, 'shopId' | 'count' | 'most' | 'until'>;
  },
>(prices: readonly T[]): { readonly latest: readonly T[]; readonly earlier: readonly T[] } {
  const seen = new Set<string>();
  const latest: T[] = [];
  const earlier: T[] = [];
  for (const each of prices) {
    const { shopId, count } = each.price;
    const key = `${each.packId} ${shopId ?? ''} ${count} ${isOffer(each.price)}`;
    (seen.has(key) ? earlier : latest).push(each);
    seen.add(key);
  }
  return { latest, earlier };
}

/**
 * The price of a food that was seen last, with its pack; null where none is known.
 * @param shops names of shops by id
 * @example latestPriceWords([tub], shops) // 'Tub 450 g: USD 3.29, seen Sat 5 Dec'
 */
export function latestPriceWords(
  packs: readonly Pick<Pack, 'name' | 'price' | 'prices'>[],
  shops: ReadonlyMap<string, string>,
): string | null {
  const seen = packs.flatMap(({ name, price, prices }) => [
    ...(price ? [{ name, price: { ...price, ...UNSAID_PRICE } }] : []),
    ...prices.map((each) => ({ name, price: each })),
  ]);
  const [last] = seen.sort((a, b) =>
    a.price.seenOn === b.price.seenOn
      ? a.price.count - b.price.count
      : a.price.seenOn < b.price.seenOn
        ? 1
        : -1,
  );
  if (!last) return null;
  const { shopId } = last.price;
  return `${last.name}: ${priceWords(last.price, shopId === null ? null : (shops.get(shopId) ?? null))}`;
}

/** One of a pack, in no shop named. */
const UNSAID_PRICE = { shopId: null, count: 1, most: null, until: null } as const;
