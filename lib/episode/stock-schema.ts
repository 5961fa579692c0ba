import { z } from 'zod';
import { id, instant, localDate, massMg, oneLine, text } from '#lib/episode/fields';
import { SECTIONS } from '#lib/foods/food-lists';

/**
 * The plain data of the pantry, of shops and of prices: parts of the episode file (`schema.ts`), with the same units.
 * Masses are integer milligrams (`…Mg`), money minor units with its ISO 4217 code, dates local.
 */

const minor = z.int().min(0).max(2_147_483_647);

/** What a person says of a food at home: there is enough, not enough, or none. */
export const STOCK_ANSWERS = ['have', 'notEnough', 'none'] as const;
export type StockAnswer = (typeof STOCK_ANSWERS)[number];

/** What a person says of a food of the pantry, beside its lots. */
export const pantryFoodSchema = z.object({
  foodId: id,
  /** Whether there is enough of it, and on which day that was said; lots, where the food has any, win. */
  answer: z.object({ is: z.enum(STOCK_ANSWERS), on: localDate, remark: oneLine(120) }).nullable(),
  /** How many days it keeps once opened, and who says so; null where the published chart or nobody does. */
  opened: z.object({ days: z.int().min(0).max(3650), source: oneLine(120) }).nullable(),
});
export type PantryFood = z.infer<typeof pantryFoodSchema>;

/** A shop, and its sections in the order in which the person walks; those not named come last. */
export const shopSchema = z.object({
  id,
  name: oneLine(120).min(1),
  sections: z.array(z.enum(SECTIONS)).max(SECTIONS.length).default([]),
});
export type Shop = z.infer<typeof shopSchema>;

/**
 * A price of a pack as it was seen: in one shop (null: in any), for so many at once (1 for an ordinary price), at
 * most so many times, until a day. Of the same shop and number the last one seen counts, of ordinary prices and of
 * those with a limit each for itself.
 */
export const packPriceSchema = z.object({
  shopId: id.nullable(),
  minor,
  currency: z.string().regex(/^[A-Z]{3}$/, 'must be three letters, as in EUR'),
  seenOn: localDate,
  count: z.int().min(1).max(1000).default(1),
  most: z.int().min(1).max(1000).nullable().default(null),
  until: localDate.nullable().default(null),
});
export type PackPrice = z.infer<typeof packPriceSchema>;

/** Whether a price holds only for several at once, so many times, or until a day: it hides no ordinary one. */
export function isOffer({
  count,
  most,
  until,
}: Pick<PackPrice, 'count' | 'most' | 'until'>): boolean {
  return count !== 1 || most !== null || until !== null;
}

/** What a pack has beside its size, name and last price. */
const packMore = {
  /** Sold loose by weight, in steps of so much; its size is then what the price is for. Null for a pack. */
  stepMg: massMg.min(1).nullable().default(null),
  /** Prices in named shops and of several at once. */
  prices: z.array(packPriceSchema).max(60).default([]),
};

/** How a shelf label says amounts: grams and kilograms, or ounces and pounds. */
export const SHELF_UNITS = ['metric', 'us'] as const;
export type ShelfUnits = (typeof SHELF_UNITS)[number];

/** What of shopping stands with the kitchen. */
export const kitchenMore = {
  shelfUnits: z.enum(SHELF_UNITS).default('metric'),
  /**
   * How far a price may have moved in a year, in thousandths, to either side: 50 is 5 %. Common practice, no
   * source.
   */
  priceDriftPermille: z.int().min(0).max(1000).default(50),
};

/** An amount in stock as a ledger: the sum of its moves, never a number that is overwritten. */
export const stockLotSchema = z.object({
  id,
  foodId: id,
  place: oneLine(80),
  openedOn: localDate.nullable(),
  useBy: localDate.nullable(),
  moves: z.array(
    z.object({
      id,
      kind: z.enum(['bought', 'counted', 'used', 'thrownAway']),
      deltaMg: z.int().min(-1_000_000_000).max(1_000_000_000),
      at: instant,
    }),
  ),
});
export type StockLot = z.infer<typeof stockLotSchema>;

export const packSchema = z.object({
  id,
  foodId: id,
  name: oneLine(160),
  netMg: massMg.min(1).nullable(),
  netMl: z.number().positive().nullable(),
  drainedMg: massMg.min(1).nullable(),
  gtin: text(14).nullable(),
  ...packMore,
  /** The last price seen of one, in no shop named, in minor units of an ISO 4217 currency. */
  price: z
    .object({ minor: z.int().min(0), currency: z.string().length(3), seenOn: localDate })
    .nullable(),
});
export type Pack = z.infer<typeof packSchema>;
