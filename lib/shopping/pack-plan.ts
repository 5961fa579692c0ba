import { choosePacks, costOf, type PackChoice } from '#lib/shopping/choose-packs';
import type { LaterUse, PackCount } from '#lib/shopping/list-types';
import type { Offer } from '#lib/shopping/pack-offers';
import { printGrams, settled } from '#lib/units/print';
import { priceText } from '#lib/units/print-money';

/** What to take off the shelf for one food. */
export interface PackPlan {
  readonly packs: readonly PackCount[];
  readonly minor: number | null;
  readonly currency: string | null;
  /** What the packs hold together, in the unit of the offers. */
  readonly total: number;
  readonly why: string | null;
}

export interface PlanWish {
  /** In the unit of the offers; more than 0. */
  readonly need: number;
  readonly unit: 'mg' | 'ul';
  /** The currency to pay in, where the food has a price in it. */
  readonly currency: string | null;
  /** Planned uses until which what is left over keeps. */
  readonly uses: readonly LaterUse[];
}

/**
 * The packs to buy of a food. Where any has a price, only priced ones of one currency are compared: nobody knows what
 * the others cost. Where all of these are limited and do not go far enough, the packs are chosen without prices.
 * @returns null where no pack is known
 */
export function planPacks(offers: readonly Offer[], wish: PlanWish): PackPlan | null {
  const comparable = comparableOffers(offers, wish.currency);
  const need = Math.ceil(settled(wish.need));
  const laterUse = Math.floor(wish.uses.reduce((sum, { mg }) => sum + mg, 0));
  const choice = choosePacks(comparable, { need, laterUse });
  if (!choice) return beyondLimits(comparable, wish, need);
  const packs = comparable.flatMap((offer, at) => countOf(offer, choice.times[at] ?? 0, wish.unit));
  return {
    packs,
    minor: choice.minor,
    currency: comparable[0]?.currency ?? null,
    total: choice.total,
    why: choice.proven
      ? whyText(comparable, choice, wish, need)
      : 'the best choice that was found; there may be a cheaper one',
  };
}

/** More is needed than offers go: what it costs beyond them nobody knows, so packs are chosen by what they hold. */
function beyondLimits(offers: readonly Offer[], wish: PlanWish, need: number): PackPlan | null {
  const open = offers.map((offer) => {
    const one =
      offer.packs === 0 ? offer : { ...offer, holds: offer.holds / offer.packs, packs: 1 };
    return { ...one, priceFor: one.holds, minor: null, currency: null, most: null };
  });
  const choice = choosePacks(open, { need, laterUse: 0 });
  if (!choice) return null;
  return {
    packs: open.flatMap((offer, at) => countOf(offer, choice.times[at] ?? 0, wish.unit)),
    minor: null,
    currency: null,
    total: choice.total,
    why: 'more is needed than the offer goes for, and what the rest costs is not known',
  };
}

/** Priced offers of the currency wanted, else of the one with most offers; where nothing has a price, all. */
function comparableOffers(offers: readonly Offer[], wanted: string | null): readonly Offer[] {
  const priced = offers.filter(({ currency }) => currency !== null);
  if (priced.length === 0) return offers;
  const known = priced.some(({ currency }) => currency === wanted);
  const currency = known ? wanted : mostCommon(priced.map((offer) => offer.currency ?? ''));
  return priced.filter((offer) => offer.currency === currency);
}

/** The text that stands most often; of equals the first of the alphabet. Null for none. */
export function mostCommon(texts: readonly string[]): string | null {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  const [most] = [...counts].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1));
  return most?.[0] ?? null;
}

function countOf(offer: Offer, times: number, unit: 'mg' | 'ul'): PackCount[] {
  if (times === 0) return [];
  const loose = offer.packs === 0;
  const each = loose ? offer.holds * times : offer.holds / offer.packs;
  return [
    {
      packId: offer.packId,
      name: offer.name,
      shopId: offer.shopId,
      count: loose ? 1 : offer.packs * times,
      looseMg: loose ? offer.holds * times : null,
      netMg: unit === 'mg' ? each : null,
      netMl: unit === 'ul' ? each / 1000 : null,
      minor: offer.minor === null ? null : costOf(offer, times),
      currency: offer.currency,
      seenOn: offer.seenOn,
      atOnce: loose ? 1 : offer.packs,
    },
  ];
}

/** Why more is left over than need be: the sum, and what the choice with the least left over would be. */
function whyText(
  offers: readonly Offer[],
  choice: PackChoice,
  { unit, uses }: PlanWish,
  need: number,
): string | null {
  const currency = offers[0]?.currency;
  if (choice.minor === null || !currency) return null;
  const bare = offers.map((offer) => ({ ...offer, minor: null }));
  const least = choosePacks(bare, { need, laterUse: 0 });
  if (!least || least.left >= choice.left) return null;
  const money = (minor: number) => priceText(minor, currency);
  const other = offers.reduce((sum, offer, at) => sum + costOf(offer, least.times[at] ?? 0), 0);
  const rest = unit === 'mg' ? `${printGrams(choice.left)} g` : `${choice.left / 1000} ml`;
  const kept = uses[0];
  const sum =
    choice.credit > 0 && kept
      ? `${money(choice.minor)} less ${money(choice.credit)} for ${printGrams(choice.keeps)} g that keep for ${kept.segment} is ${money(choice.minor - choice.credit)}`
      : `${money(choice.minor)} with ${rest} left over`;
  const otherWords = offers
    .flatMap((offer, at) => countOf(offer, least.times[at] ?? 0, unit))
    .map(({ count, name }) => `${count} × ${name}`)
    .join(', ');
  return `${sum}; ${otherWords}, with less left over, would be ${money(other)}`;
}
