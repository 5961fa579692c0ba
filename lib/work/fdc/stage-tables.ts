import { FDC_DATA_TYPES, type FdcDataType } from '#lib/foods/fdc-record';
import { knownNumber } from '#lib/foods/fdc-nutrients';
import type { Counter } from '#lib/work/fdc/faults';
import { DownloadError } from '#lib/work/fdc/faults';
import { IdSet } from '#lib/work/fdc/id-set';
import type { Download } from '#lib/work/fdc/open-download';
import type { Tell } from '#lib/work/fdc/progress';
import { readCsv, type Cells, type Columns } from '#lib/work/fdc/read-csv';
import { keepMeta, readMeta, type Stage } from '#lib/work/fdc/stage';

/** What goes with every table while it is read. */
interface Loading {
  readonly download: Download;
  readonly stage: Stage;
  readonly counter: Counter;
  readonly tell: Tell;
  /** Foods that are imported, and foods that are told but not imported (samples, market acquisitions). */
  readonly wanted: IdSet;
  readonly others: IdSet;
}

/** Parts of a cell list are parted by characters that no text of a table needs. */
export const CELL = '\u001f';
export const ROW = '\u001e';
const STRAY = /[\u001e\u001f]/g;

const ROWS_PER_COMMIT = 20_000;

/**
 * Puts the tables of a download side by side. A table that is complete already is passed over, one that was begun
 * is begun again; counts are kept with each.
 */
export async function stageTables(
  download: Download,
  stage: Stage,
  counter: Counter,
  tell: Tell,
): Promise<void> {
  const loading: Loading = {
    download,
    stage,
    counter,
    tell,
    wanted: new IdSet(),
    others: new IdSet(),
  };
  for (const [name, load] of TABLES) {
    if (readMeta(stage).tables.includes(name)) {
      if (name === 'food.csv') rememberFoods(loading);
      continue;
    }
    await load(loading);
    const { tables } = readMeta(stage);
    keepMeta(stage, { tables: [...tables, name], tally: counter.tally });
  }
}

/** Foods that are known from a run before. Other kinds of food are not told apart from foreign ids then. */
function rememberFoods({ stage, wanted, others }: Loading): void {
  const rows = stage.db.prepare<[], { fdc_id: number }>('SELECT fdc_id FROM food').iterate();
  for (const { fdc_id: id } of rows) wanted.add(id);
  const kept = stage.db
    .prepare<[], { value: string }>("SELECT value FROM meta WHERE key = 'others'")
    .get();
  for (const id of JSON.parse(kept?.value ?? '[]') as number[]) others.add(id);
}

interface Table<Name extends string> {
  readonly name: string;
  readonly columns: Columns<Name>;
  /** Its table here, emptied before it is filled. */
  readonly into: string;
  readonly needed: boolean;
}

async function load<Name extends string>(
  { download, stage, counter, tell }: Loading,
  table: Table<Name>,
  row: (cell: Cells<Name>, at: string) => void,
  atEnd: () => void = () => undefined,
): Promise<void> {
  const file = download.files.get(table.name);
  if (!file) {
    if (!table.needed) return;
    throw new DownloadError(
      `${download.path} lacks ${table.name}: give the whole download, not some of its tables.`,
    );
  }
  const { db } = stage;
  db.exec(`DELETE FROM ${table.into}`);
  let open = 0;
  db.exec('BEGIN');
  try {
    await readCsv(file, table.columns, {
      tell,
      fault: (at, why) => counter.fault(table.name, at, why),
      row: (cell, at) => {
        counter.addRow();
        row(cell, at);
        open += 1;
        if (open % ROWS_PER_COMMIT === 0) db.exec('COMMIT; BEGIN');
      },
    });
    atEnd();
    db.exec('COMMIT');
  } catch (error) {
    if (db.inTransaction) db.exec('ROLLBACK');
    throw error;
  }
}

