import { SECTIONS, type Food, type Section } from '#lib/foods/food';
import { amountContext, type AmountContext } from '#lib/episode/context';
import type { EpisodeFile, Pack, StockLot } from '#lib/episode/schema';
import { boughtAmount } from '#lib/shopping/bought-amount';
import { foodNeeds, type Need } from '#lib/shopping/needs';

/** One row of a need's working: an ingredient, how often it is bought, what that comes to. */
export interface NeedRow {
  readonly segmentId: string;
  readonly segment: string;
  readonly line: string;
  /** Batches, and further takes that need this ingredient again; null where nobody knows how many. */
  readonly batches: number | null;
  readonly spareTakes: number;
  readonly mg: number | null;
  readonly ml: number | null;
}

/** How many of a pack to buy. */
export interface PackCount {
  readonly packId: string;
  readonly name: string;
  readonly count: number;
  /** What one holds: grams, or millilitres where the need is known by volume only. */
  readonly netMg: number | null;
  readonly netMl: number | null;
  /** Price of all of them in minor units; null where no price is known. */
  readonly minor: number | null;
  readonly currency: string | null;
}

export interface ShoppingItem {
  readonly foodId: string;
  readonly name: string;
  readonly section: Section;
  /** What the dishes and their spare takes need, as bought. Null where no line has a mass. */
  readonly needMg: number | null;
  readonly needMl: number | null;
  /** What is in stock and usable on the filming date. */
  readonly stockMg: number;
  /** Lots that do not count, with the reason. */
  readonly notCounted: readonly string[];
  readonly buyMg: number | null;
  readonly packs: PackCount | null;
  readonly working: readonly NeedRow[];
  /** Ingredients of this food without an amount: to be judged in the shop. */
  readonly open: readonly string[];
}

export interface ShoppingList {
  readonly episode: string;
  readonly forDate: string | null;
  readonly items: readonly ShoppingItem[];
  /** Ingredients without a food: written as they stand. */
  readonly unmatched: readonly { readonly segment: string; readonly line: string }[];
  /** Sum of known pack prices in one currency; `atLeast` where something to buy has no price. */
  readonly cost: {
    readonly minor: number;
    readonly currency: string;
    readonly atLeast: boolean;
  } | null;
}

/**
 * What to buy for an episode: the needs of all dishes and spare takes as bought, less usable stock,
 * in packs where sizes are known.
 * @example shoppingList(file).items[0] // { name: 'Turkey, ground …', needMg: 794_000, stockMg: 400_000, buyMg: 394_000, … }
 */
export function shoppingList(file: EpisodeFile): ShoppingList {
  const context = amountContext(file);
  const { needs, unmatched } = foodNeeds(file.episode.segments, context);
  const rows = new Map<string, NeedRow[]>();
  for (const need of needs) {
    rows.set(need.food.id, [...(rows.get(need.food.id) ?? []), needRow(need, context)]);
  }
  const forDate = file.day?.date ?? null;
  const items = [...rows].flatMap(([foodId, working]) => {
    const food = context.foods.get(foodId);
    return food ? [shoppingItem(food, working, file.stock, context, forDate)] : [];
  });
  items.sort(bySectionThenName);
  return { episode: file.episode.title, forDate, items, unmatched, cost: costOf(items) };
}

function needRow(need: Need, context: AmountContext): NeedRow {
  const { dish, line, food, words, times, spareTakes } = need;
  const once = boughtAmount(line, food, context);
  const all = (amount: number | null | undefined) =>
    amount == null || times === null ? null : amount * times;
  return {
    segmentId: dish.id,
    segment: dish.title,
    line: words,
    batches: times === null ? null : times - spareTakes,
    spareTakes,
    mg: all(once?.mg),
    ml: all(once?.ml),
  };
}

function shoppingItem(
  food: Food,
  working: readonly NeedRow[],
  stock: readonly StockLot[],
  context: AmountContext,
  forDate: string | null,
): ShoppingItem {
  const needMg = sumKnown(working.map((row) => row.mg));
  const needMl = sumKnown(working.map((row) => row.ml));
  const lots = stock.filter((lot) => lot.foodId === food.id);
  const usable = lots.filter((lot) => !isPastUse(lot, forDate));
  const stockMg = usable.reduce((sum, lot) => sum + Math.max(0, lotMg(lot)), 0);
  const buyMg = needMg === null ? null : Math.max(0, needMg - stockMg);
  return {
    foodId: food.id,
    name: food.name,
    section: food.section,
    needMg,
    needMl,
    stockMg,
    notCounted: lots
      .filter((lot) => isPastUse(lot, forDate))
      .map((lot) => `${lot.place || 'stock'}: use by ${lot.useBy}, before the filming day`),
    buyMg,
    packs: leastWaste(context.packs.get(food.id) ?? [], buyMg, needMl),
    working,
    open: working.filter((row) => row.mg === null && row.ml === null).map((row) => row.line),
  };
}

function sumKnown(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0);
}

/** What a lot holds: the sum of its moves in milligrams. */
export function lotMg(lot: StockLot): number {
  return lot.moves.reduce((sum, move) => sum + move.deltaMg, 0);
}

function isPastUse(lot: StockLot, forDate: string | null): boolean {
  return forDate !== null && lot.useBy !== null && lot.useBy < forDate;
}

/**
 * One size of pack, as many as are needed, by grams where grams are known and else by volume: least left
 * over, then fewest packs, then by id. Null where nothing is to buy or no pack fits.
 */
function leastWaste(
  packs: readonly Pack[],
  buyMg: number | null,
  needMl: number | null,
): PackCount | null {
  const byVolume = buyMg === null;
  const buy = byVolume ? needMl : buyMg;
  if (buy === null || buy === 0) return null;
  const counts = packs.flatMap((pack) => {
    const net = byVolume ? pack.netMl : (pack.drainedMg ?? pack.netMg);
    if (net === null) return [];
    const count = Math.ceil(buy / net);
    const held: PackCount = {
      packId: pack.id,
      name: pack.name,
      count,
      netMg: byVolume ? null : net,
      netMl: byVolume ? net : null,
      minor: pack.price ? pack.price.minor * count : null,
      currency: pack.price?.currency ?? null,
    };
    return [{ held, total: count * net }];
  });
  counts.sort(
    (a, b) =>
      a.total - b.total || a.held.count - b.held.count || (a.held.packId < b.held.packId ? -1 : 1),
  );
  return counts[0]?.held ?? null;
}

function bySectionThenName(a: ShoppingItem, b: ShoppingItem): number {
  return (
    SECTIONS.indexOf(a.section) - SECTIONS.indexOf(b.section) ||
    (a.name < b.name ? -1 : a.name > b.name ? 1 : 0) ||
    (a.foodId < b.foodId ? -1 : 1)
  );
}

function costOf(items: readonly ShoppingItem[]): ShoppingList['cost'] {
  const toBuy = items.filter((item) => item.buyMg !== 0);
  const priced = toBuy.flatMap((item) =>
    item.packs?.minor != null && item.packs.currency !== null
      ? [{ minor: item.packs.minor, currency: item.packs.currency }]
      : [],
  );
  const currency = priced[0]?.currency;
  if (currency === undefined) return null;
  const same = priced.filter((price) => price.currency === currency);
  return {
    minor: same.reduce((sum, price) => sum + price.minor, 0),
    currency,
    atLeast: same.length < toBuy.length,
  };
}
