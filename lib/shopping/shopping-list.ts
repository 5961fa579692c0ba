import { SECTIONS, type Food, type Section } from '#lib/foods/food';
import { dishesOf } from '#lib/episode/context';
import type { EpisodeFile, Pack, StockLot } from '#lib/episode/schema';
import type { PantryFood } from '#lib/episode/stock-schema';
import { countStock } from '#lib/shopping/counted-stock';
import { earlierOf, restKeeps, usesWithin, type Keeping } from '#lib/shopping/leftover';
import { costsOf, dishCosts, type Drift, type Rate } from '#lib/shopping/list-cost';
import { laterUses, listNeeds, type ListNeeds } from '#lib/shopping/list-needs';
import type {
  LaterUse,
  Leftover,
  NeedRow,
  ShoppingItem,
  ShoppingList,
} from '#lib/shopping/list-types';
import { offersOf, type Offer } from '#lib/shopping/pack-offers';
import { mostCommon, planPacks, type PackPlan } from '#lib/shopping/pack-plan';
import { sectionsInOrder } from '#lib/shopping/walk';
import { settled } from '#lib/units/print';

export { lotMg } from '#lib/shopping/counted-stock';
export { sectionsInOrder } from '#lib/shopping/walk';
export type * from '#lib/shopping/list-types';

export interface ListOptions {
  /** Episodes planned later, whose needs a rest may serve. */
  readonly later?: readonly EpisodeFile[];
  /** The shops that are gone to; all where it is not said. */
  readonly shopIds?: readonly string[];
  /** The local date on which the list is told; else that of the latest file. */
  readonly today?: string;
}

/**
 * What to buy for one episode, or for several filmed in a span of dates: the needs of all dishes, spare takes and
 * pickups as bought, less what is in the kitchen and good on the day, in packs where sizes are known.
 *
 * Law: what is bought and what of the stock is counted is never less than the need.
 * @param files one state of one store, or files that know the same foods by the same ids
 * @example shoppingList(file).items[0] // { name: 'Turkey, ground …', needMg: 794_000, stockMg: 400_000, buyMg: 394_000, … }
 */
export function shoppingList(
  files: EpisodeFile | readonly EpisodeFile[],
  options: ListOptions = {},
): ShoppingList {
  const all = 'episode' in files ? [files] : files;
  const needs = listNeeds(all);
  const shared = sharedOf(all, options);
  const later = listNeeds(options.later ?? []);
  const currency = mostCommon(
    [...needs.rows.keys()].flatMap((id) => currenciesOf(shared.packs.get(id) ?? [])),
  );
  const rates = new Map<string, Rate>();
  const items = [...needs.rows].flatMap(([foodId, working]) => {
    const food = needs.foods.get(foodId);
    if (!food) return [];
    const { item, rate } = shoppingItem(food, working, { shared, later, currency });
    if (rate) rates.set(foodId, rate);
    return [item];
  });
  const sections = walkOf(shared.shops);
  items.sort(inWalkingOrder(sections));
  const dates = all.flatMap(({ day }) => day?.date ?? []).sort();
  return {
    episode: all.map(({ episode }) => episode.title).join(', '),
    episodeIds: all.map(({ episode }) => episode.id),
    forDate: dates[0] ?? null,
    toDate: dates.at(-1) ?? null,
    items,
    unmatched: needs.unmatched,
    ...costsOf(items, currency, shared.drift),
    dishes: dishCosts(costedDishes(all), items, rates, currency, shared.drift),
    shelfUnits: all[0]?.kitchen.shelfUnits ?? 'metric',
    shops: shared.shops.map(({ id, name }) => ({ id, name })),
    sections,
  };
}

/** What the files of one store have in common. */
interface Shared {
  readonly stock: readonly StockLot[];
  readonly packs: ReadonlyMap<string, readonly Pack[]>;
  readonly pantry: ReadonlyMap<string, PantryFood>;
  readonly shops: EpisodeFile['shops'];
  readonly shopIds: readonly string[] | null;
  readonly drift: Drift;
}

