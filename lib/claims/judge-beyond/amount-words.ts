import type { AmountUnit } from '#lib/claims/statement';
import { MEASURE_WORDS } from '#lib/units/unit-words';

const WORDS: Readonly<Record<AmountUnit, string>> = { ...MEASURE_WORDS, piece: 'piece' };
const COUNTED: ReadonlySet<AmountUnit> = new Set(['cup', 'pint', 'quart', 'gallon', 'piece']);

/** A unit as it is written behind a number. `unitText('cup', 2)` → 'cups' */
export function unitText(unit: AmountUnit, value: number): string {
  return COUNTED.has(unit) && value !== 1 ? `${WORDS[unit]}s` : WORDS[unit];
}
