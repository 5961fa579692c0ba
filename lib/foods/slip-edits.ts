import type { Cell, FoodVersion, Values } from '#lib/foods/food';
import { LABEL_PANELS } from '#lib/foods/label-panel';
import { isNutrient, type Nutrient } from '#lib/foods/nutrients';
import { cellTyped } from '#lib/foods/read-cell';
import { printedGramsTyped } from '#lib/units/read-typed';

/** How a number is mistyped or misread. */
export type SlipKind = 'decimal' | 'digits' | 'fields' | 'digit';

/** One number of a label, by the path that problems use: `values.protein`, `serving`. */
export interface SlipChange {
  readonly path: string;
  /** Null for the serving's grams. */
  readonly nutrient: Nutrient | null;
  readonly from: string;
  readonly to: string;
}

/** A label as it would read without one slip. */
export interface SlipEdit {
  readonly kind: SlipKind;
  readonly changes: readonly SlipChange[];
  readonly version: FoodVersion;
  /** For two fields: how many lines of the panel apart they stand. */
  readonly apart: number;
}

type Digits = Extract<Cell, { kind: 'eq' }>;
const COLUMNS = ['values', 'secondColumn.values'] as const;
type ColumnPath = (typeof COLUMNS)[number];

/**
 * Every label that differs from this one by undoing one slip: a decimal point one or two places off, two
 * neighbouring digits swapped, two lines swapped, one digit wrong. The kinds of slip are common practice of
 * double-entry checking, no source.
 */
export function slipEdits(version: FoodVersion): SlipEdit[] {
  const edits: SlipEdit[] = servingEdits(version);
  for (const path of COLUMNS) {
    const values = valuesAt(version, path);
    if (!values) continue;
    const stated = Object.keys(values).filter(isNutrient);
    for (const nutrient of stated) {
      const cell = values[nutrient];
      if (cell?.kind !== 'eq') continue;
      for (const [kind, digits] of rewritten(cell)) {
        const to: Cell = { kind: 'eq', ...digits };
        edits.push({
          kind,
          changes: [change(path, nutrient, cell, to)],
          version: withValues(version, path, { ...values, [nutrient]: to }),
          apart: 0,
        });
      }
    }
    edits.push(...swappedLines(version, path, values));
  }
  return edits;
}

function swappedLines(version: FoodVersion, path: ColumnPath, values: Values): SlipEdit[] {
  const lines = LABEL_PANELS[version.rule].main.filter((name) => values[name] !== undefined);
  const edits: SlipEdit[] = [];
  lines.forEach((upper, index) => {
    lines.slice(index + 1).forEach((lower, between) => {
      const [one, other] = [values[upper], values[lower]];
      if (!one || !other || cellTyped(one) === cellTyped(other)) return;
      edits.push({
        kind: 'fields',
        changes: [change(path, upper, one, other), change(path, lower, other, one)],
        version: withValues(version, path, { ...values, [upper]: other, [lower]: one }),
        apart: between + 1,
      });
    });
  });
  return edits;
}

function servingEdits(version: FoodVersion): SlipEdit[] {
  const { serving } = version;
  if (!serving || serving.massMg === null) return [];
  const { massMg, decimals } = serving;
  const typed: Digits = { kind: 'eq', mantissa: massMg / 10 ** (3 - decimals), scale: decimals };
  if (!Number.isInteger(typed.mantissa)) return [];
  return rewritten(typed).flatMap(([kind, { mantissa, scale }]): SlipEdit[] => {
    if (kind === 'digit' || scale > 3 || mantissa === 0) return [];
    const mass = mantissa * 10 ** (3 - scale);
    const [from, to] = [printedGramsTyped(massMg, decimals), printedGramsTyped(mass, scale)];
    return [
      {
        kind,
        changes: [{ path: 'serving', nutrient: null, from, to }],
        version: { ...version, serving: { ...serving, massMg: mass, decimals: scale } },
        apart: 0,
      },
    ];
  });
}

/** The numbers that one slip may have made of another, each once, with the simplest slip that explains it. */
function rewritten({ mantissa, scale }: Digits): [SlipKind, { mantissa: number; scale: number }][] {
  const found = new Map<string, [SlipKind, { mantissa: number; scale: number }]>();
  const offer = (kind: SlipKind, digits: number, decimals: number) => {
    const key = `${digits}/${decimals}`;
    const same = digits * 10 ** scale === mantissa * 10 ** decimals;
    if (!same && decimals <= MOST_DECIMALS && digits <= LARGEST && !found.has(key)) {
      found.set(key, [kind, { mantissa: digits, scale: decimals }]);
    }
  };
  for (const places of [1, 2]) {
    offer(
      'decimal',
      scale >= places ? mantissa : mantissa * 10 ** (places - scale),
      Math.max(0, scale - places),
    );
    // Nobody prints the nought that a point before it would leave: 230 for 23.
    const nought = mantissa % 10 ** places === 0;
    offer('decimal', nought ? mantissa / 10 ** places : mantissa, nought ? scale : scale + places);
  }
  const digits = String(mantissa).padStart(scale + 1, '0');
  for (let at = 0; at + 1 < digits.length; at += 1) {
    const [one, other] = [digits.charAt(at), digits.charAt(at + 1)];
    offer('digits', Number(digits.slice(0, at) + other + one + digits.slice(at + 2)), scale);
  }
  for (let at = 0; at < digits.length; at += 1) {
    for (let digit = 0; digit <= 9; digit += 1) {
      offer('digit', Number(digits.slice(0, at) + String(digit) + digits.slice(at + 1)), scale);
    }
  }
  return [...found.values()];
}

const MOST_DECIMALS = 3;
const LARGEST = 1_000_000;

function change(path: ColumnPath, nutrient: Nutrient, from: Cell, to: Cell): SlipChange {
  return { path: `${path}.${nutrient}`, nutrient, from: cellTyped(from), to: cellTyped(to) };
}

function valuesAt(version: FoodVersion, path: ColumnPath): Values | null {
  return path === 'values' ? version.values : (version.secondColumn?.values ?? null);
}

function withValues(version: FoodVersion, path: ColumnPath, values: Values): FoodVersion {
  if (path === 'values') return { ...version, values };
  const { secondColumn } = version;
  return secondColumn ? { ...version, secondColumn: { ...secondColumn, values } } : version;
}
