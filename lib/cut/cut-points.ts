import { frameLength, type FrameRate } from '#lib/cut/timecode';

/** Where a segment stands in the cut, in frames of the episode's rate; out is the first frame after it. */
export interface CutPoints {
  readonly id: string;
  readonly title: string;
  readonly inFrame: number | null;
  readonly outFrame: number | null;
  /** False where its chapter is joined with the one before it. */
  readonly chapter?: boolean;
}

/** In- and out-points that a segment is to have. */
export type PointsChange = Omit<CutPoints, 'title' | 'chapter'>;

export type Edge = 'inFrame' | 'outFrame';

/** Something about where segments stand that the person should know, and the one change that would settle it. */
export interface CutRemark {
  readonly id: string;
  readonly code: 'half' | 'length' | 'order' | 'gap' | 'overlap';
  readonly message: string;
  /** What one press could do about it; null where only the person knows. */
  readonly mend: { readonly words: string; readonly change: PointsChange } | null;
}

/**
 * What is odd about the places of segments: one without a beginning or an end, one of no length, one that begins
 * before the one above it, and between neighbours each gap and each overlap, with its length. What stands before the
 * first is a gap too. Segments that are in no cut yet are passed over.
 *
 * @param points in running order
 * @example cutRemarks([{ inFrame: 0, outFrame: 50, … }, { inFrame: 60, … }], frameRate('25'))[0]?.code // 'gap'
 */
export function cutRemarks(points: readonly CutPoints[], rate: FrameRate): CutRemark[] {
  const remarks = points.flatMap((one) => ofOne(one));
  const placed = points.filter(({ inFrame }) => inFrame !== null);
  for (const [index, now] of placed.entries()) {
    const remark = between(placed[index - 1], now, rate);
    if (remark) remarks.push(remark);
  }
  const place = new Map(points.map(({ id }, index) => [id, index]));
  return remarks.sort((a, b) => (place.get(a.id) ?? 0) - (place.get(b.id) ?? 0));
}

function ofOne({ id, title, inFrame, outFrame }: CutPoints): CutRemark[] {
  const say = (code: CutRemark['code'], message: string) => [{ id, code, message, mend: null }];
  if (inFrame === null && outFrame !== null) {
    return say('half', `“${title}” has an end and no beginning.`);
  }
  if (inFrame !== null && outFrame !== null && outFrame <= inFrame) {
    return say('length', `“${title}” ends where it begins, or before.`);
  }
  return [];
}

function between(before: CutPoints | undefined, now: CutPoints, rate: FrameRate): CutRemark | null {
  const from = now.inFrame ?? 0;
  const { id, title } = now;
  if (before === undefined) {
    if (from === 0) return null;
    const message = `${frameLength(from, rate)} before “${title}” belong to no segment.`;
    const words = `Let “${title}” begin at the beginning`;
    return { id, code: 'gap', message, mend: { words, change: { ...bare(now), inFrame: 0 } } };
  }
  if (from <= (before.inFrame ?? 0)) {
    const message = `“${title}” begins before “${before.title}”, which stands above it.`;
    return { id, code: 'order', message, mend: null };
  }
  const mend = {
    words: `Let “${before.title}” end where “${title}” begins`,
    change: { ...bare(before), outFrame: from },
  };
  if (before.outFrame === null) {
    const message = `“${before.title}” has no end yet; “${title}” is next.`;
    return { id: before.id, code: 'half', message, mend };
  }
  const gap = from - before.outFrame;
  if (gap === 0) return null;
  const length = frameLength(gap < 0 ? -gap : gap, rate);
  if (gap > 0) {
    const message = `${length} between “${before.title}” and “${title}” belong to no segment.`;
    return { id, code: 'gap', message, mend };
  }
  const message = `“${title}” begins ${length} before “${before.title}” is over.`;
  return { id, code: 'overlap', message, mend };
}

const bare = ({ id, inFrame, outFrame }: CutPoints): PointsChange => ({ id, inFrame, outFrame });

/**
 * Points with one edge moved. A cut that two neighbours share moves for both, so that no gap opens between them;
 * nothing is moved before frame 0.
 *
 * Law: moving by n and then by −n gives back what was, where 0 did not stop it.
 *
 * @param by frames, later above 0
 * @example a.outFrame 50 and b.inFrame 50: moveCut([a, b], 'b', 'inFrame', 1) // both 51
 */
export function moveCut<T extends PointsChange>(
  points: readonly T[],
  id: string,
  edge: Edge,
  by: number,
): T[] {
  const at = points.findIndex((one) => one.id === id);
  const frame = points[at]?.[edge] ?? null;
  if (frame === null) return [...points];
  const moved = Math.max(0, frame + by);
  const other: Edge = edge === 'inFrame' ? 'outFrame' : 'inFrame';
  const beside = edge === 'inFrame' ? at - 1 : at + 1;
  return points.map((one, index) => {
    if (index === at) return { ...one, [edge]: moved };
    return index === beside && one[other] === frame ? { ...one, [other]: moved } : one;
  });
}

/** What differs between two lists of the same segments. */
export function changesOf(
  before: readonly PointsChange[],
  after: readonly PointsChange[],
): PointsChange[] {
  return after.flatMap(({ id, inFrame, outFrame }) => {
    const was = before.find((one) => one.id === id);
    const same = was?.inFrame === inFrame && was.outFrame === outFrame;
    return same ? [] : [{ id, inFrame, outFrame }];
  });
}
