import { DownloadError, type Counter } from '#lib/work/fdc/faults';
import type { IdSet } from '#lib/work/fdc/id-set';
import type { Download, DownloadFile } from '#lib/work/fdc/open-download';
import type { Tell } from '#lib/work/fdc/progress';
import { readCsv, type Cells, type Columns } from '#lib/work/fdc/read-csv';
import type { Stage } from '#lib/work/fdc/stage';

/** What goes with every table while it is read. */
export interface Loading {
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

/** A published table and where its rows go. */
export interface Table<Name extends string> {
  readonly name: string;
  readonly columns: Columns<Name>;
  /** Its table here, emptied before it is filled. */
  readonly into: string;
  readonly needed: boolean;
}

/** A table's file; null for one that a download may lack. */
function fileOf(
  download: Download,
  { name, needed }: Pick<Table<string>, 'name' | 'needed'>,
): DownloadFile | null {
  const file = download.files.get(name);
  if (file || !needed) return file ?? null;
  throw new DownloadError(
    `${download.path} lacks ${name}: give the whole download, not some of its tables.`,
  );
}

/** Reads a table into its place, emptied first, some thousand rows to a transaction. */
export async function load<Name extends string>(
  { download, stage, counter, tell }: Loading,
  table: Table<Name>,
  row: (cell: Cells<Name>, at: string) => void,
  atEnd: () => void = () => undefined,
): Promise<void> {
  const file = fileOf(download, table);
  if (!file) return;
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
export function idIn(text: string): number | null {
  return /^\d{1,10}$/.test(text.trim()) ? Number(text) : null;
}

export const clean = (text: string): string => (STRAY.test(text) ? text.replace(STRAY, ' ') : text);
export const joined = (...cells: readonly string[]): string => cells.map(clean).join(CELL);

/** Whether a row's food is imported; a row of a food that food.csv does not have is told. */
export function isWanted(
  { counter, wanted, others }: Loading,
  file: string,
  at: string,
  text: string,
) {
  const id = idIn(text);
  if (id !== null && wanted.has(id)) return id;
  if (id === null) counter.fault(file, at, `"${text.slice(0, 30)}" is no fdc_id`);
  else if (!others.has(id)) counter.fault(file, at, `food ${id} is not in food.csv`);
  return null;
}

/** A short table that is kept in memory, by its id. */
export async function codesById(
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
export const MOST_SMALL = 100_000;

export async function small<Name extends string>(
  { download, counter, tell }: Loading,
  table: Table<Name>,
  row: (cell: Cells<Name>) => void,
): Promise<void> {
  const file = fileOf(download, table);
  if (!file) return;
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
