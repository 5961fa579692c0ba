import { isLabelled, shelfLabelFaults, type ShelfLabel } from '#lib/foods/shelf-label';
import type { InsteadEvent, PaidEvent } from '#lib/shopping/list-events';
import { minorFromHundredths } from '#lib/units/print-money';
import { readMoney, readPrintedGrams, readWhole } from '#lib/units/read-typed';
import { unclearNumber } from '#lib/units/printed';

/** What was typed, read; or what is wrong, by field. */
export type TypedAtShelf<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: Readonly<Record<string, string>> };

/** The texts of "not there, took instead". */
export interface InsteadTexts {
  readonly name: string;
  /** The same food, in another pack or from another maker's shelf: what its label says is known already. */
  readonly same: boolean;
  readonly count: string;
  /** Grams of one. */
  readonly grams: string;
  readonly basis: 'per100g' | 'per100ml' | 'serving';
  readonly servingGrams: string;
  readonly values: Readonly<Record<string, string>>;
}

type InsteadPayload = InsteadEvent['payload'];

const NAME_MAX = 240;
const LARGEST_MG = 1_000_000_000;

/**
 * Something else that was taken, from the texts of its form. Grams may stay empty, and are then unknown; values of the
 * label are kept as typed.
 * @param foodId the food that was not there
 * @example readInstead({ name: 'Kvarg 300 g', count: '2', grams: '300', … }, 'f1', null).value.packs // [{ …, mg: 600_000 }]
 */
export function readInstead(
  texts: InsteadTexts,
  foodId: string,
  photoSha256: string | null,
): TypedAtShelf<InsteadPayload> {
  const faults: Record<string, string> = {};
  const name = texts.name.trim();
  if (name === '') faults.name = 'Say what was taken, in the words of its front.';
  if (name.length > NAME_MAX) faults.name = `At most ${NAME_MAX} characters fit here.`;
  const count = texts.count.trim() === '' ? 1 : readWhole(texts.count);
  if (count === null || count < 1 || count > 1000) {
    faults.count = 'Write how many as a whole number: 1, 2, 3.';
  }
  const grams = gramsIn(texts.grams);
  if (grams === undefined) {
    faults.grams =
      unclearNumber(texts.grams) ??
      'Write the grams of one as printed: 300 or 28.5; empty where it says none.';
  }
  const label = texts.same ? null : shelfLabel(texts);
  if (label) Object.assign(faults, shelfLabelFaults(label));
  if (gramsIn(texts.servingGrams) === undefined) {
    faults.serving = unclearNumber(texts.servingGrams) ?? 'Write grams as printed: 28 or 28.5.';
  }
  const mg = grams && count ? grams * count : null;
  if (mg !== null && mg > LARGEST_MG) faults.grams = 'This is more than a tonne: look at it again.';
  if (Object.keys(faults).length > 0 || count === null) return { ok: false, faults };
  const takenFoodId = texts.same ? foodId : null;
  const packs = [{ packId: null, count, mg }];
  return {
    ok: true,
    value: {
      name,
      takenFoodId,
      packs,
      label: label && isLabelled(label) ? label : null,
      photoSha256,
    },
  };
}

/** The label of the form as it stands; what is no mass counts as not typed. */
export function shelfLabel(
  texts: Pick<InsteadTexts, 'basis' | 'servingGrams' | 'values'>,
): ShelfLabel {
  const typed = Object.entries(texts.values).flatMap(([nutrient, text]) =>
    text.trim() === '' ? [] : [[nutrient, text.trim()] as const],
  );
  const servingMg = gramsIn(texts.servingGrams) ?? null;
  return { basis: texts.basis, servingMg, values: Object.fromEntries(typed) };
}

/** Milligrams; null for an empty text, undefined for one that is no mass. */
function gramsIn(text: string): number | null | undefined {
  if (text.trim() === '') return null;
  const read = readPrintedGrams(text);
  return read && read.mg > 0 ? read.mg : undefined;
}

/** The texts of what was paid. */
export interface PaidTexts {
  readonly amount: string;
  readonly currency: string;
  readonly on: string;
  readonly shopId: string;
}

/**
 * What was paid for all, from the texts of its form.
 * @example readPaid({ amount: '61.15', currency: 'usd', on: '2026-12-11', shopId: '' }).value.minor // 6115
 */
export function readPaid({
  amount,
  currency,
  on,
  shopId,
}: PaidTexts): TypedAtShelf<PaidEvent['payload']> {
  const faults: Record<string, string> = {};
  const code = currency.trim().toUpperCase();
  const hundredths = readMoney(amount);
  const minor = hundredths === null ? null : minorFromHundredths(hundredths, code);
  if (minor === null || minor > 2_147_483_647) {
    faults.amount = unclearNumber(amount) ?? 'Write the sum on the receipt: 61.15.';
  }
  if (!/^[A-Z]{3}$/.test(code)) faults.currency = 'Write the currency as three letters: USD, EUR.';
  if (!/^\d{4}-\d\d-\d\d$/.test(on)) faults.on = 'Choose the date on the receipt.';
  if (Object.keys(faults).length > 0 || minor === null) return { ok: false, faults };
  return { ok: true, value: { shopId: shopId === '' ? null : shopId, minor, currency: code, on } };
}
