import type { Segment } from '#lib/episode/schema';
import { gramsText, ratioText } from '#lib/units/read-quantity';
import { byEyeWords } from './portion-words';

/**
 * How much of a dish counts to the day, and how that is known.
 * @example eatenWords(dish) // '1/3 by eye, ± 15 %, counts to the day'
 */
export function eatenWords({ eaten, ate }: Pick<Segment, 'eaten' | 'ate'>): string {
  if (ate.kind === 'mass') return `${gramsText(ate)} g of the finished dish count to the day`;
  if (eaten.num === 0) return 'does not count to the day';
  if (ate.kind === 'byEye') return `${byEyeWords(eaten, ate.permille)}, counts to the day`;
  if (eaten.num === eaten.den) return 'the whole counts to the day';
  return `${ratioText(eaten)} counts to the day`;
}