/** A number of the database's; null for what is none. */
function idIn(text: string): number | null {
  return /^\d{1,10}$/.test(text.trim()) ? Number(text) : null;
}

const clean = (text: string): string => (STRAY.test(text) ? text.replace(STRAY, ' ') : text);
const joined = (...cells: readonly string[]): string => cells.map(clean).join(CELL);

async function loadFoods(loading: Loading): Promise<void> {
  const { stage, counter, wanted, others } = loading;
  const put = stage.db.prepare('INSERT OR IGNORE INTO food VALUES (?, ?, ?, ?, ?)');
  const otherIds: number[] = [];
  await load(
    loading,
    {
      name: 'food.csv',
      into: 'food',
      needed: true,
      columns: {
        needed: ['fdc_id', 'data_type', 'description'],
        lacking: ['food_category_id', 'publication_date'],
      },
    },
    (cell, at) => {
      const id = idIn(cell('fdc_id'));
      if (id === null || id < 1) {
        counter.fault('food.csv', at, `"${cell('fdc_id').slice(0, 30)}" is no fdc_id`);
        return;
      }
      const type = cell('data_type').trim();
      if (!Object.hasOwn(FDC_DATA_TYPES, type)) {
        counter.passOver(type || 'without a kind');
        others.add(id);
        // Only what a run that goes on must know; a full download has fewer of these than of products.
        otherIds.push(id);
        return;
      }
      if (cell('description').trim() === '') {
        counter.fault('food.csv', at, `food ${id} has no description`);
        others.add(id);
        return;
      }
      const { changes } = put.run(
        id,
        type satisfies string as FdcDataType,
        cell('description'),
        cell('food_category_id').trim(),
        cell('publication_date').trim(),
      );
      if (changes === 0)
        counter.fault('food.csv', at, `food ${id} is there twice; the first stands`);
      wanted.add(id);
    },
    () => keepOthers(stage, otherIds),
  );
}

function keepOthers(stage: Stage, ids: readonly number[]): void {
  stage.db
    .prepare("INSERT OR REPLACE INTO meta (key, value) VALUES ('others', ?)")
    .run(JSON.stringify(ids.slice(0, 2_000_000)));
}

/** Whether a row's food is imported; a row of a food that food.csv does not have is told. */
function isWanted({ counter, wanted, others }: Loading, file: string, at: string, text: string) {
  const id = idIn(text);
  if (id !== null && wanted.has(id)) return id;
  if (id === null) counter.fault(file, at, `"${text.slice(0, 30)}" is no fdc_id`);
  else if (!others.has(id)) counter.fault(file, at, `food ${id} is not in food.csv`);
  return null;
}

const BRANDED = {
  needed: ['fdc_id', 'gtin_upc', 'serving_size', 'serving_size_unit'],
  lacking: [
    'brand_owner',
    'brand_name',
    'ingredients',
    'household_serving_fulltext',
    'branded_food_category',
    'market_country',
  ],
} as const;

async function loadBranded(loading: Loading): Promise<void> {
  const { stage, counter } = loading;
  const put = stage.db.prepare('INSERT OR IGNORE INTO branded VALUES (?, ?)');
  const table = { name: 'branded_food.csv', into: 'branded', needed: false, columns: BRANDED };
  await load(loading, table, (cell, at) => {
    const id = isWanted(loading, table.name, at, cell('fdc_id'));
    if (id === null) return;
    const cells = joined(
      cell('brand_owner'),
      cell('brand_name'),
      cell('gtin_upc'),
      cell('ingredients'),
      cell('serving_size'),
      cell('serving_size_unit'),
      cell('household_serving_fulltext'),
      cell('branded_food_category'),
      cell('market_country'),
    );
    if (put.run(id, cells).changes === 0) {
      counter.fault(table.name, at, `food ${id} is there twice; the first stands`);
    }
  });
}

