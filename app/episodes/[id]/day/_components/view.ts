import type { EpisodeFile, FilmingDay, Segment } from '#lib/episode/schema';
import type { DaySheet } from '#lib/shoot/day-sheet';
import type { ShootPlan } from '#lib/shoot/plan';

/** What every part of the day page draws from. */
export interface DayPage {
  readonly file: EpisodeFile;
  readonly day: FilmingDay;
  readonly plan: ShootPlan;
  readonly sheet: DaySheet;
  /** Revision of each row by its id, for forms that change it. */
  readonly revs: Readonly<Record<string, number>>;
  /** The row whose form stands open, or null. */
  readonly editing: string | null;
  /** The row that was just saved, whose segment stays open, or null. */
  readonly at: string | null;
}

/** Revision of a row; one that the page does not know is refused by the store as changed elsewhere. */
export function revOf(page: Pick<DayPage, 'revs'>, rowId: string): number {
  return page.revs[rowId] ?? 0;
}

/** Address of the day page with a row's form open. */
export function editHref(page: Pick<DayPage, 'file'>, row: string): string {
  return `/episodes/${page.file.episode.id}/day?edit=${encodeURIComponent(row)}#row-${row}`;
}

/** Address of the day page at a row, with no form open. */
export function rowHref(page: Pick<DayPage, 'file'>, row: string): string {
  return `/episodes/${page.file.episode.id}/day?at=${encodeURIComponent(row)}#row-${row}`;
}

/** Names a row that is not there yet: a step, shot or link of a segment. */
export function newRow(what: 'step' | 'shot' | 'link', segmentId: string): string {
  return `new-${what}-${segmentId}`;
}

/** The title of a step anywhere in the episode; its id where nothing has it. */
export function stepTitle(segments: readonly Segment[], stepId: string): string {
  const step = segments.flatMap(({ steps }) => steps).find(({ id }) => id === stepId);
  return step?.title ?? stepId;
}
