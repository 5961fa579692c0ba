import { cellOf } from '#lib/foods/cell-of';
import type { FoodVersion, Values } from '#lib/foods/food';
import { labelInterval, servingInterval } from '#lib/foods/label-rounding';
import type { Nutrient } from '#lib/foods/nutrients';
import { exactly, scaled, type Interval } from '#lib/units/interval';
import { settled } from '#lib/units/print';

/** One column of a label: its values as intervals, and how much food they are stated for. */
export interface LabelColumn {
  readonly path: string;
  readonly words: string;
  readonly values: Values;
  readonly massG: Interval | null;
  readonly volumeMl: number | null;
  /** What the printed cell stands for; null where the column does not state the nutrient. */
  readonly interval: (nutrient: Nutrient) => Interval | null;
}

/** The columns of a food version: the one or two that its label prints. */
export function columnsOf(version: FoodVersion): LabelColumn[] {
  const columns = [column('values', version.basis, version.values, version)];
  if (version.secondColumn) {
    const { basis, values } = version.secondColumn;
    columns.push(column('secondColumn.values', basis, values, version));
  }
  return columns;
}

function column(
  path: string,
  basis: FoodVersion['basis'],
  values: Values,
  version: FoodVersion,
): LabelColumn {
  const interval = (nutrient: Nutrient) =>
    labelInterval(version.rule, nutrient, cellOf(values, nutrient));
  if (basis === 'per100g') {
    return { path, words: '100 g', values, massG: exactly(100), volumeMl: null, interval };
  }
  if (basis === 'per100ml') {
    return { path, words: '100 ml', values, massG: null, volumeMl: 100, interval };
  }
  const mass = servingInterval(version);
  return {
    path,
    words: 'a serving',
    values,
    massG: mass && scaled(mass, 1e-3),
    volumeMl: version.serving?.volumeMl ?? null,
    interval,
  };
}

/** How a column is called on screen. */
export const BASIS_WORDS = {
  per100g: 'per 100 g',
  per100ml: 'per 100 ml',
  serving: 'per serving',
} as const satisfies Readonly<Record<FoodVersion['basis'], string>>;

/** Sum of the lower bounds of the nutrients that a column states. */
export function lowSum(from: LabelColumn, names: readonly Nutrient[]): number {
  return names.reduce((sum, name) => sum + (from.interval(name)?.low ?? 0), 0);
}

/** A number for a sentence, with its unit: at most two decimals. `amount(3.5, 'g')` → `'3.5 g'`. */
export function amount(value: number, unit: string): string {
  return `${Number(value.toFixed(2))} ${unit}`;
}

/**
 * A range for a sentence, its ends with two more digits than they are apart, at least one and at most four
 * decimals. `amountRange({ low: 2.75, value: 3, high: 3.25 }, 'g')` → `'2.75–3.25 g'`.
 */
export function amountRange({ low, high }: Interval, unit: string): string {
  const width = high - low;
  const places = width > 0 ? Math.ceil(settled(-Math.log10(width))) + 1 : 4;
  const end = (value: number) => String(Number(value.toFixed(Math.min(4, Math.max(1, places)))));
  return end(low) === end(high) ? `${end(low)} ${unit}` : `${end(low)}–${end(high)} ${unit}`;
}
