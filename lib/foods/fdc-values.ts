import { readAmount } from '#lib/foods/fdc-amount';
import { fromDailyValue, labelCell } from '#lib/foods/fdc-label';
import { knownNumber } from '#lib/foods/fdc-nutrients';
import type { FdcNutrient } from '#lib/foods/fdc-record';
import type { ServingRead } from '#lib/foods/fdc-serving';
import type { Cell, Values } from '#lib/foods/food';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';

/**
 * The cells of a record. Codes of `food_nutrient_derivation`: LCSL is worked out of a "less than" on the label,
 * LCCD of a percentage of a daily value, LCSG of a "greater than", which no cell can say: it stays missing.
 * An amount of 0 with a limit of quantification is "less than" that limit (from memory).
 * With a serving the cells are the label's numbers per serving, otherwise the published ones. Numbers that are
 * none, or negative, are told in words and stay missing.
 */
export function fdcValues(
  nutrients: readonly FdcNutrient[],
  serving: ServingRead | null,
  faults: string[],
): Values {
  const values: Values = {};
  const places = new Map<Nutrient, number>();
  for (const stated of nutrients) {
    const known = knownNumber(stated.number, stated.unit);
    if (!known) continue;
    const { nutrient, place } = known;
    if ((places.get(nutrient) ?? Infinity) <= place) continue;
    const cell = cellFrom(stated, nutrient, serving, faults);
    if (cell.kind === 'missing') continue;
    values[nutrient] = cell;
    places.set(nutrient, place);
  }
  return values;
}

function cellFrom(
  { amount: typed, loq, derivation }: FdcNutrient,
  nutrient: Nutrient,
  serving: ServingRead | null,
  faults: string[],
): Cell {
  const missing: Cell = { kind: 'missing' };
  const { label } = NUTRIENTS[nutrient];
  const limit = loq.trim() === '' ? null : readAmount(loq);
  const belowLimit = limit && limit.mantissa > 0 ? ({ kind: 'lessThan', ...limit } as const) : null;
  if (typed.trim() === '') return belowLimit ?? missing;
  const amount = readAmount(typed);
  if (!amount || amount.mantissa < 0) {
    faults.push(
      `"${typed.trim().slice(0, 30)}" is no amount of ${label}: a number that is not negative`,
    );
    return missing;
  }
  if (amount.mantissa === 0 && belowLimit) return belowLimit;
  if (derivation === 'LCSG') {
    faults.push(`its label says only that ${label} is more than an amount`);
    return missing;
  }
  const cell: Cell = serving?.perServing
    ? labelCell(serving.rule, nutrient, amount, serving.size)
    : { kind: 'eq', ...amount };
  if (derivation === 'LCCD') return fromDailyValue(cell);
  if (derivation === 'LCSL' && cell.kind === 'eq' && cell.mantissa > 0) {
    return { kind: 'lessThan', mantissa: cell.mantissa, scale: cell.scale };
  }
  return cell;
}
