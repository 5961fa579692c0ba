import type { Tx } from '#lib/store/client';
import { databaseFile, isPostgresUrl } from '#lib/store/database-file';
import type { EntityName } from '#lib/store/rows';

type Rows = readonly Readonly<Record<string, unknown>>[];

/** How a database takes many rows in one statement with one text. */
interface Way {
  readonly sql: (entity: EntityName, columns: readonly string[]) => string;
  readonly text: (rows: Rows, columns: readonly string[]) => string;
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
  const sql = way.sql(entity, columns);
  for (let from = 0; from < rows.length; from += BATCH) {
    await tx.$executeRawUnsafe(sql, way.text(rows.slice(from, from + BATCH), columns));
  }
}

const quoted = (columns: readonly string[]) => columns.map((name) => `"${name}"`).join(', ');

/** Rows as lists of cells: SQLite finds a cell by its place faster than by its name. */
const SQLITE: Way = {
  sql: (entity, columns) => {
    const cells = columns.map((_, at) => `json_extract(value, '$[${at}]')`).join(', ');
    return `INSERT INTO "${entity}" (${quoted(columns)}) SELECT ${cells} FROM json_each(?)`;
  },
  text: (rows, columns) =>
    JSON.stringify(rows.map((row) => columns.map((column) => sqliteCell(row[column])))),
};

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
  sql: (entity, columns) =>
    `INSERT INTO "${entity}" (${quoted(columns)}) ` +
    `SELECT ${quoted(columns)} FROM json_populate_recordset(NULL::"${entity}", $1::json)`,
  text: (rows) => JSON.stringify(rows),
};
