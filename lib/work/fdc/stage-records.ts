import type {
  FdcBranded,
  FdcDataType,
  FdcFactors,
  FdcNutrient,
  FdcPortion,
  FdcRecord,
} from '#lib/foods/fdc-record';
import { CELL, ROW } from '#lib/work/fdc/loading';
import { readMeta, type Stage } from '#lib/work/fdc/stage';

interface FoodRow {
  readonly fdc_id: number;
  readonly type: FdcDataType;
  readonly description: string;
  readonly category: string;
  readonly published: string;
}
interface CellsRow {
  readonly fdc_id: number;
  readonly cells: string;
}
interface FactorRow extends CellsRow {
  readonly kind: 'energy' | 'protein';
}

/** How many foods are still to come after the last that is in the store, and how many there are. */
export function countFoods(stage: Stage): { readonly left: number; readonly all: number } {
  const count = (from: number) =>
    stage.db
      .prepare<[number], { n: number }>('SELECT count(*) AS n FROM food WHERE fdc_id > ?')
      .get(from)?.n ?? 0;
  return { left: count(readMeta(stage).lastFood), all: count(0) };
}

/** The foods after the last that is in the store, in order of their ids, some at a time. */
export function* stagedRecords(stage: Stage, take: number): Generator<readonly FdcRecord[]> {
  const { db } = stage;
  const groups = groupCodes(stage);
  const foods = db.prepare<[number, number], FoodRow>(
    'SELECT * FROM food WHERE fdc_id > ? ORDER BY fdc_id LIMIT ?',
  );
  const within = (table: string) =>
    db.prepare<[number, number], CellsRow>(
      `SELECT fdc_id, cells FROM ${table} WHERE fdc_id BETWEEN ? AND ? ORDER BY fdc_id, rowid`,
    );
  const branded = within('branded');
  const nutrients = within('nutrient');
  const portions = within('portion');
  const factors = db.prepare<[number, number], FactorRow>(
    'SELECT o.fdc_id, f.kind, f.cells FROM factor_of o JOIN factor f ON f.id = o.id ' +
      'WHERE o.fdc_id BETWEEN ? AND ? ORDER BY o.fdc_id, f.rowid',
  );
  for (let after = readMeta(stage).lastFood; ;) {
    const rows = foods.all(after, take);
    const [first, last] = [rows[0], rows.at(-1)];
    if (!first || !last) return;
    const [from, to] = [first.fdc_id, last.fdc_id];
    const parts = {
      branded: byFood(branded.all(from, to)),
      nutrients: byFood(nutrients.all(from, to)),
      portions: byFood(portions.all(from, to)),
      factors: byFood(factors.all(from, to)),
    };
    yield rows.map((row) => ({
      fdcId: row.fdc_id,
      dataType: row.type,
      description: row.description,
      groupCode: groups[row.category] ?? '',
      published: row.published,
      branded: brandedFrom(row, parts.branded.get(row.fdc_id)?.[0]),
      nutrients: (parts.nutrients.get(row.fdc_id) ?? []).flatMap(nutrientsFrom),
      portions: (parts.portions.get(row.fdc_id) ?? []).map(portionFrom),
      factors: factorsFrom(parts.factors.get(row.fdc_id) ?? []),
    }));
    after = to;
  }
}

function groupCodes({ db }: Stage): Readonly<Record<string, string>> {
  const kept = db
    .prepare<[], { value: string }>("SELECT value FROM meta WHERE key = 'groups'")
    .get();
  return JSON.parse(kept?.value ?? '{}') as Record<string, string>;
}

function byFood<Row extends CellsRow>(rows: readonly Row[]): Map<number, Row[]> {
  const found = new Map<number, Row[]>();
  for (const row of rows) {
    const before = found.get(row.fdc_id);
    if (before) before.push(row);
    else found.set(row.fdc_id, [row]);
  }
  return found;
}

function brandedFrom({ type }: FoodRow, row: CellsRow | undefined): FdcBranded | null {
  if (type !== 'branded_food' || !row) return null;
  const [
    brandOwner = '',
    brandName = '',
    gtin = '',
    ingredients = '',
    servingSize = '',
    servingUnit = '',
    household = '',
    category = '',
    marketCountry = '',
  ] = row.cells.split(CELL);
  return {
    brandOwner,
    brandName,
    gtin,
    ingredients,
    servingSize,
    servingUnit,
    household,
    category,
    marketCountry,
  };
}

function nutrientsFrom({ cells }: CellsRow): FdcNutrient[] {
  return cells.split(ROW).map((text) => {
    const [number = '', unit = '', amount = '', derivation = '', loq = ''] = text.split(CELL);
    return { number, unit, amount, derivation, loq };
  });
}

function portionFrom({ cells }: CellsRow): FdcPortion {
  const [amount = '', unit = '', modifier = '', description = '', grams = ''] = cells.split(CELL);
  return { amount, unit, modifier, description, grams };
}

function factorsFrom(rows: readonly FactorRow[]): FdcFactors | null {
  if (rows.length === 0) return null;
  const [protein = '', fat = '', carbohydrate = ''] =
    rows.find(({ kind }) => kind === 'energy')?.cells.split(CELL) ?? [];
  const nitrogen = rows.find(({ kind }) => kind === 'protein')?.cells ?? '';
  return { protein, fat, carbohydrate, nitrogen };
}
