import type { PointsChange } from '#lib/cut/cut-points';
import { frameAtRate, type FrameRate } from '#lib/cut/timecode';

/** What a change of rate does to points that are there: their times stay, or the frames that were counted. */
export const RATE_KEEPS = ['times', 'frames'] as const;
export type RateKeeps = (typeof RATE_KEEPS)[number];

type Rate = Pick<FrameRate, 'num' | 'den'>;

/**
 * Points at another rate. Where the times stay, each goes to the nearest frame of the new rate, and a segment keeps
 * at least one; where the frames stay, they were counted at the new rate all along.
 *
 * Law: to a faster rate and back, all is as it was.
 *
 * @example pointsAtRate([{ inFrame: 50, outFrame: 100, … }], frameRate('25'), frameRate('30'), 'times') // 60, 120
 */
export function pointsAtRate<T extends PointsChange>(
  points: readonly T[],
  from: Rate,
  to: Rate,
  keeps: RateKeeps,
): T[] {
  if (keeps === 'frames') return [...points];
  const at = (frame: number | null) => (frame === null ? null : frameAtRate(frame, from, to));
  return points.map((one) => {
    const inFrame = at(one.inFrame);
    const outFrame = at(one.outFrame);
    const shut = inFrame !== null && outFrame !== null && outFrame <= inFrame;
    const had = one.inFrame !== null && one.outFrame !== null && one.outFrame > one.inFrame;
    return { ...one, inFrame, outFrame: shut && had ? inFrame + 1 : outFrame };
  });
}
