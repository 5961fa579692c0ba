import type { ShelfUnits, StockAnswer } from '#lib/episode/stock-schema';
import type { Section } from '#lib/foods/food';
import type { CountedLot } from '#lib/shopping/counted-stock';

/** One row of a need's working: an ingredient, how often it is bought, what that comes to. */
export interface NeedRow {
  readonly episodeId: string;
  readonly episode: string;
  /** The filming day; null where there is none. */
  readonly date: string | null;
  readonly segmentId: string;
  readonly segment: string;
  readonly line: string;
  /** Batches, and further takes that need this ingredient again; null where nobody knows how many. */
  readonly batches: number | null;
  readonly spareTakes: number;
  readonly pickups: number;
  readonly mg: number | null;
  readonly ml: number | null;
  /** What is bought on top of what is used: '25 % (bone)'; null or left out for nothing. */
  readonly onTop?: string | null;
  /** For the shop: "for the hero shot: the nice one". */
  readonly shopNote: string;
}

/** How many of a pack to buy, at one price. */
export interface PackCount {
  readonly packId: string;
  readonly name: string;
  readonly shopId: string | null;
  /** Packs; for loose goods 1. */
  readonly count: number;
  /** Weighed loose: all of it, in milligrams. */
  readonly looseMg: number | null;
  /** What one holds (of loose goods: what is weighed): milligrams, or millilitres where the need is by volume only. */
  readonly netMg: number | null;
  readonly netMl: number | null;
  /** Price of all of them in minor units; null where no price is known. */
  readonly minor: number | null;
  readonly currency: string | null;
  readonly seenOn: string | null;
  /** At an offer of so many at once. */
  readonly atOnce: number;
}

/** A planned use of what is left over. */
export interface LaterUse {
  readonly episodeId: string;
  readonly episode: string;
  readonly segmentId: string;
  readonly segment: string;
  readonly date: string | null;
  readonly mg: number;
}

/** What is left of a food after the shoot. */
export interface Leftover {
  readonly mg: number;
  /** The last day on which it is used, where that is known, and why that day. */
  readonly lastDay: string | null;
  readonly why: string | null;
  /** Segments planned later that need it; those after its last day are left out. */
  readonly uses: readonly LaterUse[];
}

export interface ShoppingItem {
  readonly foodId: string;
  readonly name: string;
  readonly section: Section;
  /** What the dishes, their spare takes and pickups need, as bought. Null where no line has a mass. */
  readonly needMg: number | null;
  readonly needMl: number | null;
  /** What is in stock and usable on the first filming day, by lots. */
  readonly stockMg: number;
  readonly lots: readonly CountedLot[];
  /** What the person said of it, where no lot is known. */
  readonly answer: {
    readonly is: StockAnswer;
    readonly on: string;
    readonly remark: string;
  } | null;
  /** Lots that do not count, with the reason. */
  readonly notCounted: readonly string[];
  readonly buyMg: number | null;
  /** What to take off the shelf; empty where no pack is known. */
  readonly packs: readonly PackCount[];
  /** Of all packs together, where every one has a price. */
  readonly minor: number | null;
  readonly currency: string | null;
  /** Why this choice and not one with less left over, with the sum; null where there is nothing to say. */
  readonly why: string | null;
  /** What is to be said before its packs can count. */
  readonly asks: readonly string[];
  readonly leftover: Leftover | null;
  readonly working: readonly NeedRow[];
  /** Notes for the shop, each once. */
  readonly notes: readonly string[];
  /** Ingredients of this food without an amount: to be judged in the shop. */
  readonly open: readonly string[];
}

/** A sum of money with bounds: prices move with time. */
export interface Cost {
  readonly minor: number;
  readonly currency: string;
  /** How far it may have moved since the prices were seen. */
  readonly low: number;
  readonly high: number;
  /** True where something in it has no price in this currency. */
  readonly atLeast: boolean;
  /** The day of the oldest price in it. */
  readonly oldest: string;
}

/** What the ingredients of a dish cost, once made, and a portion of it. */
export interface DishCost {
  readonly segmentId: string;
  readonly segment: string;
  readonly cost: Cost;
  /** Equal portions; null where the dish has none. */
  readonly portions: number | null;
  readonly each: Cost | null;
}

export interface ShoppingList {
  /** Titles of the episodes. */
  readonly episode: string;
  readonly episodeIds: readonly string[];
  /** The first and the last filming day. */
  readonly forDate: string | null;
  readonly toDate: string | null;
  readonly items: readonly ShoppingItem[];
  /** Ingredients without a food: written as they stand. */
  readonly unmatched: readonly { readonly segment: string; readonly line: string }[];
  /** Foods of which no pack has a price in the currency of the list. */
  readonly unpriced: readonly { readonly foodId: string; readonly name: string }[];
  /** The sum in the currency of most prices, and one for each other; a sum has one currency. */
  readonly cost: Cost | null;
  readonly otherCosts: readonly Cost[];
  readonly dishes: readonly DishCost[];
  readonly shelfUnits: ShelfUnits;
  readonly shops: readonly { readonly id: string; readonly name: string }[];
  /** The sections in the order of walking. */
  readonly sections: readonly Section[];
}
