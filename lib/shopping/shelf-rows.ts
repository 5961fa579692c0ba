import type { Shop } from '#lib/episode/stock-schema';
import type { TakenPacks } from '#lib/shopping/list-events';
import type { PackCount, ShoppingItem, ShoppingList } from '#lib/shopping/list-types';
import { isInStock, SECTION_WORDS } from '#lib/shopping/shopping-text';
import { sectionsInOrder } from '#lib/shopping/walk';

/** A part of a shop with what is taken there. */
export interface ShelfGroup {
  /** "Dairy and eggs"; with the shop before it where there are several: "Quay market: Dairy and eggs". */
  readonly title: string;
  readonly shopId: string | null;
  readonly items: readonly ShoppingItem[];
}

/** A list in the order of walking. */
export interface Shelves {
  readonly toBuy: readonly ShelfGroup[];
  readonly inStock: readonly ShoppingItem[];
}

/**
 * What is bought, by shop and in each by its sections in the order in which the person walks there; then what is in the
 * kitchen already. What has packs of two shops stands with the first of them, and what has none where most is bought.
 * @param shops with their sections; those not named come last, in the usual order
 * @example shelves(list, []).toBuy[0] // { title: 'Fruit and vegetables', shopId: null, items: […] }
 */
export function shelves(list: ShoppingList, shops: readonly Shop[]): Shelves {
  const toBuy = list.items.filter((item) => !isInStock(item));
  const ofPacks = toBuy.map(({ packs }) => packs[0]?.shopId ?? null);
  const named = [...new Set(ofPacks)].filter((id) => id !== null);
  const several = named.length > 1;
  const only = named.length === 1 ? (named[0] ?? null) : null;
  const first = several ? mostOf(named, ofPacks) : only;
  const shopOf = (at: number) => ofPacks[at] ?? first;
  const order = [...new Set([...(first === null ? [null] : [first]), ...named.sort()])];
  const groups = order.flatMap((shopId) => {
    const shop = shops.find(({ id }) => id === shopId);
    const mine = toBuy.filter((_, at) => shopOf(at) === shopId);
    const before = several && shop ? `${shop.name}: ` : '';
    return sectionsInOrder(shop?.sections ?? list.sections).flatMap((section): ShelfGroup[] => {
      const items = mine.filter((item) => item.section === section);
      const title = `${before}${SECTION_WORDS[section]}`;
      return items.length === 0 ? [] : [{ title, shopId, items }];
    });
  });
  return { toBuy: groups, inStock: list.items.filter(isInStock) };
}

function mostOf(ids: readonly string[], among: readonly (string | null)[]): string | null {
  const count = (id: string) => among.filter((each) => each === id).length;
  const sorted = [...ids].sort((a, b) => count(b) - count(a) || (a < b ? -1 : 1));
  return sorted[0] ?? null;
}

/**
 * What lies in the basket once a food is ticked: its packs as the list says them, each with what it holds as the
 * kitchen counts it; without packs the amount to buy. An amount that nobody knows stays unknown.
 * @example takenAsListed(skyr) // [{ packId: 'p1', count: 2, mg: 900_000 }]
 */
export function takenAsListed(
  item: Pick<ShoppingItem, 'packs' | 'buyMg' | 'needMl'>,
): readonly TakenPacks[] {
  if (item.packs.length > 0) return item.packs.map(taken);
  const mg = item.needMl === null && item.buyMg !== 0 ? item.buyMg : null;
  return [{ packId: null, count: 1, mg: mg === null ? null : Math.ceil(mg) }];
}

function taken({ packId, count, looseMg, netMg }: PackCount): TakenPacks {
  const mg = looseMg ?? (netMg === null ? null : netMg * count);
  return { packId, count, mg: mg === null ? null : Math.round(mg) };
}
