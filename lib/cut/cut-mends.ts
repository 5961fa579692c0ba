import { chapterLines, chapterList, type Chapter } from '#lib/cut/chapters';
import { changesOf, moveCut, type CutPoints, type PointsChange } from '#lib/cut/cut-points';
import { chapterMends, type ChapterMend } from '#lib/cut/mend-chapters';
import { firstFrameAt } from '#lib/cut/timecode';

/** One way to make the chapters keep a broken rule, and what of the episode it would change. */
export interface CutMend {
  readonly words: string;
  readonly takes:
    | { readonly kind: 'times'; readonly changes: readonly PointsChange[] }
    | { readonly kind: 'order'; readonly ids: readonly string[] }
    /** Two segments cannot be one chapter and stay two; the list as it would be is there to be copied. */
    | { readonly kind: 'list'; readonly lines: readonly string[] };
}

/**
 * Mends of the chapters of a cut, as changes of its segments: a chapter that moves takes its segment's in-point along,
 * and the end of the one above where the two share a cut. A move after which a segment would have no length is not
 * offered.
 *
 * Law: after a mend of times or order is taken, the chapters are those that it showed.
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
  const placed = points.filter(({ inFrame }) => inFrame !== null);
  if (mend.kind === 'join') return { kind: 'list', lines: chapterLines(mend.chapters) };
  if (mend.kind === 'order') {
    const ids = mend.chapters.map((chapter) => placed[chapters.indexOf(chapter)]?.id ?? '');
    // Segments that are in no cut keep their places.
    let next = 0;
    return {
      kind: 'order',
      ids: points.map(({ id, inFrame }) => (inFrame === null ? id : (ids[next++] ?? id))),
    };
  }
  const moved = mend.chapters.reduce<readonly CutPoints[]>((now, chapter, index) => {
    const own = placed[index];
    if (own?.inFrame == null || chapter.startS === chapters[index]?.startS) return now;
    return moveCut(now, own.id, 'inFrame', firstFrameAt(chapter.startS, rate) - own.inFrame);
  }, points);
  const shut = moved.some(
    ({ inFrame, outFrame }) => inFrame !== null && outFrame !== null && outFrame <= inFrame,
  );
  return shut ? null : { kind: 'times', changes: changesOf(points, moved) };
}
