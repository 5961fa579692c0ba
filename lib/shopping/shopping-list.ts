import { SECTIONS, type Food, type Section } from '#lib/foods/food';
import { dishesOf } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import { countStock } from '#lib/shopping/counted-stock';
import { earlierOf, restKeeps, usesWithin, type Keeping } from '#lib/shopping/leftover';
import { costsOf, dishCosts, type Rate } from '#lib/shopping/list-cost';
import { laterUses, listNeeds, type ListNeeds } from '#lib/shopping/list-needs';
import {
  currenciesOf,
  hasPriceIn,
  sharedOf,
  type ListOptions,
  type Shared,
} from '#lib/shopping/list-shared';
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
export type { ListOptions } from '#lib/shopping/list-shared';
export type * from '#lib/shopping/list-types';

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
    unpriced: items
      .filter(({ foodId }) => !hasPriceIn(currency, shared.packs.get(foodId) ?? []))
      .map(({ foodId, name }) => ({ foodId, name })),
    ...costsOf(items, currency, shared.drift),
    dishes: dishCosts(costedDishes(all), items, rates, currency, shared.drift),
    shelfUnits: all[0]?.kitchen.shelfUnits ?? 'metric',
    shops: shared.shops.map(({ id, name }) => ({ id, name })),
    sections,
  };
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
  const kept = inTheKitchen(food, working, shared);
  const { needMg, needMl, stock, buyMg, has, opened } = kept;
  const days = working.flatMap(({ date }) => date ?? []).sort();
  const keeping = restKeeps(food, days.at(-1) ?? null, opened);
  const planned = laterUses(later, food.id);
  const unit = buyMg === null ? 'ul' : 'mg';
  const need = has ? 0 : (buyMg ?? (needMl ?? 0) * 1000);
  const visit = { shopIds: shared.shopIds, on: shared.drift.today };
  const { offers, asks } = offersOf(food, shared.packs.get(food.id) ?? [], unit, visit);
  const uses = keeping.lastDay === null ? [] : usesWithin(planned, keeping.lastDay);
  const plan = need > 0 ? planPacks(offers, { need, unit, currency, uses }) : null;
  const over = plan && buyMg !== null ? plan.total - buyMg : 0;
  const left = needMg === null || has ? 0 : stock.leftMg + over;
  const item = {
    ...{ foodId: food.id, name: food.name, section: food.section },
    ...{ needMg, needMl: has ? null : needMl, buyMg, answer: kept.answer, working },
    ...{ stockMg: stock.stockMg, lots: stock.lots, notCounted: stock.notCounted },
    packs: plan?.packs ?? [],
    minor: plan?.minor ?? null,
    currency: plan?.currency ?? null,
    why: plan?.why ?? null,
    asks: need > 0 ? asks : [],
    leftover:
      left > 0 ? leftover(left, plan ? keeping : earlierOf(keeping, stock.lots), planned) : null,
    notes: [...new Set(working.map(({ shopNote }) => shopNote).filter(Boolean))],
    open: has ? [] : working.filter(isOpen).map((row) => row.line),
  };
  return { item, rate: rateOf(plan, offers, unit, currency) };
}

/** What of a food's need is there: by its lots where it has any, else by the person's word. */
function inTheKitchen(food: Food, working: readonly NeedRow[], shared: Shared) {
  const said = shared.pantry.get(food.id);
  const opened = said?.opened ?? null;
  const needMg = sumKnown(working.map((row) => row.mg));
  const needMl = sumKnown(working.map((row) => row.ml));
  const dated = working.flatMap(({ date, mg }) => (mg === null ? [] : [{ date, mg }]));
  const stock = countStock(food, shared.stock, dated, opened);
  const hasLots = stock.stockMg > 0 || stock.notCounted.length > 0;
  const answer = hasLots ? null : (said?.answer ?? null);
  const has = answer?.is === 'have';
  const missing = needMg === null ? null : Math.max(0, settled(needMg - stock.coveredMg));
  return {
    needMg,
    needMl,
    stock,
    answer,
    has,
    opened,
    buyMg: has && missing !== null ? 0 : missing,
  };
}

const isOpen = (row: NeedRow) => row.mg === null && row.ml === null;

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
