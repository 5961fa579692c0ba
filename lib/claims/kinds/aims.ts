import type { Quantity } from '../numbers/quantity';

/** What a recipe asks for by words that elsewhere say an aim. */
const ASKED_FOR: ReadonlySet<string> = new Set([
  'insideTemperature',
  'ovenTemperature',
  'minutes',
  'amount',
  'portions',
]);

/** Keeps aims that are steps of the recipe: 'you want 74 degrees inside' says how it is made, '150 g of protein' not. */
export function keepAims(quantities: readonly Quantity[]): void {
  for (const quantity of quantities) {
    const asked = quantity.said !== null && ASKED_FOR.has(quantity.said.kind);
    if (quantity.killed === 'aim' && asked) quantity.killed = null;
  }
}
