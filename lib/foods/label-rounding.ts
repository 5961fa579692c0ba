import { cellOf } from '#lib/foods/cell-of';
import type { Cell, FoodVersion, RoundingRule } from '#lib/foods/food';
import type { Nutrient } from '#lib/foods/nutrients';
import { gridRule, US_SERVING_GRAMS, type Band, type GridRule } from '#lib/foods/rounding-rules';
import { exactly, intersect, scaled, times, type Interval } from '#lib/units/interval';
import { printedInterval, printedValue, type Printed } from '#lib/units/printed';

/**
 * Every declaration that a US label may print for a true amount per serving, in the nutrient's unit:
 * ties give both neighbours (the regulation does not say), every "may" gives its words too.
 * Nutrients without a rounding rule of their own give none.
 * `declareUs('energyKcal', 3)` → `['0', '5']`; `declareUs('protein', 0.8)` → `['1', '<1']`.
 * Source: 21 CFR 101.9(c), by paragraph in `rounding-rules.ts`.
 */
export function declareUs(nutrient: Nutrient, trueValue: number): string[] {
  return declare(gridRule('us', nutrient), trueValue);
}

/** As `declareUs`, by the EU guidance of 2012. `declareEu('fat', 0.3)` → `['0.3', '0', '<0.5']`. */
export function declareEu(nutrient: Nutrient, trueValue: number): string[] {
  return declare(gridRule('eu', nutrient), trueValue);
}

function declare(rule: GridRule | null, trueValue: number): string[] {
  if (!rule) return [];
  if (!(trueValue >= 0)) throw new Error(`A true amount is not negative, got ${trueValue}`);
  if (trueValue < rule.zeroBelow) return ['0'];
  const declared = new Set<string>();
  const band =
    rule.bands.find(({ from, to }) => trueValue >= from && trueValue < to) ?? rule.bands.at(-1);
  // An amount exactly between two bands belongs to the lower one as well ("up to and including").
  for (const each of rule.bands) {
    if (each === band || each.to === trueValue) {
      for (const text of nearest(each, trueValue)) declared.add(text);
    }
  }
  if (trueValue < rule.mayBeZeroBelow) declared.add('0');
  const { lessThan } = rule;
  if (lessThan && trueValue >= lessThan.from && trueValue < lessThan.below) {
    declared.add(`<${lessThan.printed}`);
  }
  return [...declared];
}

function nearest({ stepNum, stepDen }: Band, trueValue: number): string[] {
  const below = Math.floor((trueValue * stepDen) / stepNum);
  const decimals = stepDen === 1 ? 0 : stepDen === 100 ? 2 : 1;
  const at = (steps: number) => (steps * stepNum) / stepDen;
  const toBelow = trueValue - at(below);
  const toAbove = at(below + 1) - trueValue;
  const texts: string[] = [];
  if (toBelow <= toAbove) texts.push(String(Number(at(below).toFixed(decimals))));
  if (toAbove <= toBelow) texts.push(String(Number(at(below + 1).toFixed(decimals))));
  return texts;
}

/**
 * What a printed cell stands for, in the nutrient's unit: the smallest closed interval that holds every true
 * value which the rule may print so (both ties, every "may"). The value is the one printed.
 * Trace is exactly 0, for the caller to flag; missing is null. A value that the rule cannot print, and a
 * nutrient without a rule, stand for half a unit of the last place printed. An error that the source prints counts
 * on top of that.
 * `labelInterval('us', 'energyKcal', 50)` → 47.5 to 55; "<1 g" → 0 to 1; a table's "12.4 ± 0.3" → 12.05 to 12.75.
 */
export function labelInterval(rule: RoundingRule, nutrient: Nutrient, cell: Cell): Interval | null {
  const grid = gridRule(rule, nutrient);
  switch (cell.kind) {
    case 'missing':
      return null;
    case 'trace':
      return exactly(0);
    case 'lessThan': {
      const limit = printedValue(cell);
      const special = grid?.lessThan?.printed === limit ? grid.lessThan.below : limit;
      return { low: 0, value: limit, high: Math.max(limit, special) };
    }
    case 'eq':
      return withError((grid && invert(grid, cell)) ?? printedInterval(cell), cell.plusMinus);
  }
}

function withError({ low, value, high }: Interval, plusMinus: Printed | undefined): Interval {
  const error = plusMinus ? printedValue(plusMinus) : 0;
  return { low: Math.max(0, low - error), value, high: high + error };
}

/** Whether a rule can print a cell at all: 63 kcal stands on no US label that follows the rule. */
export function canBePrinted(rule: RoundingRule, nutrient: Nutrient, cell: Cell): boolean {
  const grid = gridRule(rule, nutrient);
  return !grid || cell.kind !== 'eq' || invert(grid, cell) !== null;
}

