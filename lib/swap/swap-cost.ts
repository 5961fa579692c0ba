import type { EpisodeFile } from '#lib/episode/schema';
import { shoppingList } from '#lib/shopping/shopping-list';

/** What a dish costs more after a change, in minor units of one currency; less than 0 where it is cheaper. */
export type CostDifference =
  | {
      readonly known: true;
      readonly minor: number;
      readonly currency: string;
      /** For each of its portions, where all are alike. */
      readonly eachMinor: number | null;
    }
  | { readonly known: false; readonly why: string };

/**
 * What a swap does to what the dish costs, at the prices of the packs that would be bought for it: what is in the kitchen
 * costs as much as it would in the shop. Not known where a food that only one of the two has, or has more of, has no price.
 */
export function costDifference(
  before: EpisodeFile,
  after: EpisodeFile,
  segmentId: string,
): CostDifference {
  const [was, becomes] = [before, after].map((file) => costOf(file, segmentId));
  if (!was || !becomes) throw new Error('two files have two costs');
  const lacking = [...new Set([...was.unpriced.keys(), ...becomes.unpriced.keys()])].filter(
    (name) => was.unpriced.get(name) !== becomes.unpriced.get(name),
  );
  if (lacking.length > 0) return { known: false, why: `no price for ${lacking.join(', ')}` };
  const currency = was.currency ?? becomes.currency;
  if (currency === null) return { known: false, why: 'no prices' };
  if (was.currency !== null && becomes.currency !== null && was.currency !== becomes.currency) {
    return { known: false, why: `prices in ${was.currency} and ${becomes.currency}` };
  }
  const minor = becomes.minor - was.minor;
  const portions = becomes.portions ?? was.portions;
  return {
    known: true,
    minor,
    currency,
    eachMinor: portions ? Math.round(minor / portions) : null,
  };
}

interface DishCosts {
  readonly minor: number;
  readonly currency: string | null;
  readonly portions: number | null;
  /** Names of its foods without a price, with how much of them there is. */
  readonly unpriced: ReadonlyMap<string, string>;
}

function costOf(file: EpisodeFile, segmentId: string): DishCosts {
  const list = shoppingList({ ...file, stock: [], pantry: [] });
  const cost = list.dishes.find((dish) => dish.segmentId === segmentId) ?? null;
  const unpriced = list.items.flatMap((item) => {
    const rows = item.working.filter((row) => row.segmentId === segmentId);
    if (rows.length === 0 || item.minor !== null) return [];
    return [[item.name, JSON.stringify(rows.map(({ mg, ml }) => [mg, ml]))] as const];
  });
  return {
    minor: cost?.cost.minor ?? 0,
    currency: cost?.cost.currency ?? null,
    portions: cost?.portions ?? null,
    unpriced: new Map(unpriced),
  };
}
