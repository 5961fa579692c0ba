import type { Cell, Values } from '#lib/foods/food';
import type { Nutrient } from '#lib/foods/nutrients';

/** The cell of a nutrient; `{ kind: 'missing' }` where the source has none. */
export function cellOf(values: Values, nutrient: Nutrient): Cell {
  return values[nutrient] ?? { kind: 'missing' };
}
