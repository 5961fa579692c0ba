import type { Tx } from '#lib/store/client';
import type { EntityName } from '#lib/store/rows';

/** Rows to a statement; above it the text of one statement grows without making anything faster. */
const BATCH = 500;

/**
 * Inserts many rows of equal columns into an SQLite table, each batch as one JSON text that the database
 * takes apart itself: the client's own `createMany`, which is what PostgreSQL wants here, works on every
 * cell and is three times slower. Columns left out take their defaults. Rows are not checked.
 */
export async function bulkInsert(
  tx: Tx,
  entity: EntityName,
  rows: readonly Readonly<Record<string, unknown>>[],
): Promise<void> {
  const columns = Object.keys(rows[0] ?? {});
  const names = columns.map((column) => `"${column}"`).join(', ');
  const cells = columns.map((_, at) => `json_extract(value, '$[${at}]')`).join(', ');
  const sql = `INSERT INTO "${entity}" (${names}) SELECT ${cells} FROM json_each(?)`;
  for (let from = 0; from < rows.length; from += BATCH) {
    const batch = rows.slice(from, from + BATCH);
    const texts = batch.map((row) => columns.map((column) => stored(row[column])));
    await tx.$executeRawUnsafe(sql, JSON.stringify(texts));
  }
}

/** A value as the client stores it: instants and JSON as text, truth as 1. */
function stored(value: unknown): unknown {
  if (value instanceof Date) return value.toISOString().replace('Z', '+00:00');
  if (typeof value === 'boolean') return value ? 1 : 0;
  return typeof value === 'object' && value !== null ? JSON.stringify(value) : value;
}