/** Rows of one food mostly follow each other, and are kept as one then. */
async function loadNutrients(loading: Loading): Promise<void> {
  const { stage, counter } = loading;
  const named = await nutrientsById(loading);
  const derivations = await codesById(loading, 'food_nutrient_derivation.csv', 'code');
  const put = stage.db.prepare('INSERT INTO nutrient VALUES (?, ?)');
  let food = 0;
  let rows: string[] = [];
  const keep = () => {
    if (rows.length > 0) put.run(food, rows.join(ROW));
    rows = [];
  };
  stage.db.exec('DROP INDEX IF EXISTS nutrient_food');
  const name = 'food_nutrient.csv';
  const columns = {
    needed: ['fdc_id', 'nutrient_id', 'amount'],
    lacking: ['derivation_id', 'loq'],
  } as const;
  await load(
    loading,
    { name, into: 'nutrient', needed: true, columns },
    (cell, at) => {
      const id = isWanted(loading, name, at, cell('fdc_id'));
      if (id === null) return;
      const nutrient = named.get(cell('nutrient_id').trim());
      if (!nutrient) {
        counter.fault(
          name,
          at,
          `nutrient ${cell('nutrient_id').slice(0, 30)} is not in nutrient.csv`,
        );
        return;
      }
      if (!nutrient.known) {
        counter.unknownNutrient(nutrient.shown);
        return;
      }
      if (id !== food || rows.length > 400) {
        keep();
        food = id;
      }
      const derivation = derivations.get(cell('derivation_id').trim()) ?? '';
      rows.push(joined(nutrient.number, nutrient.unit, cell('amount'), derivation, cell('loq')));
    },
    keep,
  );
  stage.db.exec('CREATE INDEX nutrient_food ON nutrient (fdc_id)');
}

interface NamedNutrient {
  readonly number: string;
  readonly unit: string;
  readonly known: boolean;
  readonly shown: string;
}

async function nutrientsById(loading: Loading): Promise<Map<string, NamedNutrient>> {
  const byId = new Map<string, NamedNutrient>();
  const columns = { needed: ['id', 'unit_name', 'nutrient_nbr'], lacking: ['name'] } as const;
  const table = { name: 'nutrient.csv', into: 'meta', needed: true, columns };
  await small(loading, table, (cell) => {
    const number = cell('nutrient_nbr').trim();
    const unit = cell('unit_name').trim();
    const shown = `${cell('name').trim() || 'nutrient'} (${number || 'no number'}, ${unit})`;
    const known = knownNumber(number, unit) !== null;
    byId.set(cell('id').trim(), { number, unit, known, shown });
  });
  return byId;
}

/** A short table that is kept in memory, by its id. */
async function codesById(
  loading: Loading,
  name: string,
  column: string,
): Promise<Map<string, string>> {
  const byId = new Map<string, string>();
  const columns = { needed: ['id', column], lacking: [] } as const;
  await small(loading, { name, into: '', needed: false, columns }, (cell) => {
    byId.set(cell('id').trim(), cell(column).trim());
  });
  return byId;
}

/** More rows than any of the short tables has. */
const MOST_SMALL = 100_000;

async function small<Name extends string>(
  { download, counter, tell }: Loading,
  table: Table<Name>,
  row: (cell: Cells<Name>) => void,
): Promise<void> {
  const file = download.files.get(table.name);
  if (!file && !table.needed) return;
  if (!file) {
    throw new DownloadError(
      `${download.path} lacks ${table.name}: give the whole download, not some of its tables.`,
    );
  }
  let rows = 0;
  await readCsv(file, table.columns, {
    tell,
    fault: (at, why) => counter.fault(table.name, at, why),
    row: (cell) => {
      rows += 1;
      if (rows > MOST_SMALL) throw new DownloadError(`${table.name} has over ${MOST_SMALL} rows.`);
      row(cell);
    },
  });
}