function invert(rule: GridRule, printed: Printed): Interval | null {
  const value = printedValue(printed);
  const parts: Interval[] = [];
  if (value === 0) {
    const limit = Math.max(rule.zeroBelow, rule.mayBeZeroBelow);
    parts.push({ low: 0, value, high: limit });
  }
  for (const { from, to, stepNum, stepDen } of rule.bands) {
    if (!isMultiple(printed, stepNum, stepDen)) continue;
    const half = stepNum / stepDen / 2;
    const low = Math.max(from, value - half);
    const high = Math.min(to, value + half);
    if (low <= high && low < to) parts.push({ low, value, high });
  }
  if (parts.length === 0) return null;
  return {
    low: Math.min(...parts.map((part) => part.low)),
    value,
    high: Math.max(...parts.map((part) => part.high)),
  };
}

/** Whether mantissa / 10^scale is a whole number of stepNum / stepDen; in integers. */
function isMultiple({ mantissa, scale }: Printed, stepNum: number, stepDen: number): boolean {
  return (mantissa * stepDen) % (stepNum * 10 ** scale) === 0;
}

/**
 * What a food version says of a nutrient for its basis, in the nutrient's unit; null where it says nothing.
 * Where the label prints a second column (100 g or 100 ml beside a serving, or a serving beside them), both
 * readings are used: the interval is what they share. If they share nothing, one was misread (`checkLabel` says
 * so) and the first stands.
 */
export function cellInterval(version: FoodVersion, nutrient: Nutrient): Interval | null {
  const first = labelInterval(version.rule, nutrient, cellOf(version.values, nutrient));
  const second = secondColumnInterval(version, nutrient);
  if (!first) return second;
  return (second && intersect(first, second)) ?? first;
}

/** What the second column says, turned into the first column's basis; null where there is none. */
export function secondColumnInterval(version: FoodVersion, nutrient: Nutrient): Interval | null {
  const { secondColumn, rule } = version;
  if (!secondColumn) return null;
  const cell = labelInterval(rule, nutrient, cellOf(secondColumn.values, nutrient));
  return cell && betweenColumns(version, cell, secondColumn.basis, version.basis);
}

/** What the first column says, turned into the second column's basis; null where there is none. */
export function firstColumnInterval(version: FoodVersion, nutrient: Nutrient): Interval | null {
  const { secondColumn, rule, values } = version;
  if (!secondColumn) return null;
  const cell = labelInterval(rule, nutrient, cellOf(values, nutrient));
  return cell && betweenColumns(version, cell, version.basis, secondColumn.basis);
}

/** An amount per serving as one per 100 g or ml, or back; null where neither is a serving, or its size is unknown. */
function betweenColumns(
  version: FoodVersion,
  cell: Interval,
  from: FoodVersion['basis'],
  to: FoodVersion['basis'],
): Interval | null {
  if ((from === 'serving') === (to === 'serving')) return null;
  const serving = servingHundredths(version, from === 'serving' ? to : from);
  if (!serving || serving.low <= 0) return null;
  if (to === 'serving') return times(cell, serving);
  return {
    low: cell.low / serving.high,
    value: cell.value / serving.value,
    high: cell.high / serving.low,
  };
}

/** How many times 100 g, or 100 ml, a serving is, with its rounding bounds. */
function servingHundredths(version: FoodVersion, basis: FoodVersion['basis']): Interval | null {
  if (basis === 'per100g') {
    const mass = servingInterval(version);
    return mass && scaled(mass, 1e-5);
  }
  const volume = version.serving?.volumeMl ?? null;
  if (volume === null) return null;
  const half = 0.5 / 10 ** (version.serving?.decimals ?? 0);
  return scaled({ low: Math.max(0, volume - half), value: volume, high: volume + half }, 1e-2);
}

/**
 * The mass of one label serving in milligrams, with its rounding bounds; null where it is not printed.
 * US labels round it by 101.9(b)(7); others, and what that rule cannot print, by half a unit of the last place.
 * A printed "30 g" → 29,500 to 30,500 mg.
 */
export function servingInterval(version: FoodVersion): Interval | null {
  const { serving, rule } = version;
  if (!serving || serving.massMg === null) return null;
  if (rule === 'us') {
    const grams = invert(US_SERVING_GRAMS, { mantissa: serving.massMg, scale: 3 });
    if (grams) return scaled(grams, 1000);
  }
  const half = 500 / 10 ** serving.decimals;
  return {
    low: Math.max(0, serving.massMg - half),
    value: serving.massMg,
    high: serving.massMg + half,
  };
}
