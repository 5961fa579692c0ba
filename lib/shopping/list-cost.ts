import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays';
import { parseISO } from 'date-fns/parseISO';
import type { Cost, DishCost, ShoppingItem } from '#lib/shopping/list-types';

/** One sum of the same day and currency. */
export interface Priced {
  readonly minor: number;
  readonly currency: string;
  readonly seenOn: string;
}

/** How old prices are allowed for. */
export interface Drift {
  /** The local date on which the sum is told. */
  readonly today: string;
  /** How far a price may move in a year, in thousandths; see `kitchenMore.priceDriftPermille`. */
  readonly permille: number;
}

/** Prices seen no longer ago than this are taken as they stand, in days. Common practice, no source. */
const FRESH_DAYS = 30;

/**
 * The sum of prices of one currency with its bounds: each price may have moved by a share for each year since it was
 * seen, to either side, once that is a month ago; bounds are rounded outward to whole minor units.
 * @returns null where there is nothing to add
 * @example a price of 10.00 seen half a year ago at 5 % a year: 9.75 to 10.25
 */
export function sumOfPrices(
  prices: readonly Priced[],
  atLeast: boolean,
  { today, permille }: Drift,
): Cost | null {
  const [first] = prices;
  if (!first) return null;
  let [minor, moved] = [0, 0];
  for (const price of prices) {
    const days = Math.max(0, differenceInCalendarDays(parseISO(today), parseISO(price.seenOn)));
    minor += price.minor;
    if (days > FRESH_DAYS) moved += (price.minor * permille * days) / 365_250;
  }
  const oldest = prices.reduce((day, { seenOn }) => (seenOn < day ? seenOn : day), first.seenOn);
  return {
    minor,
    currency: first.currency,
    low: Math.max(0, Math.floor(minor - moved)),
    high: Math.ceil(minor + moved),
    atLeast,
    oldest,
  };
}

/** The sums of a list: in its currency, and in each other. */
export function costsOf(
  items: readonly ShoppingItem[],
  currency: string | null,
  drift: Drift,
): { readonly cost: Cost | null; readonly otherCosts: readonly Cost[] } {
  const toBuy = items.filter(needsBuying);
  const prices = toBuy.flatMap((item) => item.packs.flatMap(pricedPack));
  const currencies = [...new Set(prices.map((price) => price.currency))].sort();
  const sums = currencies.flatMap((each) => {
    const missing = toBuy.some((item) => item.currency !== each || item.minor === null);
    const of = prices.filter((price) => price.currency === each);
    return sumOfPrices(of, missing, drift) ?? [];
  });
  return {
    cost: sums.find((sum) => sum.currency === currency) ?? null,
    otherCosts: sums.filter((sum) => sum.currency !== currency),
  };
}

/** Whether anything of a food is to be bought. */
export function needsBuying(item: Pick<ShoppingItem, 'buyMg' | 'needMl' | 'open'>): boolean {
  return item.buyMg !== 0 || item.needMl !== null || item.open.length > 0;
}

function pricedPack({ minor, currency, seenOn }: ShoppingItem['packs'][number]): Priced[] {
  return minor === null || currency === null || seenOn === null
    ? []
    : [{ minor, currency, seenOn }];
}

/** A price by weight: so many minor units for so many milligrams. */
export interface Rate {
  readonly minor: number;
  readonly mg: number;
  readonly currency: string;
  readonly seenOn: string;
}

/** A dish as far as its cost goes. */
export interface CostedDish {
  readonly segmentId: string;
  readonly title: string;
  readonly portions: number | null;
}

/**
 * What the ingredients of each dish cost, at the rates of what is bought, made as often as planned and without spare
 * takes and pickups; 'at least' where an ingredient has no amount or no price in the currency.
 */
export function dishCosts(
  dishes: readonly CostedDish[],
  items: readonly ShoppingItem[],
  rates: ReadonlyMap<string, Rate>,
  currency: string | null,
  drift: Drift,
): DishCost[] {
  return dishes.flatMap(({ segmentId, title, portions }) => {
    const prices: Priced[] = [];
    let atLeast = false;
    for (const item of items) {
      const rate = rates.get(item.foodId);
      for (const row of item.working.filter((each) => each.segmentId === segmentId)) {
        const times = (row.batches ?? 0) + row.spareTakes + row.pickups;
        if (!rate || rate.currency !== currency || row.mg === null || row.batches === null) {
          atLeast = true;
        } else if (times > 0) {
          const mg = (row.mg * row.batches) / times;
          prices.push({ ...rate, minor: (rate.minor * mg) / rate.mg });
        }
      }
    }
    const sum = sumOfPrices(prices, atLeast, drift);
    if (!sum) return [];
    const cost = { ...sum, minor: Math.round(sum.minor) };
    const each = portions === null ? null : perPortion(sum, portions);
    return [{ segmentId, segment: title, cost, portions, each }];
  });
}

function perPortion(cost: Cost, portions: number): Cost {
  return {
    ...cost,
    minor: Math.round(cost.minor / portions),
    low: Math.floor(cost.low / portions),
    high: Math.ceil(cost.high / portions),
  };
}