async function loadPortions(loading: Loading): Promise<void> {
  const units = await codesById(loading, 'measure_unit.csv', 'name');
  const put = loading.stage.db.prepare('INSERT INTO portion VALUES (?, ?)');
  const name = 'food_portion.csv';
  const columns = {
    needed: ['fdc_id', 'gram_weight'],
    lacking: ['amount', 'measure_unit_id', 'portion_description', 'modifier'],
  } as const;
  loading.stage.db.exec('DROP INDEX IF EXISTS portion_food');
  await load(loading, { name, into: 'portion', needed: false, columns }, (cell, at) => {
    const id = isWanted(loading, name, at, cell('fdc_id'));
    if (id === null) return;
    const unit = units.get(cell('measure_unit_id').trim()) ?? '';
    put.run(
      id,
      joined(
        cell('amount'),
        unit,
        cell('modifier'),
        cell('portion_description'),
        cell('gram_weight'),
      ),
    );
  });
  loading.stage.db.exec('CREATE INDEX portion_food ON portion (fdc_id)');
}

async function loadFactors(loading: Loading): Promise<void> {
  const { db } = loading.stage;
  const owner = db.prepare('INSERT OR IGNORE INTO factor_of VALUES (?, ?)');
  const name = 'food_nutrient_conversion_factor.csv';
  const columns = { needed: ['id', 'fdc_id'], lacking: [] } as const;
  await load(loading, { name, into: 'factor_of', needed: false, columns }, (cell, at) => {
    const id = idIn(cell('id'));
    const food = isWanted(loading, name, at, cell('fdc_id'));
    if (id !== null && food !== null) owner.run(id, food);
  });
  const put = db.prepare('INSERT INTO factor VALUES (?, ?, ?)');
  const energy = {
    needed: [
      'food_nutrient_conversion_factor_id',
      'protein_value',
      'fat_value',
      'carbohydrate_value',
    ],
    lacking: [],
  } as const;
  const energyTable = {
    name: 'food_calorie_conversion_factor.csv',
    into: "factor WHERE kind = 'energy'",
    needed: false,
    columns: energy,
  };
  await load(loading, energyTable, (cell) => {
    const id = idIn(cell('food_nutrient_conversion_factor_id'));
    const cells = joined(cell('protein_value'), cell('fat_value'), cell('carbohydrate_value'));
    if (id !== null) put.run(id, 'energy', cells);
  });
  const protein = {
    needed: ['food_nutrient_conversion_factor_id', 'value'],
    lacking: [],
  } as const;
  const proteinTable = {
    name: 'food_protein_conversion_factor.csv',
    into: "factor WHERE kind = 'protein'",
    needed: false,
    columns: protein,
  };
  await load(loading, proteinTable, (cell) => {
    const id = idIn(cell('food_nutrient_conversion_factor_id'));
    if (id !== null) put.run(id, 'protein', clean(cell('value')));
  });
  db.exec(
    'CREATE INDEX IF NOT EXISTS factor_food ON factor_of (fdc_id); CREATE INDEX IF NOT EXISTS factor_id ON factor (id)',
  );
}

/** Codes of the food groups by their id ("18" is "1800"), kept for the foods of the two tables. */
async function loadGroups(loading: Loading): Promise<void> {
  const codes = await codesById(loading, 'food_category.csv', 'code');
  loading.stage.db
    .prepare("INSERT OR REPLACE INTO meta (key, value) VALUES ('groups', ?)")
    .run(JSON.stringify(Object.fromEntries(codes)));
}

const TABLES: readonly (readonly [string, (loading: Loading) => Promise<void>])[] = [
  ['food.csv', loadFoods],
  ['food_category.csv', loadGroups],
  ['branded_food.csv', loadBranded],
  ['food_nutrient.csv', loadNutrients],
  ['food_portion.csv', loadPortions],
  ['factors', loadFactors],
];
