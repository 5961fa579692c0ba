import type { LineUnit, RecipeLine } from '#lib/episode/recipe-schema';

/** Units by weight that an ingredient made from a dish can be given in, all of its finished weight. */
export const DISH_MASS_UNITS = ['g', 'kg', 'oz', 'lb'] as const satisfies readonly LineUnit[];

/** Before the name of a portion, where a unit is one. */
export const PORTION_UNIT = 'portion:';

/** The unit of an ingredient made from a dish, as its form has it. */
export function dishUnitText({
  unit,
  measureName,
}: Pick<RecipeLine, 'unit' | 'measureName'>): string {
  if (unit === 'portion' && measureName !== null) return `${PORTION_UNIT}${measureName}`;
  return unit ?? 'g';
}
