import type { Tx } from '#lib/store/client';
import { databaseFile, isPostgresUrl } from '#lib/store/database-file';
import type { EntityName } from '#lib/store/rows';

type Rows = readonly Readonly<Record<string, unknown>>[];

/** How a database takes many rows in one statement with one text. */
interface Way {
  readonly statement: (
    entity: EntityName,
    columns: readonly string[],
    rows: Rows,
  ) => { readonly sql: string; readonly text: string };
}

/** Rows to a statement; above it the text of one statement grows without making anything faster. */
const BATCH = 500;

/**
 * Inserts many rows of equal columns into a table, each batch as one JSON text that the database takes apart
 * itself: the client's own `createMany` works on every cell and is three times slower. Columns left out take
 * their defaults. Rows are not checked.
 */
export async function bulkInsert(tx: Tx, entity: EntityName, rows: Rows): Promise<void> {
  const way = isPostgresUrl(databaseFile(process.env)) ? POSTGRES : SQLITE;
  const columns = Object.keys(rows[0] ?? {});
  for (let from = 0; from < rows.length; from += BATCH) {
    const { sql, text } = way.statement(entity, columns, rows.slice(from, from + BATCH));
    await tx.$executeRawUnsafe(sql, text);
  }
}

const quoted = (columns: readonly string[]) => columns.map((name) => `"${name}"`).join(', ');

/**
 * Rows as lists of cells: SQLite finds a cell by its place faster than by its name. What all rows have alike
 * stands in the statement once.
 */
const SQLITE: Way = {
  statement: (entity, columns, rows) => {
    const alike = new Map(columns.flatMap((column) => literal(column, rows) ?? []));
    const different = columns.filter((column) => !alike.has(column));
    const places = new Map(different.map((column, at) => [column, at]));
    const cells = columns.map(
      (column) => alike.get(column) ?? `json_extract(value, '$[${places.get(column)}]')`,
    );
    return {
      sql: `INSERT INTO "${entity}" (${quoted(columns)}) SELECT ${cells.join(', ')} FROM json_each(?)`,
      text: JSON.stringify(rows.map((row) => different.map((column) => sqliteCell(row[column])))),
    };
  },
};

/** A column's value as it is written in a statement, where all rows have the same plain one. */
function literal(column: string, rows: Rows): [[string, string]] | null {
  const first = rows[0]?.[column];
  if (rows.some((row) => row[column] !== first)) return null;
  if (first === null || first === undefined) return [[column, 'NULL']];
  if (typeof first === 'number' && Number.isSafeInteger(first)) return [[column, String(first)]];
  if (typeof first === 'string' && /^[\w .-]*$/.test(first)) return [[column, `'${first}'`]];
  return null;
}

/** A value as the client stores it in SQLite: instants and JSON as text, truth as 1. */
function sqliteCell(value: unknown): unknown {
  if (value instanceof Date) return value.toISOString().replace('Z', '+00:00');
  if (typeof value === 'boolean') return value ? 1 : 0;
  return typeof value === 'object' && value !== null ? JSON.stringify(value) : value;
}

/**
 * PostgreSQL reads each cell by the type of its column. Instants are UTC in columns without a zone, and the
 * zone of a text is passed over there (PostgreSQL documentation 8.5.1.3), so their text is UTC.
 */
const POSTGRES: Way = {
  statement: (entity, columns, rows) => ({
    sql:
      `INSERT INTO "${entity}" (${quoted(columns)}) ` +
      `SELECT ${quoted(columns)} FROM json_populate_recordset(NULL::"${entity}", $1::json)`,
    text: JSON.stringify(rows),
  }),
};
