import type { ZodError } from 'zod';
import type { Facts, Problem } from '#lib/result';
import type { Edit } from '#lib/store/command';
import type { StoredRow } from '#lib/store/table';

/** A problem at a place in a command. */
export function problemAt(path: string, code: string, message: string, facts?: Facts): Problem {
  return facts ? { path, code, message, facts } : { path, code, message };
}

/** Each fault that a row check found, at its column: `edits[0].row.title`. */
export function zodProblems(error: ZodError, path: string): Problem[] {
  return error.issues.map((issue) =>
    problemAt(
      [path, ...issue.path.map(String)].join('.'),
      'invalid',
      `${issue.path.map(String).join('.') || 'The row'}: ${issue.message}`,
    ),
  );
}

/**
 * One problem for each column that was typed and stands differently now, with both texts; where all stand
 * as typed, one that says that the row has changed.
 */
export function conflictProblems(
  edit: Exclude<Edit, { op: 'create' | 'bringBack' }>,
  stored: StoredRow,
  path: string,
): Problem[] {
  const facts = {
    entity: edit.entity,
    id: edit.id,
    baseRev: edit.rev,
    storedRev: stored.rev,
  };
  const patch: Readonly<Record<string, unknown>> = edit.op === 'update' ? edit.patch : {};
  const differing = Object.entries(patch).filter(
    ([column, typed]) => typed !== undefined && shown(typed) !== shown(stored[column]),
  );
  const message =
    'This was changed elsewhere since it was opened: choose which of the two to keep.';
  if (differing.length === 0) return [problemAt(path, 'conflict', message, facts)];
  return differing.map(([column, typed]) =>
    problemAt(`${path}.patch.${column}`, 'conflict', message, {
      ...facts,
      column,
      typed: shown(typed),
      stored: shown(stored[column]),
    }),
  );
}

/** A value as text for a person to compare: text as it is, everything else as JSON. */
function shown(value: unknown): string {
  return typeof value === 'string' ? value : JSON.stringify(value);
}
