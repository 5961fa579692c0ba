import type { EpisodeFile } from '#lib/episode/schema';
import type { Pack, StockLot, PantryFood } from '#lib/episode/stock-schema';
import type { Drift } from '#lib/shopping/list-cost';

export interface ListOptions {
  /** Episodes planned later, whose needs a rest may serve. */
  readonly later?: readonly EpisodeFile[];
  /** The shops that are gone to; all where it is not said. */
  readonly shopIds?: readonly string[];
  /** The local date on which the list is told; else that of the latest file. */
  readonly today?: string;
}

/** What the files of one store have in common. */
export interface Shared {
  readonly stock: readonly StockLot[];
  readonly packs: ReadonlyMap<string, readonly Pack[]>;
  readonly pantry: ReadonlyMap<string, PantryFood>;
  readonly shops: EpisodeFile['shops'];
  readonly shopIds: readonly string[] | null;
  readonly drift: Drift;
}

/** Stock, packs and shops of all files, each row once, in the order of their ids. */
export function sharedOf(files: readonly EpisodeFile[], options: ListOptions): Shared {
  const byId = <T extends { readonly id: string }>(rows: readonly T[]) =>
    [...new Map(rows.map((row) => [row.id, row])).values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  const packs = new Map<string, Pack[]>();
  for (const pack of byId(files.flatMap((file) => file.packs))) {
    packs.set(pack.foodId, [...(packs.get(pack.foodId) ?? []), pack]);
  }
  const saved = files.map(({ savedAt }) => savedAt.slice(0, 10)).sort();
  const shopIds = options.shopIds ?? null;
  return {
    stock: byId(files.flatMap((file) => file.stock)),
    packs,
    pantry: new Map(files.flatMap((file) => file.pantry).map((said) => [said.foodId, said])),
    shops: byId(files.flatMap((file) => file.shops)).filter(
      ({ id }) => shopIds === null || shopIds.includes(id),
    ),
    shopIds,
    drift: {
      today: options.today ?? saved.at(-1) ?? '',
      permille: files[0]?.kitchen.priceDriftPermille ?? 0,
    },
  };
}

/** The currencies of all prices of some packs, each as often as it stands. */
export function currenciesOf(packs: readonly Pack[]): string[] {
  return packs.flatMap(({ price, prices }) =>
    [price, ...prices].flatMap((seen) => seen?.currency ?? []),
  );
}

/**
 * Whether somebody has said a price of some packs in a currency, in any shop and however old. It need not count on the
 * visit that a list is for: what a food costs there is its `Rate`.
 */
export function hasPriceIn(currency: string | null, packs: readonly Pack[]): boolean {
  return currency !== null && currenciesOf(packs).includes(currency);
}
