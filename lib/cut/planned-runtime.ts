import type { Segment } from '#lib/episode/schema';
import { secondsToSay, USUAL_WORDS_PER_MINUTE, wordsIn } from '#lib/cut/speaking-rate';

/** A segment's length before the edit and in it, in seconds. */
export interface SegmentRuntime {
  readonly id: string;
  readonly title: string;
  /** Words of its talking points. */
  readonly words: number;
  /** What saying them takes. */
  readonly talkS: number;
  /** What its shots take together. */
  readonly shotsS: number;
  /** Talk and shots, one after the other. */
  readonly reckonedS: number;
  /** What the person has typed; 0 where nothing was. */
  readonly typedS: number;
  /** What it is expected to take: reckoned, else typed; null where there are no words, no shots and nothing typed. */
  readonly plannedS: number | null;
  /** Its length in the cut; null while it has no in- and out-point. */
  readonly cutS: number | null;
  /** The cut less what was planned; null where either is unknown. */
  readonly differenceS: number | null;
}

export interface PlannedRuntime {
  readonly perMinute: number;
  readonly segments: readonly SegmentRuntime[];
  readonly reckonedS: number;
  readonly typedS: number;
  /** Of the segments of which it is known; null where none is. */
  readonly plannedS: number | null;
  readonly cutS: number | null;
  /** Of the segments of which both are known. */
  readonly differenceS: number | null;
}

type Planned = Pick<Segment, 'id' | 'title' | 'plannedS' | 'inFrame' | 'outFrame'> & {
  readonly shots: readonly Pick<Segment['shots'][number], 'lengthS'>[];
  /** Its talking points with their numbers in place. */
  readonly points: readonly string[];
};

/**
 * How long each segment will be, by its words at a person's rate and by its shots, beside what was planned and what
 * the cut has.
 *
 * @param segments in running order
 * @param rate frames a second of the cut, an exact fraction
 * @param perMinute words a minute; 150 where nobody was measured (National Center for Voice and Speech)
 * @example plannedRuntime([{ points: ['three hundred words …'], … }], { num: 25, den: 1 }, 150).segments[0]?.talkS // 120
 */
export function plannedRuntime(
  segments: readonly Planned[],
  rate: { readonly num: number; readonly den: number },
  perMinute: number = USUAL_WORDS_PER_MINUTE,
): PlannedRuntime {
  const rows = segments.map(({ id, title, points, shots, plannedS, inFrame, outFrame }) => {
    const words = points.reduce((sum, point) => sum + wordsIn(point), 0);
    const talkS = secondsToSay(words, perMinute);
    const shotsS = shots.reduce((sum, { lengthS }) => sum + lengthS, 0);
    const reckonedS = talkS + shotsS;
    const own = reckonedS > 0 ? reckonedS : plannedS > 0 ? plannedS : null;
    const cutS =
      inFrame === null || outFrame === null ? null : ((outFrame - inFrame) * rate.den) / rate.num;
    const differenceS = own === null || cutS === null ? null : cutS - own;
    const lengths = { reckonedS, typedS: plannedS, plannedS: own, cutS, differenceS };
    return { id, title, words, talkS, shotsS, ...lengths };
  });
  const sum = (of: (row: SegmentRuntime) => number) => rows.reduce((all, row) => all + of(row), 0);
  const known = (of: (row: SegmentRuntime) => number | null) =>
    rows.every((row) => of(row) === null) ? null : sum((row) => of(row) ?? 0);
  return {
    perMinute,
    segments: rows,
    reckonedS: sum(({ reckonedS }) => reckonedS),
    typedS: sum(({ typedS }) => typedS),
    plannedS: known(({ plannedS }) => plannedS),
    cutS: known(({ cutS }) => cutS),
    differenceS: known(({ differenceS }) => differenceS),
  };
}
