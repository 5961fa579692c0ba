import { LONG_COLUMNS, type EntityName } from '#lib/store/rows';
import type { StoredRow } from '#lib/store/table';

/** One line of the journal before it has its number. */
export interface JournalEntry {
  readonly entity: string;
  readonly entityId: string;
  readonly before: StoredRow | null;
  readonly after: StoredRow | null;
}

/** Letters of a long column that the journal keeps: enough to tell it by. */
const BEGINNING = 160;

/**
 * A row as the journal keeps it: JSON, instants as text, of a long column its beginning (it never changes, and its row
 * is never taken out of the file).
 */
export function journalText(entity: string, row: StoredRow | null): string | null {
  if (row === null) return null;
  const long = LONG_COLUMNS[entity as EntityName] ?? [];
  const short = long.map((name) => [name, beginning(row[name])] as const);
  return JSON.stringify({ ...row, ...Object.fromEntries(short) });
}

/** The beginning of a text, never half of a character. */
function beginning(text: unknown): unknown {
  if (typeof text !== 'string' || text.length <= BEGINNING) return text;
  return `${text.slice(0, BEGINNING).replace(/[\uD800-\uDBFF]$/, '')}…`;
}

/** The row of a journal text; instants stay text, which the row checks read back. */
export function readJournalText(text: string | null): Record<string, unknown> | null {
  return text === null ? null : (JSON.parse(text) as Record<string, unknown>);
}