function sharedOf(files: readonly EpisodeFile[], options: ListOptions): Shared {
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

function currenciesOf(packs: readonly Pack[]): string[] {
  return packs.flatMap(({ price, prices }) =>
    [price, ...prices].flatMap((seen) => seen?.currency ?? []),
  );
}

interface Surroundings {
  readonly shared: Shared;
  readonly later: ListNeeds;
  readonly currency: string | null;
}

function shoppingItem(
  food: Food,
  working: readonly NeedRow[],
  { shared, later, currency }: Surroundings,
): { readonly item: ShoppingItem; readonly rate: Rate | null } {
  const said = shared.pantry.get(food.id);
  const opened = said?.opened ?? null;
  const needMg = sumKnown(working.map((row) => row.mg));
  const needMl = sumKnown(working.map((row) => row.ml));
  const dated = working.flatMap(({ date, mg }) => (mg === null ? [] : [{ date, mg }]));
  const stock = countStock(food, shared.stock, dated, opened);
  const hasLots = stock.stockMg > 0 || stock.notCounted.length > 0;
  const answer = hasLots ? null : (said?.answer ?? null);
  const has = answer?.is === 'have';
  const buyMg = needMg === null ? null : has ? 0 : Math.max(0, settled(needMg - stock.coveredMg));
  const byVolume = buyMg === null;
  const unit = byVolume ? 'ul' : 'mg';
  const wanted = has ? 0 : byVolume ? (needMl ?? 0) * 1000 : buyMg;
  const filmedOn =
    working
      .flatMap(({ date }) => date ?? [])
      .sort()
      .at(-1) ?? null;
  const keeping = restKeeps(food, filmedOn, opened);
  const all = laterUses(later, food.id);
  const uses = usesWithin(all, keeping.lastDay);
  const on = shared.drift.today;
  const packs = shared.packs.get(food.id) ?? [];
  const { offers, asks } = offersOf(food, packs, unit, { shopIds: shared.shopIds, on });
  const kept = keeping.lastDay === null ? [] : uses;
  const plan = wanted > 0 ? planPacks(offers, { need: wanted, unit, currency, uses: kept }) : null;
  const leftMg = needMg === null || has ? 0 : stock.stockMg + (plan?.total ?? buyMg ?? 0) - needMg;
  const item = {
    foodId: food.id,
    name: food.name,
    section: food.section,
    needMg,
    needMl: has ? null : needMl,
    stockMg: stock.stockMg,
    lots: stock.lots,
    answer,
    notCounted: stock.notCounted,
    buyMg,
    packs: plan?.packs ?? [],
    minor: plan?.minor ?? null,
    currency: plan?.currency ?? null,
    why: plan?.why ?? null,
    asks: wanted > 0 ? asks : [],
    leftover:
      leftMg > 0 ? leftover(leftMg, plan ? keeping : earlierOf(keeping, stock.lots), all) : null,
    working,
    notes: [...new Set(working.map(({ shopNote }) => shopNote).filter(Boolean))],
    open: has
      ? []
      : working.filter((row) => row.mg === null && row.ml === null).map((row) => row.line),
  };
  return { item, rate: rateOf(plan, offers, unit, currency) };
}

function leftover(mg: number, keeping: Keeping, all: readonly LaterUse[]): Leftover {
  return { mg: settled(mg), ...keeping, uses: usesWithin(all, keeping.lastDay) };
}

/** What a milligram costs: as bought, else at the cheapest offer in the list's currency. */
function rateOf(
  plan: PackPlan | null,
  offers: readonly Offer[],
  unit: 'mg' | 'ul',
  currency: string | null,
): Rate | null {
  if (unit === 'ul') return null;
  const seenOn = plan?.packs[0]?.seenOn;
  if (plan && plan.minor !== null && plan.currency !== null && seenOn) {
    return { minor: plan.minor, mg: plan.total, currency: plan.currency, seenOn };
  }
  const [cheapest] = offers
    .flatMap((offer): Rate[] => {
      const { minor, priceFor: mg, seenOn: on } = offer;
      if (minor === null || on === null || currency === null || offer.currency !== currency)
        return [];
      return [{ minor, mg, currency, seenOn: on }];
    })
    .sort((a, b) => a.minor / a.mg - b.minor / b.mg);
  return cheapest ?? null;
}

function sumKnown(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0);
}

/** The sections as the person walks through the only shop; in the usual order where there are several, or none. */
function walkOf(shops: EpisodeFile['shops']): readonly Section[] {
  const [shop, second] = shops;
  return shop && !second ? sectionsInOrder(shop.sections) : SECTIONS;
}

function inWalkingOrder(sections: readonly Section[]) {
  return (a: ShoppingItem, b: ShoppingItem) =>
    sections.indexOf(a.section) - sections.indexOf(b.section) ||
    (a.name < b.name ? -1 : a.name > b.name ? 1 : 0) ||
    (a.foodId < b.foodId ? -1 : 1);
}

function costedDishes(files: readonly EpisodeFile[]) {
  return files.flatMap(({ episode }) =>
    dishesOf(episode.segments).map(({ id, title, batches, recipe }) => {
      const equal = recipe.portions.find(({ kind }) => kind === 'count');
      const each = equal?.kind === 'count' ? equal.of : null;
      return {
        segmentId: id,
        title,
        portions: each === null ? null : Math.round((each * batches.num) / batches.den) || null,
      };
    }),
  );
}
