import { chapterList, chapterParts, type Chapter } from '#lib/cut/chapters';
import { changesOf, moveCut, type CutPoints, type PointsChange } from '#lib/cut/cut-points';
import { chapterMends, type ChapterMend } from '#lib/cut/mend-chapters';
import { firstFrameAt } from '#lib/cut/timecode';

/** One way to make the chapters keep a broken rule, and what of the episode it would change. */
export interface CutMend {
  readonly words: string;
  readonly takes:
    | { readonly kind: 'times'; readonly changes: readonly PointsChange[] }
    | { readonly kind: 'order'; readonly ids: readonly string[] }
    /** The segment whose chapter is joined with the one before it; both stay where they are. */
    | { readonly kind: 'join'; readonly id: string };
}

/**
 * Mends of the chapters of a cut, as changes of its segments: a chapter that moves takes its segment's in-point along,
 * and the end of the one above where the two share a cut. A move after which a segment would have no length is not
 * offered.
 *
 * Law: after a mend is taken, fewer rules are broken; after one that joins, the chapters are those that it showed.
 *
 * @example cutMends([0, 225 and 750 at 25 a second])[0]?.takes // second segment to frame 250
 */
export function cutMends(
  points: readonly CutPoints[],
  rate: { readonly num: number; readonly den: number },
): CutMend[] {
  const { chapters } = chapterList({ segments: points, rate });
  return chapterMends(chapters).flatMap((mend): CutMend[] => {
    const takes = takesOf(mend, chapters, points, rate);
    return takes === null ? [] : [{ words: mend.words, takes }];
  });
}

function takesOf(
  mend: ChapterMend,
  chapters: readonly Chapter[],
  points: readonly CutPoints[],
  rate: { readonly num: number; readonly den: number },
): CutMend['takes'] | null {
  const parts = chapterParts(points);
  if (mend.kind === 'join') {
    const at = mend.chapters.findIndex((chapter, index) => chapter !== chapters[index]);
    const id = parts[at + 1]?.[0]?.id;
    return id === undefined ? null : { kind: 'join', id };
  }
  if (mend.kind === 'order') {
    const sorted = mend.chapters.flatMap((chapter) => parts[chapters.indexOf(chapter)] ?? []);
    // What was joined with nothing, being first, would be joined with another.
    if (chapterParts(sorted).length !== parts.length) return null;
    // Segments that are in no cut keep their places.
    let next = 0;
    return {
      kind: 'order',
      ids: points.map(({ id, inFrame }) => (inFrame === null ? id : (sorted[next++]?.id ?? id))),
    };
  }
  const moved = mend.chapters.reduce<readonly CutPoints[]>((now, chapter, index) => {
    const own = parts[index]?.[0];
    if (own?.inFrame == null || chapter.startS === chapters[index]?.startS) return now;
    return moveCut(now, own.id, 'inFrame', firstFrameAt(chapter.startS, rate) - own.inFrame);
  }, points);
  const shut = moved.some(
    ({ inFrame, outFrame }) => inFrame !== null && outFrame !== null && outFrame <= inFrame,
  );
  return shut ? null : { kind: 'times', changes: changesOf(points, moved) };
}
