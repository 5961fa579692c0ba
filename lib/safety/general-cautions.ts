import {
  COLD_STORAGE_CHART,
  FOOD_CODE_COOLING,
  FOOD_CODE_THAWING,
  FSIS_TWO_HOURS,
  type Caution,
} from '#lib/safety/caution';
import type { SafeTemperature } from '#lib/safety/safe-temperatures';

/** Perishable food out of the refrigerator: two hours in all, one above 90 °F. */
export const TWO_HOURS: Caution = {
  id: 'two-hours',
  text: 'Perishable food stands out of the refrigerator at most 2 h in all, 1 h above 32 °C (90 °F).',
  source: FSIS_TWO_HOURS,
};

/** Cooling cooked food in two stages. */
export const COOLING_STAGES: Caution = {
  id: 'cooling',
  text: 'Cool cooked food from 57 °C (135 °F) to 21 °C (70 °F) within 2 h and to 5 °C (41 °F) within 6 h in all.',
  source: FOOD_CODE_COOLING,
};

/** Thawing: the ways that there are, and none of them on the counter. */
export const THAWING: Caution = {
  id: 'thawing',
  text: 'Thaw in the refrigerator at 5 °C (41 °F) or colder; or under cold running water at 21 °C (70 °F) or colder, raw food not above 5 °C (41 °F) for more than 4 h in all; or in the microwave or the pan itself, cooked at once. Not on the counter.',
  source: FOOD_CODE_THAWING,
};

/** Leftovers: days in the refrigerator. */
export const LEFTOVERS: Caution = {
  id: 'leftovers',
  text: 'Eat cooked leftovers within 3 to 4 days at 4 °C (40 °F) or freeze them.',
  source: COLD_STORAGE_CHART,
};

/**
 * The caution of a row of the safe-temperature chart.
 *
 * @example "Inside temperature of poultry …: at least 73.9 °C (165 °F)."
 */
export function insideTemperatureCaution(row: SafeTemperature): Caution {
  const celsius = (Math.round(row.milliC / 100) / 10).toFixed(1);
  const rest = row.restS > 0 ? `, then ${row.restS / 60} min rest` : '';
  return {
    id: `inside-${row.foodClass}`,
    text: `Inside temperature of ${row.name}: at least ${celsius} °C (${row.fahrenheit} °F)${rest}.`,
    source: row.source,
  };
}
