import { z } from 'zod';
import { gtinFault } from '#lib/foods/gtin';
import { minorFromHundredths } from '#lib/units/print-money';
import { grams, optionalDate, optionalText, revision, rowId } from '../_forms/fields';
import { optionalMoney, optionalNumber, optionalWhole } from '../_forms/number-fields';

const currency = z
  .string()
  .trim()
  .toUpperCase()
  .regex(/^([A-Z]{3})?$/, 'Write the currency as its three letters: USD, EUR, DKK.')
  .default('');

/** What a price is, beside the pack that it is of. */
export const priceTexts = {
  price: optionalMoney,
  currency,
  shop: optionalText(120),
  seenOn: optionalDate,
  offerCount: optionalWhole(1, 1000),
  offerMost: optionalWhole(1, 1000),
  offerUntil: optionalDate,
};
type PriceSent = z.output<z.ZodObject<typeof priceTexts>>;

/** A price as typed; its date is today where none was. */
export interface TypedPrice {
  readonly minor: number;
  readonly currency: string;
  readonly shop: string;
  readonly seenOn: string | null;
  readonly count: number;
  readonly most: number | null;
  readonly until: string | null;
}

/** The price; null where none was typed. What stands beside no price is told. */
export function priceOf(sent: PriceSent, context: z.RefinementCtx): TypedPrice | null {
  const { price, currency: coin, shop, seenOn, offerCount, offerMost, offerUntil } = sent;
  const fault = (path: string, message: string) =>
    context.addIssue({ code: 'custom', path: [path], message });
  if (price === null) {
    if (shop !== '' || offerCount !== null || offerMost !== null || offerUntil !== null) {
      fault('price', 'Say the price that was seen there.');
    }
    return null;
  }
  if (coin === '') fault('currency', 'Say the currency of the price: USD, EUR, DKK.');
  const minor = minorFromHundredths(price, coin);
  if (minor === null)
    fault('price', `${coin} has no hundredths: write the price without decimals.`);
  if (offerUntil !== null && seenOn !== null && offerUntil < seenOn) {
    fault('offerUntil', 'The offer ends before the day on which it was seen.');
  }
  return {
    minor: minor ?? 0,
    currency: coin,
    shop,
    seenOn,
    count: offerCount ?? 1,
    most: offerMost,
    until: offerUntil,
  };
}

export const packTexts = {
  packName: optionalText(160),
  packG: grams,
  packMl: optionalNumber(0, 1_000_000),
  packDrained: grams,
  packStep: grams,
  gtin: optionalText(20),
  ...priceTexts,
};
type PackSent = z.output<z.ZodObject<typeof packTexts>>;

/** A pack as typed, with the price seen of it; null where nothing was typed. */
export function packOf(sent: PackSent, context: z.RefinementCtx, name: string) {
  const { packName, packG, packMl, packDrained, packStep, gtin } = sent;
  const fault = (path: string, message: string) =>
    context.addIssue({ code: 'custom', path: [path], message });
  const price = priceOf(sent, context);
  if (packG === null && packMl === null) {
    if (price !== null || packDrained !== null || packStep !== null || gtin !== '') {
      fault('packG', 'Say what the pack holds, in grams or millilitres.');
    }
    return null;
  }
  const netMg = packG?.valueMg ?? null;
  const drainedMg = packDrained?.valueMg ?? null;
  const stepMg = packStep?.valueMg ?? null;
  if (netMg === 0) fault('packG', 'A pack of 0 g holds nothing: write what it holds.');
  if (packMl === 0) fault('packMl', 'A pack of 0 ml holds nothing: write what it holds.');
  if (drainedMg === 0) fault('packDrained', 'Drained to 0 g it holds nothing: leave it empty.');
  if (netMg !== null && drainedMg !== null && drainedMg > netMg) {
    fault('packDrained', 'Drained it cannot weigh more than the whole pack holds.');
  }
  if (stepMg === 0) fault('packStep', 'A step of 0 g sells nothing: leave it empty for a pack.');
  if (stepMg !== null && netMg === null) {
    fault('packG', 'Say how many grams the loose price is for: 1000 for a kilogram.');
  }
  const wrong = gtin === '' ? null : gtinFault(gtin);
  if (wrong !== null) fault('gtin', wrong);
  const digits = gtin === '' ? null : gtin.replace(/\D/g, '');
  return { name: packName || name, netMg, netMl: packMl, drainedMg, gtin: digits, stepMg, price };
}

export const packForm = z
  .object({ foodId: rowId, foodName: optionalText(240), ...packTexts })
  .transform((sent, context) => {
    const pack = packOf(sent, context, sent.foodName);
    if (!pack) {
      const message = 'Say what the pack holds, in grams or millilitres.';
      context.addIssue({ code: 'custom', path: ['packG'], message });
      return z.NEVER;
    }
    return { foodId: sent.foodId, pack };
  });

export const priceForm = z.object({ packId: rowId, ...priceTexts }).transform((sent, context) => {
  const price = priceOf(sent, context);
  if (price === null) {
    context.addIssue({ code: 'custom', path: ['price'], message: 'Say the price that was seen.' });
    return z.NEVER;
  }
  return { packId: sent.packId, price };
});

export const removePartForm = z.object({ foodId: rowId, partId: rowId, rev: revision });
