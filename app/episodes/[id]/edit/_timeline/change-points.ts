import 'server-only';
import type { PointsChange } from '#lib/cut/cut-points';
import { failed } from '#lib/result';
import type { Edit } from '#lib/store/command';

/** The edits that give segments their points. */
export function pointEdits(
  changes: readonly PointsChange[],
  revs: Readonly<Record<string, number>>,
): Edit[] {
  return changes.map(({ id, inFrame, outFrame }) => ({
    op: 'update',
    entity: 'Segment',
    id,
    rev: revs[id] ?? 0,
    patch: { inFrame, outFrame },
  }));
}

/** The edit that joins a segment's chapter with the one before it, or gives it its own. */
export function chapterEdit(
  id: string,
  chapter: boolean,
  revs: Readonly<Record<string, number>>,
): Edit {
  return { op: 'update', entity: 'Segment', id, rev: revs[id] ?? 0, patch: { chapter } };
}

export const CHANGED = failed({
  path: '',
  code: 'changed',
  message:
    'Something changed since this was shown, and nothing was taken. Look at what stands there now, then press again.',
});

export const OTHER_RATE = failed({
  path: '',
  code: 'rate',
  message:
    'The episode counts frames at another rate since this page was opened, and nothing was saved: open the page again.',
});
