import type { CutPoints } from '#lib/cut/cut-points';
import type { EditRemark } from '#lib/cut/edit-list';
import { readEditList } from '#lib/cut/read-edit-list';
import { segmentsInList } from '#lib/cut/segments-in-list';
import type { FrameRate } from '#lib/cut/timecode';
import { ok, type Result } from '#lib/result';

/** Where an edit list has a segment. */
export interface ListOffer {
  readonly id: string;
  readonly title: string;
  readonly inFrame: number;
  readonly outFrame: number;
  readonly clips: readonly string[];
}

export interface ListOffers {
  readonly format: 'edl' | 'otio';
  readonly title: string;
  readonly offers: readonly ListOffer[];
  /** Segments that no clip names, by title. */
  readonly missing: readonly string[];
  /** What was skipped or is odd, by its place in the file. */
  readonly remarks: readonly EditRemark[];
}

/**
 * Offers of in- and out-points by the clip names of a pasted edit list, in the list's order; clips that name no
 * segment are told among the remarks.
 */
export function listOffers(
  points: readonly CutPoints[],
  text: string,
  rate: FrameRate,
): Result<ListOffers> {
  const read = readEditList(text, rate);
  if (!read.ok) return read;
  const { format, list } = read.value;
  const sought = points.map(({ id, title }) => ({ id, title, points: [] }));
  const { segments, unknown } = segmentsInList(sought, list.pieces);
  const titles = new Map(points.map(({ id, title }) => [id, title]));
  const strangers = unknown.map(({ at, name }): EditRemark => {
    const message = `“${name}” names no segment: it is taken for none.`;
    return { at, code: 'reel', message, skipped: true };
  });
  return ok({
    format,
    title: list.title,
    offers: segments.map((segment) => ({ ...segment, title: titles.get(segment.id) ?? '' })),
    missing: points
      .filter(({ id }) => !segments.some((segment) => segment.id === id))
      .map(({ title }) => title),
    remarks: [...list.remarks, ...strangers].sort((a, b) => a.at - b.at),
  });
}
