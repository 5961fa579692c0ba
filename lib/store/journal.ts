import type { StoredRow } from '#lib/store/table';

/** One line of the journal before it has its number. */
export interface JournalEntry {
  readonly entity: string;
  readonly entityId: string;
  readonly before: StoredRow | null;
  readonly after: StoredRow | null;
}

/** A row as the journal keeps it: JSON, instants as text, bytes left out (their hash is a column). */
export function journalText(row: StoredRow | null): string | null {
  if (row === null) return null;
  return JSON.stringify(row, (_key, value: unknown) =>
    value instanceof Uint8Array ? undefined : value,
  );
}

/** The row of a journal text; instants stay text, which the row checks read back. */
export function readJournalText(text: string | null): Record<string, unknown> | null {
  return text === null ? null : (JSON.parse(text) as Record<string, unknown>);
}
