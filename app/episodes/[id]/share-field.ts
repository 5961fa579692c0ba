import { z } from 'zod';
import { readQuantity } from '#lib/units/read-quantity';
import type { Ratio } from '#lib/episode/fields';
import { unclearNumber } from '#lib/units/printed';

/** A single exact amount as typed, as a share of a dish or how often it is made; null for a range or no amount. */
export function readShare(text: string): Ratio | null {
  const read = readQuantity(text);
  const single = read && read.low.num === read.high.num && read.low.den === read.high.den;
  return single ? read.low : null;
}

/** The same as a field. `what` names it in the sentence: "the part that counts". */
export function share(what: string) {
  return z
    .string()
    .trim()
    .default('1')
    .transform((text, context): Ratio => {
      const read = readShare(text);
      if (read) return read;
      const message = unclearNumber(text) ?? `Write ${what} as 1, 0.5 or 1/2.`;
      context.addIssue({ code: 'custom', message });
      return z.NEVER;
    });
}
