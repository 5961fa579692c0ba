import type { Edit } from '#lib/store/command';

/** The id of the filming day that edits make; null where they make none. */
export function newDayId(edits: readonly Edit[]): string | null {
  const made = edits.find((edit) => edit.op === 'create' && edit.entity === 'FilmingDay');
  return made?.op === 'create' ? made.row.id : null;
}
