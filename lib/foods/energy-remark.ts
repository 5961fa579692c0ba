import { checkLabel } from '#lib/foods/check-label';
import { energyReasons } from '#lib/foods/energy-check';
import type { Food } from '#lib/foods/food';

/** What `checkLabel` says of energy. */
const ENERGY_CODES: ReadonlySet<string> = new Set([
  'energy-above-fat',
  'energy-below-nutrients',
  'energy-above-nutrients',
  'energy-off-nutrients',
]);

/**
 * Why a food's stated energy is not what its nutrients give, as far as its name or its label tell: alcohol, polyols,
 * acids and the like. Null where the energy fits, what is odd was kept with a reason, or nothing is known.
 * @example foodEnergyReason(vinegar) // 'Likely: organic acids give 2 to 3 kcal a gram.'
 */
export function foodEnergyReason({ name, version }: Pick<Food, 'name' | 'version'>): string | null {
  if (!checkLabel(version).some(({ code }) => ENERGY_CODES.has(code))) return null;
  const reasons = energyReasons(name, version).map(({ words }) => words);
  return reasons.length > 0 ? `Likely: ${reasons.join('; ')}.` : null;
}
