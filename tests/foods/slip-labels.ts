import { checkLabel } from '#lib/foods/check-label';
import {
  cellOf,
  type Food,
  type FoodVersion,
  type RoundingRule,
  type Values,
} from '#lib/foods/food';
import { declareEu, declareUs } from '#lib/foods/label-rounding';
import { LABEL_PANELS } from '#lib/foods/label-panel';
import { isNutrient, NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { cellTyped, readCell } from '#lib/foods/read-cell';
import { printedValue } from '#lib/units/printed';
import { labelVersion } from './label-version';

/** A small generator of reproducible numbers (Lehmer 1951, multiplier 48271), for picks of a test. */
export class Picks {
  constructor(private state: number) {}
  below(n: number): number {
    this.state = (this.state * 48_271) % 2_147_483_647;
    return this.state % n;
  }
  of<T>(list: readonly T[]): T {
    const picked = list[this.below(list.length)];
    if (picked === undefined) throw new Error('picked from nothing');
    return picked;
  }
}

/** The true amounts per 100 g that a table food's label would be made from. */
function amounts(food: Food): Map<Nutrient, number> | null {
  const found = new Map<Nutrient, number>();
  for (const nutrient of Object.keys(NUTRIENTS).filter(isNutrient)) {
    const cell = cellOf(food.version.values, nutrient);
    if (cell.kind === 'eq') found.set(nutrient, printedValue(cell));
  }
  for (const macro of [
    'energyKcal',
    'protein',
    'fat',
    'carbohydrate',
    'fibre',
    'sugars',
  ] as const) {
    if (!found.has(macro)) return null;
  }
  const at = (nutrient: Nutrient) => found.get(nutrient) ?? 0;
  found.set('salt', (at('sodium') * 2.5) / 1000);
  return found;
}

function printedLabel(
  amounts: ReadonlyMap<Nutrient, number>,
  rule: 'us' | 'eu',
  share: number,
  picks: Picks,
): Values {
  const values: Values = {};
  for (const nutrient of LABEL_PANELS[rule].main) {
    const per100 = amounts.get(nutrient);
    if (per100 === undefined) continue;
    const texts = (rule === 'us' ? declareUs : declareEu)(nutrient, per100 * share);
    const cell = readCell(picks.of(texts), nutrient);
    if (cell) values[nutrient] = cell;
  }
  return values;
}

export const KINDS = ['us', 'eu', 'euTwoColumns'] as const;

/** Labels printed by the rules from foods of the table, about which there is nothing to remark. */
export function consistentLabels(
  foods: readonly Food[],
  kind: (typeof KINDS)[number],
  many: number,
): FoodVersion[] {
  const picks = new Picks(kind.length + 17);
  const labels: FoodVersion[] = [];
  while (labels.length < many) {
    const food = picks.of(foods);
    const found = amounts(food);
    if (!found) continue;
    const grams = 20 + picks.below(181);
    const serving = { massMg: grams * 1000, volumeMl: null, decimals: 0, text: '', perPack: null };
    const at = (nutrient: Nutrient) => found.get(nutrient) ?? 0;
    const available = Math.max(0, at('carbohydrate') - at('fibre'));
    // Regulation (EU) 1169/2011 Annex XIV: an EU label states energy by these factors.
    const eu = new Map(found)
      .set('carbohydrate', available)
      .set('energyKj', 37 * at('fat') + 17 * (at('protein') + available) + 8 * at('fibre'))
      .set('energyKcal', 9 * at('fat') + 4 * (at('protein') + available) + 2 * at('fibre'));
    const version =
      kind === 'us'
        ? labelVersion({ serving, values: printedLabel(found, 'us', grams / 100, picks) })
        : labelVersion({
            serving,
            rule: 'eu',
            basis: 'per100g',
            carbBasis: 'available',
            values: printedLabel(eu, 'eu', 1, picks),
            secondColumn:
              kind === 'eu'
                ? null
                : { basis: 'serving', values: printedLabel(eu, 'eu', grams / 100, picks) },
          });
    if (checkLabel(version).length === 0) labels.push(version);
  }
  return labels;
}

export const SLIPS = ['decimal', 'digits', 'fields', 'digit'] as const;
export type PlantedKind = (typeof SLIPS)[number];

export interface Planted {
  readonly version: FoodVersion;
  /** What undoes it: the path and the right text of each changed number. */
  readonly undoing: readonly string[];
}

/** Makes one slip of a kind in the first column; null where the picked line has none of that kind. */
export function plant(version: FoodVersion, kind: PlantedKind, picks: Picks): Planted | null {
  const { rule, values } = version;
  const lines = LABEL_PANELS[rule as RoundingRule].main.filter(
    (name) => values[name]?.kind === 'eq',
  );
  const nutrient = picks.of(lines);
  const right = cellTyped(cellOf(values, nutrient));
  const change = (wrong: Partial<Record<Nutrient, string>>): Planted | null => {
    const changed = Object.entries(wrong).filter(([name]) => isNutrient(name));
    const next: Values = { ...values };
    for (const [name, text] of changed) {
      const cell = isNutrient(name) && readCell(text, name);
      if (cell && isNutrient(name)) next[name] = cell;
    }
    const undoing = changed.map(([name]) => {
      return `values.${name} ${isNutrient(name) ? Number(cellTyped(cellOf(values, name))) : ''}`;
    });
    return { version: { ...version, values: next }, undoing: undoing.sort() };
  };
  const digits = right.replace('.', '');
  if (kind === 'decimal') {
    if (Number(right) === 0) return null;
    const wrong = picks.below(2) === 0 ? Number(right) * 10 : Number(right) / 10;
    return change({ [nutrient]: String(Number(wrong.toFixed(4))) });
  }
  if (kind === 'digits') {
    const at = picks.below(Math.max(1, digits.length - 1));
    const pair = [...digits];
    const [one, other] = [pair[at], pair[at + 1]];
    if (one === undefined || other === undefined || one === other) return null;
    pair[at] = other;
    pair[at + 1] = one;
    return change({ [nutrient]: withPoint(pair.join(''), right) });
  }
  if (kind === 'digit') {
    const at = picks.below(digits.length);
    const digit = String(picks.below(10));
    if (digits[at] === digit) return null;
    return change({
      [nutrient]: withPoint(digits.slice(0, at) + digit + digits.slice(at + 1), right),
    });
  }
  const next = lines[lines.indexOf(nutrient) + 1];
  if (next === undefined) return null;
  const other = cellTyped(cellOf(values, next));
  return other === right ? null : change({ [nutrient]: other, [next]: right });
}

function withPoint(digits: string, like: string): string {
  const point = like.indexOf('.');
  const text = point < 0 ? digits : `${digits.slice(0, point)}.${digits.slice(point)}`;
  return text.replace(/^0+(?=\d)/, '');
}
