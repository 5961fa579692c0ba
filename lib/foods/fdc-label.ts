import type { Cell, RoundingRule } from '#lib/foods/food';
import { canBePrinted } from '#lib/foods/label-rounding';
import type { Nutrient } from '#lib/foods/nutrients';
import { printedValue, type Printed } from '#lib/units/printed';

/** Decimals that a label prints at most. */
const LABEL_DECIMALS = 2;
/** A hair against the rounding of binary fractions. */
const HAIR = 1e-9;
/** More numbers than these in question are told apart by nobody. */
const MOST_IN_QUESTION = 400;

/**
 * What a label printed for a serving, out of the amount per 100 g (or ml) that FoodData Central works out of it:
 * of the numbers whose amount per 100 would be published as `amount`, the one with the fewest decimals, one that
 * the label's rule can print before others, then the nearest. Where several could have been printed, how far the
 * furthest of them is off stands as the cell's ±. Two different labels may be published alike, so this is what
 * the label most plainly said, with bounds that hold for all that it may have said.
 * `labelCell('us', 'fat', { mantissa: 3571, scale: 2 }, 28)` → `{ kind: 'eq', mantissa: 10, scale: 0 }`.
 */
export function labelCell(
  rule: RoundingRule,
  nutrient: Nutrient,
  amount: Printed,
  servingSize: number,
): Cell {
  const per = servingSize / 100;
  const value = printedValue(amount) * per;
  const half = (0.5 / 10 ** amount.scale) * per;
  for (let scale = 0; scale <= LABEL_DECIMALS; scale += 1) {
    const found = inQuestion(Math.max(0, value - half), value + half, scale);
    if (found.length === 0) continue;
    const plain = found.filter((mantissa) =>
      canBePrinted(rule, nutrient, { kind: 'eq', mantissa, scale }),
    );
    return chosen(plain.length > 0 ? plain : found, value, scale);
  }
  return { kind: 'eq', mantissa: Math.round(value * 1000), scale: LABEL_DECIMALS + 1 };
}

function inQuestion(low: number, high: number, scale: number): number[] {
  const unit = 10 ** scale;
  const first = Math.ceil(low * unit - HAIR);
  const last = Math.min(Math.floor(high * unit + HAIR), first + MOST_IN_QUESTION);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, at) => first + at);
}

function chosen(mantissas: readonly number[], value: number, scale: number): Cell {
  const wanted = value * 10 ** scale;
  const nearest = mantissas.reduce((best, each) =>
    Math.abs(each - wanted) < Math.abs(best - wanted) ? each : best,
  );
  const off = Math.max(...mantissas.map((each) => Math.abs(each - nearest)));
  const cell = { kind: 'eq', mantissa: nearest, scale } as const;
  return off === 0 ? cell : { ...cell, plusMinus: { mantissa: off, scale } };
}

/**
 * A value that was worked out of a percentage of a daily value. Labels print those in steps of 2 below 10, of 5
 * below 50 and of 10 above (21 CFR 101.9(c)(8)(iii)), so the widest step is half of what is printed (2 ± 1): that
 * stands as its ±. Zero percent says only that it is less than the smallest step of a daily value that is not
 * told: missing.
 */
export function fromDailyValue(cell: Cell): Cell {
  if (cell.kind !== 'eq') return cell;
  if (cell.mantissa === 0) return { kind: 'missing' };
  const halved = { mantissa: Math.ceil(cell.mantissa / 2), scale: cell.scale };
  return { ...cell, plusMinus: halved };
}
