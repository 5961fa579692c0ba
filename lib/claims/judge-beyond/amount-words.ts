import type { AmountUnit } from '#lib/claims/statement';

const WORDS: Readonly<Record<AmountUnit, string>> = {
  mg: 'mg',
  g: 'g',
  kg: 'kg',
  oz: 'oz',
  lb: 'lb',
  ml: 'ml',
  l: 'l',
  tsp: 'tsp',
  tbsp: 'tbsp',
  flOz: 'fl oz',
  cup: 'cup',
  pint: 'pint',
  quart: 'quart',
  gallon: 'gallon',
  piece: 'piece',
};
const COUNTED: ReadonlySet<AmountUnit> = new Set(['cup', 'pint', 'quart', 'gallon', 'piece']);

/** A unit as it is written behind a number. `unitText('cup', 2)` → 'cups' */
export function unitText(unit: AmountUnit, value: number): string {
  return COUNTED.has(unit) && value !== 1 ? `${WORDS[unit]}s` : WORDS[unit];
}
