import type { Food, Section } from '#lib/foods/food';
import { printTo } from '#lib/units/print';

/** Where the limits come from. */
export const YIELD_LIMITS_SOURCE = 'common practice, no source';

/** What cooked weights of a kind of food mostly come to, in percent of the raw weight. */
export interface YieldLimits {
  readonly of: string;
  readonly low: number;
  readonly high: number;
}

const MEAT: YieldLimits = { of: 'meat and fish', low: 40, high: 110 };
const VEGETABLES: YieldLimits = { of: 'vegetables and fruit', low: 40, high: 130 };
const DRIED: YieldLimits = { of: 'grains, pasta, pulses and dried food', low: 120, high: 600 };
/** Of what stands elsewhere in a shop nothing is known: the widest of the three. */
const ANY: YieldLimits = { of: 'food', low: 40, high: 600 };

const BY_SECTION: Partial<Record<Section, YieldLimits>> = {
  meatAndFish: MEAT,
  produce: VEGETABLES,
  frozen: VEGETABLES,
  dryGoods: DRIED,
};

/**
 * The percentages that a food's cooked weight mostly keeps to. Dried food takes up water wherever it stands in a
 * shop. Source: common practice, no source.
 * @example yieldLimits({ section: 'meatAndFish', … }) // { of: 'meat and fish', low: 40, high: 110 }
 */
export function yieldLimits({
  section,
  version,
}: Pick<Food, 'section'> & { readonly version: Pick<Food['version'], 'state'> }): YieldLimits {
  if (version.state === 'dry') return DRIED;
  return BY_SECTION[section] ?? ANY;
}

/**
 * What to ask about a raw and a cooked weight, in milligrams, before they are kept; null where nothing is odd.
 * Nothing is refused: whoever says that it is right is right.
 * @example yieldQuestion(turkey, 500_000, 36_000)
 *   // 'Cooked would be 7 % of raw; meat and fish mostly keep 40 to 110 % (common practice, no source). …'
 */
export function yieldQuestion(
  food: Parameters<typeof yieldLimits>[0],
  rawMg: number,
  cookedMg: number,
): string | null {
  const { of, low, high } = yieldLimits(food);
  const percent = (100 * cookedMg) / rawMg;
  if (percent >= low && percent <= high) return null;
  const swapped = (100 * rawMg) / cookedMg;
  const slip = swapped >= low && swapped <= high ? ' Are the two weights the right way round?' : '';
  return (
    `Cooked would be ${printTo(percent, percent < 10 ? 0.1 : 1)} % of raw; ${of} mostly ` +
    `come to ${low} to ${high} % (${YIELD_LIMITS_SOURCE}).${slip} Is that right?`
  );
}
